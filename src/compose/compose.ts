/** Makes the booklet's content from a dosed program on real dates: every text a client reads. */
import type { ClinicLook } from "../clinic/look.ts";
import type { Clinic } from "../clinic/schema.ts";
import { openFlags } from "../program/flags.ts";
import type { Program } from "../program/program.ts";
import { howOften } from "../schedule/how-often.ts";
import { spacingOf } from "../schedule/spacing.ts";
import { directionOf } from "../words/languages.ts";
import { calendar, firstBack, weekdayNames } from "./calendar.ts";
import type { BookletParts, Composing } from "./composing.ts";
import { diary } from "./diary.ts";
import { easierExercises } from "./easier-page.ts";
import { exercisePages } from "./exercise-pages.ts";
import { careWords } from "./flag-words.ts";
import { keptWords } from "./kept-words.ts";
import type { Booklet, ClinicLines, Cover, OwnPage } from "./model.ts";
import { type Writer, writer } from "./numbers.ts";
import { painPage } from "./pain-page.ts";
import { partNames } from "./part-words.ts";
import { phasePages } from "./phase-pages.ts";
import { progressCharts } from "./progress.ts";
import { bookletSessions } from "./sessions.ts";
import { startHere } from "./start-here.ts";
import { stopSigns } from "./stop-signs.ts";
import { weekSteps } from "./week-steps.ts";

/** The booklet. Same parts, same booklet; nothing is read and no clock asked. */
export function composeBooklet(parts: BookletParts): Booklet {
  const { program, schedule, signedOff, words } = parts;
  const plan = program.plan.value;
  const composing: Composing = {
    ...parts,
    often: howOften(parts.dosed, schedule),
    write: writer(words, program.clinic.locale, program.clinic.units),
  };
  const { write } = composing;
  const phases = phasePages(composing);
  return {
    plan: plan.id,
    language: program.clinic.language,
    locale: program.clinic.locale,
    units: program.clinic.units,
    direction: directionOf(program.clinic.language),
    paper: program.clinic.paper,
    edition: parts.edition,
    draft: signedOff === undefined,
    title: words.say("title", { course: program.protocol.value.title, name: plan.client.name }),
    clinic: clinicLines(program.clinic),
    client: { name: plan.client.name, reference: plan.client.reference },
    clinician: plan.clinician,
    signed:
      signedOff && words.say("signed", { by: signedOff.by, on: write.longDate(signedOff.on) }),
    signedOn: signedOff && write.longDate(signedOff.on),
    colour: parts.look.colour,
    logo: parts.look.logo,
    before: ownPages("before", parts.look.before),
    after: ownPages("after", parts.look.after),
    cover: cover(composing),
    start: startHere(composing),
    stop: {
      ...stopSigns(
        openFlags(
          program.flags,
          Array.from({ length: program.weeks }, (_, at) => at + 1),
        ),
        program.callLevel,
        write,
      ),
      care: allCare(program, write),
    },
    pain: painPage(program, write),
    weeks: calendar(composing),
    weekdays: weekdayNames(plan.starts, write),
    firstBack: firstBack(composing),
    kept: schedule.kept.map((one) => keptWords(one, write)),
    phases,
    exercises: exercisePages(composing),
    easier: easierExercises(composing),
    progress: progressCharts(composing),
    myPlan: {
      when: plan.my_plan.when,
      where: plan.my_plan.where,
      ifThen: plan.my_plan.if_then,
    },
    diary: diary(composing),
    clock: program.clock,
    spacing: spacingOf(program),
    partNames: partNames(program.clock, words),
    sessions: bookletSessions(composing, phases),
    outlook: program.protocol.value.outlook,
    printed: { date: parts.day, words: write.longDate(parts.day) },
  };
}

function ownPages(where: string, pages: ClinicLook["before"]): OwnPage[] {
  return pages.map((page, index) => ({ anchor: `part-${where}-${index + 1}`, ...page }));
}

function clinicLines(clinic: Clinic): ClinicLines {
  return {
    name: clinic.name,
    phone: clinic.phone,
    phoneLink: phoneLink(clinic.phone),
    hours: clinic.hours,
    outOfHours: clinic.out_of_hours,
    emergency: clinic.emergency,
    emergencyLink: phoneLink(clinic.emergency),
    address: clinic.address,
    email: clinic.email,
    phonePage: clinic.phone_page,
  };
}

/** A tel: address (RFC 3966) holds digits and a leading plus; spaces and brackets go. */
const phoneLink = (phone: string): string => `tel:${phone.replace(/(?!^\+)[^\d]/g, "")}`;

function cover(composing: Composing): Cover {
  const { program, schedule, note, write } = composing;
  const { words } = write;
  const plan = program.plan.value;
  const first = schedule.weeks[0]?.days[0]?.date ?? plan.starts;
  const last = schedule.weeks.at(-1)?.days.at(-1)?.date ?? first;
  const limbs = new Set(
    program.phases.flatMap((phase) => phase.exercises.map(({ card }) => card.card.limb)),
  );
  const limb = limbs.size === 1 ? [...limbs][0] : undefined;
  return {
    course: program.protocol.value.title,
    message: program.phases[0]?.aim ?? "",
    dates: words.say("weeks.dates", { from: write.longDate(first), to: write.longDate(last) }),
    steps: weekSteps(composing),
    length: words.say("weeks.length", { n: program.weeks }),
    side: limb === undefined ? undefined : words.say(`side.${limb}.${plan.side}`),
    goals: plan.goals.map(({ what, now, want }) => ({
      what,
      now,
      want,
      words: words.say("goal", { now: write.number(now), want: write.number(want) }),
    })),
    note,
  };
}

/** Words of care that this client's flags ask for, from all cards, each once. */
function allCare(program: Program, write: Writer): string[] {
  const cards = new Set(
    program.phases.flatMap(({ exercises }) => exercises.map(({ card }) => card)),
  );
  return [...new Set([...cards].flatMap((card) => careWords(card, program, write)))];
}
