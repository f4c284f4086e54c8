/** Kinds of plans that the proof has to have made, and which of them a plan is of. */
import type { RandomPlan } from "./draw.ts";
import { type Known, knownOf, ruledBelow } from "./names.ts";
import type { Printed, PrintedBooklet } from "./printed.ts";

interface Looked {
  readonly known: Known;
  readonly printed: Printed;
}

type Plan = Known["plan"];

/** Looks at the plan alone. */
const of =
  (is: (plan: Plan) => boolean) =>
  ({ known }: Looked): boolean =>
    is(known.plan);

const untils = ({ flags }: Plan) =>
  flags.flatMap((one) => (typeof one === "string" ? [] : [one.until]));
const inText =
  (text: string) =>
  ({ printed }: Looked): boolean =>
    printed.json.includes(text);
const doses = ({ known }: Looked) =>
  known.asked.flatMap(({ entries }) => entries.map(({ dose }) => dose));

const below =
  (reason: RegExp) =>
  ({ known }: Looked): boolean =>
    ruledBelow(known).some(({ reasons }) => reasons.some((one) => reason.test(one)));

const STATED: Readonly<Record<string, (looked: Looked) => boolean>> = {
  "a course of our own": of(({ protocol }) => protocol.startsWith("own-")),
  "a flag": of(({ flags }) => flags.length > 0),
  "a flag until a date": of((plan) =>
    untils(plan).some((one) => typeof one === "string" && one !== "review"),
  ),
  "a flag until a week": of((plan) =>
    untils(plan).some((one) => typeof one === "object" && "week" in one),
  ),
  "a flag until a phase": of((plan) =>
    untils(plan).some((one) => typeof one === "object" && "phase" in one),
  ),
  "a flag until a review": of((plan) =>
    untils(plan).some((one) => one === "review" || (typeof one === "object" && "review" in one)),
  ),
  "a sign that is not the client's": inText('"sign-not-theirs"'),
  "an exercise whose sign is not the client's": inText('"ask_first":true'),
  "a card that waits for a review": inText('"after_review":true'),
  "left out": of(({ leave_out }) => leave_out.length > 0),
  "left out for some weeks": of(({ leave_out }) =>
    leave_out.some(({ weeks }) => weeks !== undefined),
  ),
  "left out of a phase": of(({ leave_out }) => leave_out.some(({ phase }) => phase !== undefined)),
  swapped: of(({ swap }) => swap.length > 0),
  "swapped for some weeks": of(({ swap }) => swap.some(({ weeks }) => weeks !== undefined)),
  "swapped in a phase": of(({ swap }) => swap.some(({ phase }) => phase !== undefined)),
  added: of(({ add }) => add.length > 0),
  "added for some weeks": of(({ add }) => add.some(({ weeks }) => weeks !== undefined)),
  "dosed anew": of(({ redose }) => redose.length > 0),
  "dosed anew for some weeks": of(({ redose }) => redose.some(({ weeks }) => weeks !== undefined)),
  "a phase that takes longer": of(({ extend }) => extend.length > 0),
  "a week repeated in the middle": of(({ extend }) =>
    extend.some((one) => one.repeat_week !== undefined),
  ),
  "a course cut short": of(({ weeks }) => weeks !== undefined),
  "every so many days": (looked) => doses(looked).some((dose) => dose.every !== undefined),
  "every so many days, waiting": inText('"code":"days-wait"'),
  "so many days a week": (looked) => doses(looked).some((dose) => dose.per_week !== undefined),
  daily: (looked) => doses(looked).some((dose) => dose.per_day === 1),
  "twice a day": (looked) => doses(looked).some((dose) => dose.per_day === 2),
  "sessions taken": inText('"code":"sessions-taken"'),
  "a measure": of(({ measures }) => measures.length > 0),
  "equipment with loads": of(({ equipment }) => equipment.some((one) => typeof one === "object")),
  "an age": of(({ client }) => client.born !== undefined),
  "a client who may grow": inText('"code":"growth-plates"'),
  "an age outside of the course, accepted": inText('"code":"age-outside","level"'),
  "an easier card that a flag rules out": below(/^the flag/),
  "an easier card that needs what is not there": below(/^no /),
  "an easier card that the plan leaves out": below(/^the plan leaves it out/),
  "a day away": of(({ week }) => week.away.some((one) => typeof one === "string")),
  "a week away, the course waits": (looked) =>
    looked.known.asked.some(({ course }) => course === undefined) &&
    looked.known.plan.week.away.some((one) => typeof one !== "string" && one.then !== "skip"),
  "a week away, the course goes on": (looked) =>
    looked.known.asked.some(({ course }) => course === undefined) &&
    looked.known.plan.week.away.some((one) => typeof one !== "string" && one.then === "skip"),
  "other weeks": of(({ week }) => week.other_weeks !== undefined),
  "a rota": of(({ week }) => week.rota !== undefined),
  "hard work on days off": of(({ week }) => week.rota?.hard_on_days_off === true),
  "hours of the client's own": of(({ week }) => week.hours !== undefined),
  "work at night": of(
    ({ week: { hours } }) => hours !== undefined && hours.evening < hours.morning,
  ),
  "an event every week": of(({ week }) => week.events.some(({ day }) => day !== undefined)),
  "an event on dates": of(({ week }) => week.events.some(({ on }) => on !== undefined)),
  "an event that begins": of(({ week }) => week.events.some(({ from }) => from !== undefined)),
  "an event that ends": of(({ week }) => week.events.some(({ until }) => until !== undefined)),
  "an event that blocks": of(({ week }) => week.events.some(({ blocks }) => blocks === true)),
  "a hard event": of(({ week }) => week.events.some(({ hard }) => hard === true)),
  "kept clear before": of(({ week }) => week.events.some((one) => one.clear_before !== undefined)),
  "kept clear after": of(({ week }) => week.events.some((one) => one.clear_after !== undefined)),
  "kept clear of a card": of(({ week }) =>
    week.events.some(({ clear_of: [one = ""] = [] }) => one.includes("-")),
  ),
  "kept clear of a quality": of(({ week }) =>
    week.events.some(({ clear_of: [one = "-"] = [] }) => !one.includes("-")),
  ),
};

/** Kinds that only a booklet shows. */
const SHOWN: Readonly<Record<string, (booklet: PrintedBooklet) => boolean>> = {
  "an easier move that is done only in place of others": ({ html }) =>
    html.includes('id="part-easier"'),
  "an easier move that the course has": ({ html }) => /Do exercise \d+ instead/.test(html),
  "a short version for a bad day": ({ phone }) => phone.includes('"short":{'),
};

/** The names of all kinds; those that only a booklet shows are counted among the booklets that are read. */
export const KINDS = Object.keys(STATED);
export const KINDS_SHOWN = Object.keys(SHOWN);

/** Which kinds a plan is of that was made. */
export function kindsOf({ plan, course }: RandomPlan, printed: Printed): string[] {
  const { booklet } = printed;
  const looked = { known: knownOf(plan, course), printed };
  return [
    ...KINDS.filter((name) => STATED[name]?.(looked)),
    ...KINDS_SHOWN.filter((name) => booklet && SHOWN[name]?.(booklet)),
  ];
}
