/** Plain English words for those that patient leaflets could do without. */

/** Long word, plain word: common practice of plain-language guides. */
const PLAIN: ReadonlyMap<string, string> = new Map(
  Object.entries({
    additional: "more",
    additionally: "also",
    alternatively: "or",
    anterior: "front",
    approximately: "about",
    assistance: "help",
    commence: "start",
    contraindicated: "not for you",
    demonstrate: "show",
    difficulty: "trouble",
    discomfort: "pain",
    discontinue: "stop",
    duration: "time",
    elevate: "raise",
    elevated: "raised",
    encounter: "meet",
    ensure: "make sure",
    excessive: "too much",
    experience: "feel",
    experiencing: "feeling",
    extremity: "arm or leg",
    facilitate: "help",
    frequently: "often",
    gastrocnemius: "calf",
    immediately: "at once",
    increasingly: "more and more",
    inflammation: "swelling",
    initially: "at first",
    initiate: "start",
    lateral: "side",
    medication: "medicine",
    numerous: "many",
    physician: "doctor",
    physiotherapist: "physio",
    posterior: "back",
    previously: "before",
    quadriceps: "front thigh muscle",
    regularly: "often",
    repetition: "time",
    repetitions: "times",
    simultaneously: "at the same time",
    subsequently: "then",
    sufficient: "enough",
    terminate: "stop",
    utilise: "use",
    utilize: "use",
  }),
);

/** The plain words for those of these long words that have one, in the given language. */
export function plainerWords(
  words: readonly string[],
  language: string,
): readonly (readonly [string, string])[] {
  if (!/^en\b/i.test(language)) return [];
  return words.flatMap((word) => {
    const plain = PLAIN.get(word.toLowerCase());
    return plain === undefined ? [] : [[word, plain] as const];
  });
}
