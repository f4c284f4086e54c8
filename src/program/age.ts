/** Whether course and exercises are meant for a client of this age, and what a growing client asks of the clinician. */
import type { LibraryCard } from "../cards/library.ts";
import { Fault } from "../faults/fault.ts";
import type { Plan } from "../plan/schema.ts";
import type { Path, Read } from "../read/source.ts";
import type { Program } from "./program.ts";

/**
 * Under this age growth plates are taken to be open. From then on most are closed; before, they give way
 * sooner than tendon and bone (DiFiori et al. 2014, Br J Sports Med 48:287; from memory).
 */
const GROWN = 18;

/** Something that is meant for some ages. */
interface Bounded {
  readonly id: string;
  readonly title: string;
  readonly age: { readonly from?: number | undefined; readonly to?: number | undefined };
}

/** Whole years on a day; both YYYY-MM-DD. */
export function ageOn(born: string, day: string): number {
  const years = Number(day.slice(0, 4)) - Number(born.slice(0, 4));
  return day.slice(5) < born.slice(5) ? years - 1 : years;
}

/**
 * Faults: age-outside, an error unless the plan accepts it; warnings: age-unknown where something is
 * bounded, growth-plates for a client who may still grow.
 */
export function ageFaults({ plan, protocol, phases }: Program): Fault[] {
  const { client, starts } = plan.value;
  const cards = phases.flatMap(({ exercises }) => exercises.map(({ card }) => card.card));
  const bounded = [protocol.value, ...cards].flatMap(({ id, clinical, age }): Bounded[] =>
    age === undefined ? [] : [{ id, title: clinical, age }],
  );
  const once = [...new Map(bounded.map((one) => [one.id, one])).values()];
  const { born } = client;
  if (born === undefined) {
    const named = once.map(({ id, age }) => `${id} for people ${sayAge(age)}`).join(", ");
    const says = `The client's date of birth is not given; meant for some ages only: ${named}.`;
    return once.length === 0
      ? []
      : [warning("age-unknown", plan, ["client"], says, "Add born under client: YYYY-MM-DD.")];
  }
  const years = ageOn(born, starts);
  return [...once.flatMap((one) => outside(one, years, plan)), ...growing(years, plan)];
}

/** What stands against a card for a client whose age is known. */
export function cardAgeFaults(
  { card: { id, clinical, age } }: LibraryCard,
  plan: Read<Plan>,
): Fault[] {
  const { client, starts } = plan.value;
  if (age === undefined || client.born === undefined) return [];
  return outside({ id, title: clinical, age }, ageOn(client.born, starts), plan);
}

function outside({ id, title, age }: Bounded, years: number, plan: Read<Plan>): Fault[] {
  const { from = 0, to = Number.POSITIVE_INFINITY } = age;
  if (years >= from && years <= to) return [];
  const accepted = plan.value.accept.find(
    ({ code, card }) => code === "age-outside" && card === id,
  );
  const place = plan.source.at(["client", "born"]);
  const because = accepted ? ` Accepted: ${accepted.why}` : "";
  return [
    new Fault(
      "age-outside",
      `“${title}” (${id}) is meant for people ${sayAge(age)}; the client is ${years} when the plan starts.${because}`,
      {
        level: accepted ? "warning" : "error",
        place,
        frame: plan.source.frame(place),
        hint: accepted
          ? undefined
          : `Choose another in its place, or accept it with a reason: accept: [{ code: age-outside, card: ${id}, why: … }].`,
      },
    ),
  ];
}

function growing(years: number, plan: Read<Plan>): Fault[] {
  if (years >= GROWN) return [];
  const says = `The client is ${years} when the plan starts and may still be growing: growth plates give way sooner than tendon or bone.`;
  const hint =
    "Examine the growth plates near what is loaded (heel, below the knee cap, seat, elbow, shoulder) before you sign. Sharp pain on one of them is a reason to stop.";
  return [warning("growth-plates", plan, ["client", "born"], says, hint)];
}

/** "of 18 and over", "up to 60", "from 18 to 60". */
function sayAge({ from, to }: Bounded["age"]): string {
  if (to === undefined) return `of ${from} and over`;
  return from === undefined ? `up to ${to}` : `from ${from} to ${to}`;
}

function warning(
  code: "age-unknown" | "growth-plates",
  { source }: Read<Plan>,
  path: Path,
  message: string,
  hint: string,
): Fault {
  const place = source.at(path);
  return new Fault(code, message, { level: "warning", place, frame: source.frame(place), hint });
}
