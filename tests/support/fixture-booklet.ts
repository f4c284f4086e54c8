/** Two booklets of invented clients, as the composer would hand them to the renderer. */
import type { DoseLine, ExercisePage } from "../../src/compose/exercise-model.ts";
import type { Booklet, CalendarWeek, ClinicLines, DiaryPart } from "../../src/compose/model.ts";

const DAYS = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"];
const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

const clinic: ClinicLines = {
  name: "Harbour Lane Physiotherapy",
  phone: "01632 960147",
  phoneLink: "tel:+441632960147",
  hours: "Monday to Friday, 8 am to 6 pm",
  outOfHours: "Call the night line on 01632 960199.",
  emergency: "999",
  emergencyLink: "tel:999",
  address: "4 Harbour Lane, Saltby",
  email: "desk@harbourlane.example",
  phonePage: undefined,
};

interface Session {
  readonly day: number;
  readonly part: string;
  readonly minutes: string;
}

interface Schedule {
  readonly start: string;
  readonly weeks: number;
  readonly sessions: (week: number) => readonly Session[];
  readonly phases: (week: number) => readonly string[];
  readonly summary: (week: number) => string;
  readonly notes?: (week: number, day: number) => readonly string[];
}

function date(start: string, days: number): Date {
  return new Date(Date.parse(`${start}T00:00:00Z`) + days * 86_400_000);
}

function short(day: Date): string {
  return `${day.getUTCDate()} ${MONTHS[day.getUTCMonth()]}`;
}

function calendar(schedule: Schedule): CalendarWeek[] {
  return Array.from({ length: schedule.weeks }, (_, index) => {
    const number = index + 1;
    const first = index * 7;
    return {
      number,
      dates: `${short(date(schedule.start, first))} – ${short(date(schedule.start, first + 6))}`,
      phases: schedule.phases(number),
      summary: schedule.summary(number),
      away: false,
      days: DAYS.map((_, day) => {
        const on = date(schedule.start, first + day);
        return {
          date: on.toISOString().slice(0, 10),
          label: day === 0 || on.getUTCDate() === 1 ? short(on) : String(on.getUTCDate()),
          long: `${DAYS[(on.getUTCDay() + 6) % 7]} ${short(on)}`,
          sessions: schedule
            .sessions(number)
            .filter((session) => session.day === day)
            .map(({ part, minutes }) => ({ part, minutes, kind: "" })),
          notes: schedule.notes?.(number, day) ?? [],
        };
      }),
    };
  });
}

/** One table, with a box for each part of the day that has a session. */
function diary(
  schedule: Schedule,
  rows: (week: number) => readonly { readonly exercise: string; readonly dose: string }[],
): DiaryPart[] {
  const weeks = calendar(schedule);
  const all = weeks.flatMap(({ days }) => days.flatMap(({ sessions }) => sessions));
  const parts = [...new Set(all.map(({ part }) => part))];
  return [
    {
      phases: schedule.phases(1),
      parts,
      weights: [1],
      which: false,
      groups: [
        {
          when: undefined,
          exercises: rows(1).map(({ exercise }, at) => ({ number: at + 1, title: exercise })),
        },
      ],
      weeks: weeks.map(({ number, dates, days }) => ({
        number,
        dates,
        as: undefined,
        doses: rows(number).map(({ dose }, at) => ({ number: at + 1, dose })),
        rows: days
          .filter(({ sessions }) => sessions.length > 0)
          .map(({ long, date: on, sessions }) => ({
            day: long.slice(0, 3),
            date: short(new Date(on)),
            exercises: rows(number).map((_, at) => at + 1),
            ticks: parts.map((part) => sessions.some((session) => session.part === part)),
            weights: [true],
            morning: true,
          })),
      })),
    },
  ];
}

const weekdays = DAYS.map((long) => ({ short: long.slice(0, 3), long }));

// Achilles: three evenings a week for twelve weeks, heavier as the sets grow shorter.

const STEPS = [
  { weeks: "Week 1", from: 1, work: "3 sets of 15", short: "3 × 15", loads: ["8 kg", "12 kg"] },
  {
    weeks: "Weeks 2 to 3",
    from: 2,
    work: "3 sets of 12",
    short: "3 × 12",
    loads: ["10 kg", "16 kg"],
  },
  {
    weeks: "Weeks 4 to 5",
    from: 4,
    work: "4 sets of 10",
    short: "4 × 10",
    loads: ["14 kg", "20 kg"],
  },
  {
    weeks: "Weeks 6 to 8",
    from: 6,
    work: "4 sets of 8",
    short: "4 × 8",
    loads: ["18 kg", "24 kg"],
  },
  {
    weeks: "Weeks 9 to 12",
    from: 9,
    work: "4 sets of 6",
    short: "4 × 6",
    loads: ["22 kg", "28 kg"],
  },
];

function heavy(loads: 0 | 1 | undefined): DoseLine[] {
  return STEPS.map(({ weeks, work, loads: kilos }) => ({
    weeks,
    work,
    load: loads === undefined ? "Your own weight" : `${kilos[loads]} (backpack)`,
    pace: "3 seconds up, 3 seconds down",
    rest: "Rest 2 to 3 minutes between sets",
    effort: "Should feel 7 out of 10",
    often: "3 days a week",
  }));
}

const always = [
  "Take 3 seconds to go up and 3 seconds to come down.",
  "Rest 2 to 3 minutes between sets.",
  "It should feel like 7 out of 10.",
  "Do it 3 days a week.",
];

const PHASE = "Build calf strength, slow and heavy";
const leg = { side: "Left leg", sideSentence: "Do this with your left leg." };
const painLine = "Up to 5 out of 10 is all right, if it is back to 2 or less by the next morning.";

const heelRaises: ExercisePage[] = [
  {
    anchor: "exercise-heel-raise-step",
    number: 1,
    title: "Rise up on one leg, heel over a step",
    why: "It loads the calf and the Achilles over their whole range, so that they grow strong enough for running.",
    ...leg,
    figure: undefined,
    needs: ["A step", "A handrail", "A backpack with weights"],
    phases: [{ title: PHASE, when: undefined, doses: heavy(0) }],
    always,
    when: undefined,
    setUp:
      "Stand on the edge of a step on the ball of your **left foot**. Hold the rail with one finger. Let your heel hang over the edge.",
    move: "1. Let your heel sink below the step until you feel a stretch.\n2. Push up as high as you can, over your big toe.\n3. Stop at the top for a moment.\n4. Lower slowly until your heel is below the step again.",
    feel: "Your calf works hard. You may feel a pull low down, near the heel.",
    check:
      "- Your knee stays straight.\n- Your ankle does not roll out.\n- You lower as slowly as you rise.",
    stop: "- You feel a sudden snap or a kick in the calf.\n- Your calf is hot, red or swollen.\n- Pain goes over 5 out of 10.",
    pain: painLine,
    care: [],
    easier: {
      says: "Too much today? Do this easier one instead: Rise up on both legs.",
      anchor: "easier-both-legs",
    },
  },
  {
    anchor: "exercise-heel-raise-seated",
    number: 2,
    title: "Rise up on your toes, sitting",
    why: "With the knee bent, the deep calf muscle does most of the work.",
    ...leg,
    figure: undefined,
    needs: ["A firm chair", "A backpack with weights"],
    phases: [{ title: PHASE, when: undefined, doses: heavy(1) }],
    always,
    when: undefined,
    setUp: "Sit tall with your knee bent. Put the backpack on your left thigh, close to the knee.",
    move: "1. Push up on your toes as high as you can.\n2. Stop at the top for a moment.\n3. Lower slowly until your heel rests on the floor.",
    feel: "The lower part of your calf works.",
    check: "- Your knee stays over your foot.\n- You do not push with your hands.",
    stop: "- You feel a sudden snap.\n- Pain goes over 5 out of 10.",
    pain: painLine,
    care: ["If your foot feels numb, look where the weight rests before you start."],
    easier: { says: "Too much today? Do fewer.", anchor: undefined },
  },
  {
    anchor: "exercise-balance",
    number: 3,
    title: "Stand on one leg",
    why: "Good balance takes strain off the tendon with each step.",
    ...leg,
    figure: undefined,
    needs: [],
    phases: [
      {
        title: PHASE,
        when: undefined,
        doses: [
          {
            weeks: "Weeks 1 to 12",
            work: "3 holds of 30 seconds",
            load: undefined,
            pace: undefined,
            rest: "Rest 30 seconds between holds",
            effort: undefined,
            often: "3 days a week",
          },
        ],
      },
    ],
    always: ["Rest 30 seconds between holds.", "Do it 3 days a week."],
    when: "Do it first, before your calf is tired.",
    setUp: "Stand near a wall that you can reach.",
    move: "1. Lift your right foot off the floor.\n2. Stand still for 30 seconds.\n3. Put the foot down and rest.",
    feel: "Small movements around your ankle.",
    check: "- You stand tall.\n- You look ahead, not down.",
    stop: "- You feel dizzy.\n- You cannot put weight on the leg.",
    pain: painLine,
    care: [],
    easier: { says: "Too much today? Do fewer.", anchor: undefined },
  },
];

const achillesWeeks: Schedule = {
  start: "2026-11-30",
  weeks: 12,
  phases: () => [PHASE],
  summary: () => "3 sessions, about 38 minutes each",
  sessions: () => [0, 2, 4].map((day) => ({ day, part: "Evening", minutes: "38 min" })),
  notes: (week, day) => (day === 5 && week % 2 === 1 ? ["Match"] : []),
};

/** A signed plan: left Achilles, three evenings a week, one phase. */
export const achilles: Booklet = {
  plan: "achilles-fixture",
  locale: "en-GB",
  units: "kg",
  sessions: [],
  clock: { morning: 420, midday: 780, evening: 1140 },
  spacing: { groupHours: {}, events: [] },
  partNames: { morning: "Morning", midday: "Midday", evening: "Evening" },
  outlook: undefined,
  easier: [
    {
      anchor: "easier-both-legs",
      title: "Rise up on both legs",
      insteadOf: "In place of exercise 1.",
      side: "Both legs",
      figure: undefined,
      needs: ["A wall"],
      dose: ["3 sets of 6", "Your own weight"],
      setUp: "- Stand close to a wall.",
      move: "1. Rise up on both feet.\n2. Lower both heels slowly.",
      stop: "- You feel a sudden snap.",
      pain: painLine,
      care: [],
    },
  ],
  start: {
    heading: "Start here: your first session",
    when: "Monday 30 November 2026 · Evening · about 38 minutes",
    exercises: [],
    stop: ["Pain over 5 out of 10? Stop this exercise for today."],
  },
  progress: [],
  myPlan: { when: undefined, where: undefined, ifThen: [] },
  language: "en-GB",
  direction: "ltr",
  paper: "A4",
  edition: "standard",
  colour: undefined,
  logo: undefined,
  before: [],
  after: [],
  draft: false,
  title: "Your home program for Achilles pain",
  clinic,
  client: { name: "Marit Solheim", reference: "HL-0412" },
  clinician: "Priya Nair, physiotherapist",
  signed: "Priya Nair, 28 November 2026",
  cover: {
    course: "Slow, heavy work for your calf and tendon",
    message: "It makes you strong.",
    dates: "Monday 30 November 2026 to Sunday 21 February 2027",
    length: "12 weeks",
    steps: { of: "weights", heights: Array.from({ length: 12 }, (_, week) => (week + 1) / 12) },
    side: "Left leg",
    goals: [
      { what: "Walk down stairs in the morning.", now: 4, want: 9, words: "Now 4, goal 9." },
      { what: "Run 5 kilometres with my sister.", now: 1, want: 7, words: "Now 1, goal 7." },
    ],
    note: "Marit, your tendon is **sore but strong enough to train**. It likes slow, heavy work, and it needs time.\n\nExpect the first change after about four weeks.",
  },
  stop: {
    urgent: [],
    severe: "Pain of 8 out of 10 or more, or sudden pain",
    emergency: [
      "You have chest pain, or you cannot get your breath.",
      "You faint, or one side of your face or body goes weak.",
    ],
    call: [
      "Pain of 8 out of 10 or more, or sudden pain",
      "You felt a sudden snap or a kick at the back of your leg, and you cannot push off.",
      "Your calf is swollen, hot, red or sore when you press it.",
      "Your pain is over 5 out of 10 and does not settle in an hour.",
      "Your pain wakes you at night, or gets worse from week to week.",
      "You have a fever and feel ill.",
    ],
    care: ["You take blood thinners: call us about any new bruise on the calf."],
  },
  pain: {
    kind: "monitored",
    comfortable: 2,
    during: 5,
    after: 2,
    callLevel: 8,
    limit: "5",
    ruler: Array.from({ length: 11 }, (_, n) => ({
      n,
      zone:
        n <= 2
          ? ("fine" as const)
          : n <= 5
            ? ("allowed" as const)
            : n < 8
              ? ("too-much" as const)
              : ("call" as const),
    })),
    zones: [
      { zone: "fine", from: 0, to: 2, name: "Fine", says: "Carry on as planned." },
      {
        zone: "allowed",
        from: 3,
        to: 5,
        name: "All right for now",
        says: "You may go on, if the pain is back to 2 or less by the next morning.",
      },
      {
        zone: "too-much",
        from: 6,
        to: 7,
        name: "Too much",
        says: "Stop this exercise for today. Next time, use less weight.",
      },
      { zone: "call", from: 8, to: 10, name: "Call us", says: "Stop, and call us the same day." },
    ],
    says: "Pain during an exercise may reach 5.",
    less: "Next time, use less weight.",
    exceptions: [],
    rules: [
      "Pain during an exercise may reach 5, but no more.",
      "By the next morning, your pain must be back to 2 or less.",
      "Pain and stiffness must not grow from week to week.",
    ],
  },
  weeks: calendar(achillesWeeks),
  weekdays,
  firstBack: undefined,
  kept: ["Clear of Saturday's match: no heavy work the day before."],
  phases: [
    {
      anchor: "phase-strength",
      label: undefined,
      title: PHASE,
      aim: "Make your calf and your tendon stronger, so that stairs and running hurt less.",
      when: "Weeks 1 to 12: Monday 30 November to Sunday 21 February",
      weeks: "Weeks 1 to 12",
      explained: {
        work: "“3 sets of 15”: do it 15 times, then rest 2 minutes. Do that 3 times in all.",
        effort: { numbers: [6, 7], words: "6 and 7" },
      },
      rows: heelRaises.map(({ title, anchor, side, phases }) => ({
        exercise: title,
        anchor,
        side,
        when: undefined,
        doses: phases.flatMap(({ doses }) => doses),
      })),
      sessions:
        "3 sessions a week, in the evening, about 38 minutes each. Keep a day free between.",
      moveOn: [
        "You can do 25 heel raises on your left leg.",
        "Your left calf does 9 of 10 raises that your right one does.",
        "Walking on stairs hurts 2 or less.",
      ],
      badDay: undefined,
      leaveOut: undefined,
      days: "Monday evening",
      goBack: [
        "Your pain next morning is over 2 on two days in a row.",
        "You feel weaker than the week before.",
      ],
    },
  ],
  exercises: heelRaises,
  diary: diary(achillesWeeks, (week) => {
    const step = STEPS.findLast(({ from }) => from <= week);
    return heelRaises.map(({ title }, index) => ({
      exercise: title,
      dose: index === 2 ? "3 × 30 seconds" : `${step?.short}, ${step?.loads[index]}`,
    }));
  }),
  signedOn: "28 November 2026",
  printed: { date: "2026-11-28", words: "28 November 2026" },
};

// Shoulder: six exercises twice a day for eight weeks, then once a day.

const FIRST = "Calm the shoulder and wake up its muscles";
const SECOND = "Build strength overhead";

const SHOULDER: readonly (readonly [string, string, string])[] = [
  [
    "Pull your elbow back with a band",
    "band",
    "It trains the muscles that hold your shoulder blade.",
  ],
  ["Turn your arm out with a band", "band", "It trains the muscles that hold the joint in place."],
  ["Lift your arm to the side, lying down", "weight", "It trains the muscle above the joint."],
  ["Push up from the wall", "body", "It trains the muscle at the side of your ribs."],
  ["Squeeze your shoulder blades together", "body", "It helps you to sit and stand tall."],
  ["Stretch the back of your shoulder", "body", "It loosens the back of the joint."],
];

function shoulderDoses(kind: string, phase: 1 | 2): DoseLine[] {
  const first = kind === "body" ? ["Weeks 1 to 8"] : ["Weeks 1 to 4", "Weeks 5 to 8"];
  const spans = phase === 1 ? first : ["Weeks 9 to 12"];
  const loads =
    kind === "band"
      ? ["Band, level 1", "Band, level 2", "Band, level 3"]
      : kind === "weight"
        ? ["1 kg", "1.5 kg", "2 kg"]
        : [undefined, undefined, undefined];
  return spans.map((weeks, index) => ({
    weeks,
    work: "3 sets of 15",
    load: loads[phase === 1 ? index : 2],
    pace: "Slowly: 2 seconds there, 3 seconds back",
    rest: "Rest 1 minute between sets",
    effort: undefined,
    often: phase === 1 ? "Twice a day" : "Once a day",
  }));
}

const shoulderExercises: ExercisePage[] = SHOULDER.map(([title, kind, why], index) => ({
  anchor: `exercise-shoulder-${index + 1}`,
  number: index + 1,
  title,
  why,
  side: "Right arm",
  sideSentence: "Do this with your right arm.",
  figure: undefined,
  needs: kind === "band" ? ["An exercise band", "A door that shuts well"] : [],
  phases: [
    { title: FIRST, when: undefined, doses: shoulderDoses(kind, 1) },
    { title: SECOND, when: undefined, doses: shoulderDoses(kind, 2) },
  ],
  always: ["Move slowly: 2 seconds there, 3 seconds back.", "Rest 1 minute between sets."],
  when: undefined,
  setUp: "Stand tall. Let your shoulders drop.",
  move: "1. Start with your arm at your side.\n2. Move slowly as far as feels right.\n3. Stop for a moment.\n4. Come back slowly.",
  feel: "The muscles around your shoulder blade work. Your neck stays soft.",
  check: "- Your shoulder does not creep up to your ear.\n- Your back stays still.",
  stop: "- Your arm goes numb or weak.\n- Pain goes over 5 out of 10.",
  pain: painLine,
  care: [],
  easier: { says: "Too much today? Do fewer.", anchor: undefined },
}));

const shoulderWeeks: Schedule = {
  start: "2026-12-01",
  weeks: 12,
  phases: (week) => [week <= 8 ? FIRST : SECOND],
  summary: (week) =>
    week <= 8 ? "14 sessions, about 24 minutes each" : "7 sessions, about 24 minutes each",
  sessions: (week) =>
    DAYS.flatMap((_, day) => [
      { day, part: "Morning", minutes: "24 min" },
      ...(week <= 8 ? [{ day, part: "Evening", minutes: "24 min" }] : []),
    ]),
};

/** A draft: right shoulder, twice a day, two phases, a name that looks like markup. */
export const shoulder: Booklet = {
  ...achilles,
  draft: true,
  title: "Your home program for shoulder pain",
  client: { name: "<b>O'Neil & {{name}}</b>", reference: "HL-0413" },
  signed: undefined,
  signedOn: undefined,
  cover: {
    course: "Strong muscles around a sore shoulder",
    message: "It makes you strong.",
    dates: "Tuesday 1 December 2026 to Monday 22 February 2027",
    length: "12 weeks",
    steps: undefined,
    side: "Right arm",
    goals: [
      {
        what: "Reach the top shelf & hang <up> my coat &amp; hat.",
        now: 3,
        want: 8,
        words: "Now 3, goal 8.",
      },
    ],
    note: "",
  },
  easier: [],
  stop: { ...achilles.stop, care: [] },
  weeks: calendar(shoulderWeeks),
  weekdays: [...weekdays.slice(1), ...weekdays.slice(0, 1)],
  firstBack: undefined,
  kept: [],
  phases: ([1, 2] as const).map((phase) => ({
    anchor: `phase-shoulder-${phase}`,
    label: `Phase ${phase} of 2`,
    title: phase === 1 ? FIRST : SECOND,
    aim: "Less pain when you lift your arm, and muscles that hold the joint in place.",
    explained: { work: undefined, effort: undefined },
    weeks: phase === 1 ? "Weeks 1 to 6" : "Weeks 7 to 12",
    when:
      phase === 1
        ? "Weeks 1 to 8: Tuesday 1 December to Monday 25 January"
        : "Weeks 9 to 12: Tuesday 26 January to Monday 22 February",
    rows: SHOULDER.map(([exercise, kind], index) => ({
      exercise,
      anchor: `exercise-shoulder-${index + 1}`,
      side: "Right arm",
      when: undefined,
      doses: shoulderDoses(kind, phase),
    })),
    sessions: phase === 1 ? "Twice a day, about 24 minutes each." : "Once a day, about 24 minutes.",
    moveOn: ["You can lift your arm above your head with pain of 2 or less."],
    badDay: undefined,
    leaveOut: undefined,
    days: "Monday evening",
    goBack: ["Your pain next morning is over 2 on two days in a row."],
  })),
  exercises: shoulderExercises,
  diary: diary(shoulderWeeks, (week) =>
    SHOULDER.map(([exercise, kind]) => ({
      exercise,
      dose: kind === "body" ? "3 × 15" : `3 × 15, ${kind === "band" ? "band" : `${week} kg`}`,
    })),
  ),
};
