/** Invented clinics, one for each way in which a clinic changes what its booklets look like. */
import { stringify } from "yaml";
import type { Language } from "./shipped.ts";

export interface ClinicText {
  /** The folder its clinic.yaml stands in. */
  readonly folder: string;
  readonly language: Language;
  readonly locale: string;
  readonly settings: Readonly<Record<string, unknown>>;
}

const ENGLISH = {
  name: "Harrow Lane Physiotherapy",
  phone: "01632 960 417",
  hours: "Monday to Friday, 8:00 to 18:00",
  out_of_hours: "01632 960 999 (nights and weekends)",
  emergency: "999",
};

const GERMAN = {
  name: "Praxis am Weiher",
  phone: "030 23125 204",
  hours: "Montag bis Freitag, 8:00 bis 18:00 Uhr",
  out_of_hours: "030 23125 271 (nachts und am Wochenende)",
  emergency: "112",
  language: "de",
};

const AMERICAN = {
  name: "O'Dell & Quist <Movement>",
  phone: "+1 (206) 555-0142",
  hours: "Monday to Friday, 8 am to 6 pm",
  out_of_hours: "206 555 0188",
  emergency: "911",
  locale: "en-US",
  paper: "Letter",
};

/** Few, since opening a clinic reads the whole library: each changes several things at once. */
const SETTINGS: readonly Readonly<Record<string, unknown>>[] = [
  { ...ENGLISH, address: "4 Harrow Lane", limits: { short_session: "15 min" } },
  {
    ...ENGLISH,
    pain: { comfortable: 3, during: 4, after: 3 },
    look: { colour: "#1d4f3a" },
    phone_page: "https://harrow-lane.example/phone?from=paper&for=you",
    week: { prefer: ["tue", "sat"] },
  },
  {
    ...AMERICAN,
    units: "lb",
    email: "hello@odell.example",
    week: { hard_days_in_row: 2 },
    dosing: { one_rm: "brzycki" },
  },
  {
    ...GERMAN,
    phone_page: "https://weiher.example/handy",
    paper: "Letter",
    dosing: { changeover: "2 min", last_rest: true },
  },
  { ...GERMAN, locale: "de-AT", pain: { comfortable: 1, during: 4, after: 3, call: 7 } },
];

export const CLINICS: readonly ClinicText[] = SETTINGS.map((settings, index) => {
  const language = settings.language === "de" ? "de" : "en";
  return {
    folder: `clinics/${index + 1}`,
    language,
    locale: String(settings.locale ?? (language === "de" ? "de-DE" : "en-GB")),
    settings,
  };
});

export const clinicFile = ({ settings }: ClinicText): string => stringify(settings);
