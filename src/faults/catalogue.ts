/**
 * Every fault the program can report, by its stable code.
 *
 * Style of messages: say what is wrong with the value in hand, in one sentence, without blame or
 * jokes; the hint says what to do. Codes never change their meaning once released.
 */

/** Exit status of the command line (see README): the input, the call, the machine, the program. */
export const EXIT = { done: 0, input: 1, usage: 2, machine: 3, program: 70 } as const;

export const CATALOGUE = {
  // reading
  "file-unreadable": { means: "A file or folder cannot be read.", exit: EXIT.input },
  "file-too-large": {
    means: "A file is larger than any card, protocol or plan.",
    exit: EXIT.input,
  },
  "outside-folder": { means: "A path leads out of the clinic's folder.", exit: EXIT.input },
  "front-matter-missing": { means: "A file does not start with front matter.", exit: EXIT.input },
  "front-matter-language": {
    means: "Front matter asks for a language other than YAML.",
    exit: EXIT.input,
  },
  "yaml-syntax": { means: "Front matter is not valid YAML.", exit: EXIT.input },
  "yaml-alias": { means: "Front matter uses YAML aliases.", exit: EXIT.input },
  "unknown-field": { means: "A field has a name that does not exist here.", exit: EXIT.input },
  "missing-field": { means: "A required field is missing.", exit: EXIT.input },
  "wrong-value": { means: "A value has the wrong type, unit or range.", exit: EXIT.input },
  "missing-section": { means: "A card lacks a section that every card has.", exit: EXIT.input },
  "unknown-section": {
    means: "A card has a section under a heading that does not exist.",
    exit: EXIT.input,
  },
  "unknown-placeholder": {
    means: "A card's text uses a placeholder that does not exist.",
    exit: EXIT.input,
  },
  "unsafe-text": {
    means: "A text holds a link or picture from outside the clinic's folder.",
    exit: EXIT.input,
  },
  // links
  "duplicate-id": { means: "Two files use the same id.", exit: EXIT.input },
  "unknown-card": { means: "A card is named that does not exist.", exit: EXIT.input },
  "unknown-protocol": { means: "A protocol is named that does not exist.", exit: EXIT.input },
  "ladder-circle": {
    means: "Harder or easier cards lead back to where they began.",
    exit: EXIT.input,
  },
  "ladder-order": {
    means: "A harder card is not harder, or an easier card not easier.",
    exit: EXIT.input,
  },
  "figure-wrong": {
    means: "A card's figure cannot be drawn as it is stated.",
    exit: EXIT.input,
  },
  "low-contrast": {
    means: "A clinic's colour cannot be read well enough.",
    exit: EXIT.input,
  },
  "image-wrong": {
    means: "A card's own picture cannot be used.",
    exit: EXIT.input,
  },
  "hard-to-read": {
    means: "A text for clients is harder to read than the clinic's limit.",
    exit: EXIT.input,
  },
  "translation-missing": {
    means: "A text that a plan uses has no translation into the clinic's language.",
    exit: EXIT.input,
  },
  "translation-stale": {
    means: "A translation is older than the last review of its original.",
    exit: EXIT.input,
  },
  "review-due": { means: "A card's review date has passed.", exit: EXIT.input },
  // protocols and plans
  "week-gap": {
    means: "A protocol's table leaves a week of its phase without a dose, or fills it twice.",
    exit: EXIT.input,
  },
  "sum-differs": { means: "A protocol's declared sum differs from its table.", exit: EXIT.input },
  "sum-not-laid": {
    means: "A plan lays out another sum of an exercise than its protocol's source prints.",
    exit: EXIT.input,
  },
  "not-for-client": {
    means: "An exercise must not be given to a client with this flag.",
    exit: EXIT.input,
  },
  "sign-not-theirs": {
    means:
      "A sign of the course is none for this client, and the clinician's word stands in its place.",
    exit: EXIT.input,
  },
  "title-in-words": {
    means: "A card or protocol names another card's exercise in plain words.",
    exit: EXIT.input,
  },
  "equipment-missing": {
    means: "The client does not have what an exercise needs.",
    exit: EXIT.input,
  },
  "change-unused": {
    means: "A plan changes an exercise that is not in its program.",
    exit: EXIT.input,
  },
  "card-twice": {
    means: "A plan or protocol has one card twice in a phase.",
    exit: EXIT.input,
  },
  "date-outside": {
    means: "A date of the client's week lies outside the program.",
    exit: EXIT.input,
  },
  "week-contradiction": {
    means: "What exercises ask of a week contradicts itself, whatever time there is.",
    exit: EXIT.input,
  },
  "dose-incomplete": { means: "An exercise has no complete dose in some week.", exit: EXIT.input },
  "measure-missing": {
    means: "A load target has no measure to be computed from.",
    exit: EXIT.input,
  },
  "measure-side": {
    means: "A measure was taken on another side than the exercise needs.",
    exit: EXIT.input,
  },
  "measure-range": {
    means: "A repetition test lies outside the range its formula is valid for.",
    exit: EXIT.input,
  },
  "measure-old": { means: "A measure is older than the clinic's limit.", exit: EXIT.input },
  "load-not-makeable": {
    means: "The client's equipment cannot make any load at or under the target.",
    exit: EXIT.input,
  },
  "load-short": {
    means: "The client's equipment ends below the target.",
    exit: EXIT.input,
  },
  "load-light": {
    means: "By their own measure the heaviest that the client has is far too light for the effort.",
    exit: EXIT.input,
  },
  "age-outside": {
    means: "A course or a card is not meant for a client of this age.",
    exit: EXIT.input,
  },
  "age-unknown": {
    means: "A course or a card is meant for some ages, and the client's is not known.",
    exit: EXIT.input,
  },
  "growth-plates": {
    means: "The client may still be growing.",
    exit: EXIT.input,
  },
  "events-near": {
    means: "Two of the client's own hard events lie close together.",
    exit: EXIT.input,
  },
  "dose-beyond-measure": {
    means: "By their own measure the client cannot do the dose with what they have.",
    exit: EXIT.input,
  },
  "pace-unsure": {
    means:
      "A share of the best speed gives no seconds, as what was measured is another kind of run.",
    exit: EXIT.input,
  },
  "load-held": {
    means: "The clinic's limit for a step keeps a load well below its target.",
    exit: EXIT.input,
  },
  "load-coarse": {
    means: "The client's equipment makes a larger step than the clinic's limit.",
    exit: EXIT.input,
  },
  "distance-steep": {
    means: "The distance of a week grows faster than plan, protocol or card allow.",
    exit: EXIT.input,
  },
  "distance-unknown": {
    means: "Growth in distance is limited, and a run has no known length.",
    exit: EXIT.input,
  },
  "ramp-steep": {
    means: "A week's work of one tissue, in one quality, grows faster than the clinic's limit.",
    exit: EXIT.input,
  },
  "session-long": {
    means: "A session takes longer than the client or the clinic allows.",
    exit: EXIT.input,
  },
  "session-crowded": {
    means: "A session holds more exercises than the clinic's limit.",
    exit: EXIT.input,
  },
  "tissue-untrained": { means: "A main tissue has no exercise in some week.", exit: EXIT.input },
  "no-easier-rung": { means: "An exercise has no easier card to step down to.", exit: EXIT.input },
  "no-free-slot": { means: "The client has no free time to put a session in.", exit: EXIT.input },
  "week-impossible": {
    means: "The sessions cannot be laid out in the client's week.",
    exit: EXIT.input,
  },
  "week-unknown": {
    means: "The search for a week ended at its limit without an answer.",
    exit: EXIT.input,
  },
  "issued-broken": {
    means: "A record of what was issued cannot be read, or is that of another plan.",
    exit: EXIT.input,
  },
  "issued-unread": {
    means: "There is no record of what was issued where one was looked for.",
    exit: EXIT.input,
  },
  "issued-kept": {
    means: "A plan now says otherwise for sessions that stay as they were issued.",
    exit: EXIT.input,
  },
  "bouts-lost": {
    means: "What is left of a week has no room for all its sessions.",
    exit: EXIT.input,
  },
  "week-not-proven": {
    means: "A week is laid out by every rule, but not shown to be the best layout.",
    exit: EXIT.input,
  },
  "weeks-left-out": {
    means: "Weeks away leave out every week of an exercise.",
    exit: EXIT.input,
  },
  "sessions-taken": {
    means: "Days away and events leave an exercise fewer sessions than its frequency comes to.",
    exit: EXIT.input,
  },
  "days-wait": {
    means: "What is done every few days waits for a later day where the client has no time.",
    exit: EXIT.input,
  },
  "days-off-missed": {
    means: "Hard exercises lie on days of work, where the client likes days off for them.",
    exit: EXIT.input,
  },
  "not-in-program": {
    means: "An exercise that was asked about is not in a client's program, or not in all of it.",
    exit: EXIT.input,
  },
  "remedy-fails": {
    means: "A remedy was tried in the plan and did not do away with its fault.",
    exit: EXIT.input,
  },
  "edit-impossible": {
    means: "A change cannot be written into a file without harm to the rest of it.",
    exit: EXIT.input,
  },
  "flags-not-asked": {
    means: "A plan does not say whether the client was asked for health flags.",
    exit: EXIT.input,
  },
  "flag-silent": {
    means: "No card says anything about a health flag of the client.",
    exit: EXIT.input,
  },
  "diary-unread": {
    means: "A diary of the client lies beside a plan, with entries after its last signature.",
    exit: EXIT.input,
  },
  "signature-stale": {
    means: "A plan, or what is computed from it, has changed since it was signed.",
    exit: EXIT.input,
  },
  "not-signed": { means: "A plan has not been signed off by a clinician.", exit: EXIT.input },
  // diaries
  "diary-unreadable": {
    means: "A file is not a diary, or one of a form that is not read.",
    exit: EXIT.input,
  },
  "diary-broken": { means: "A row of a diary cannot be read.", exit: EXIT.input },
  "diary-code-broken": {
    means: "Codes scanned from a phone are damaged or not all there.",
    exit: EXIT.input,
  },
  "diaries-mixed": {
    means: "Diaries of several clients or plans were given as one.",
    exit: EXIT.input,
  },
  // writing
  "template-broken": { means: "A template cannot be rendered.", exit: EXIT.input },
  "output-unwritable": { means: "An output file cannot be written.", exit: EXIT.machine },
  "disk-full": { means: "The disk is full.", exit: EXIT.machine },
  "browser-missing": { means: "No browser was found to print the PDF with.", exit: EXIT.machine },
  "browser-failed": {
    means: "The browser could not be started or stopped while printing.",
    exit: EXIT.machine,
  },
  "glyph-missing": {
    means: "A text holds a character that no typeface at hand can print.",
    exit: EXIT.input,
  },
  "pdf-unfinished": {
    means: "A PDF was left as the browser made it, since it could not be read.",
    exit: EXIT.program,
  },
  "pdf-broken": { means: "The printed PDF is not what was asked for.", exit: EXIT.program },
  usage: { means: "The command was called with words it does not know.", exit: EXIT.usage },
  internal: { means: "A fault of the program itself.", exit: EXIT.program },
} as const satisfies Record<string, { means: string; exit: number }>;

export type FaultCode = keyof typeof CATALOGUE;
