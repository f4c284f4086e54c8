/** The author's reference pages and the JSON Schemas beside them, made from the schemas alone. */

import type { Library } from "../cards/library.ts";
import { cardSchema } from "../cards/schema.ts";
import { PLACEHOLDERS, SECTIONS } from "../cards/sections.ts";
import { type Vocabulary, vocabularySchema } from "../cards/vocabulary.ts";
import { clinicSettings } from "../clinic/schema.ts";
import { planSchema } from "../plan/schema.ts";
import { dosePart } from "../prescription/fields.ts";
import { protocolSchema } from "../protocols/schema.ts";
import { cardTranslationSchema } from "../translations/card.ts";
import { protocolTranslationSchema } from "../translations/protocol.ts";
import { vocabularyTranslationSchema } from "../translations/vocabulary.ts";
import { TRANSLATED } from "../words/languages.ts";
import { diaryPage } from "./diary-page.ts";
import { authorSchema, fieldTable, schemaFile } from "./fields.ts";
import { figurePage } from "./figure-page.ts";

const NOTE = "<!-- Made from the schemas by `npm run reference`; changes here are lost. -->";

/** Where a dose is described, from the pages of protocols and plans. */
const CARD_DOSE = "../../exercises/README.md#a-dose";

/** File (from the package's folder) to content. */
export function referenceFiles(library: Library): ReadonlyMap<string, string> {
  const { words } = library;
  const figures = figurePage(library);
  const card = authorSchema(cardSchema(words));
  const protocol = authorSchema(protocolSchema);
  const plan = authorSchema(planSchema(words));
  const clinic = authorSchema(clinicSettings);
  return new Map([
    ["exercises/README.md", cardPage(card, words, figures.text)],
    ...[...figures.pictures].map(([file, svg]) => [`exercises/${file}`, svg] as const),
    ["exercises/card.schema.json", schemaFile(cardSchema(words))],
    ["templates/protocols/README.md", protocolPage(protocol)],
    ["templates/protocols/protocol.schema.json", schemaFile(protocolSchema)],
    ["templates/demo/README.md", planPage(plan, clinic)],
    ["templates/demo/plan.schema.json", schemaFile(planSchema(words))],
    ["templates/demo/clinic.schema.json", schemaFile(clinicSettings)],
    ["templates/diary.md", page(diaryPage())],
  ]);
}

function cardPage(
  card: ReturnType<typeof authorSchema>,
  words: Vocabulary,
  figures: string,
): string {
  return page(`# Exercise cards

A card is a Markdown file: YAML front matter between two lines of \`---\`, then the text of the
exercise under fixed headings. It lies in the folder of its region and is named by its id.
\`paulatim new card exercises/REGION/ID.md\` makes one to fill in; \`paulatim check\` finds every
problem. Editors that check YAML can use \`card.schema.json\` in this folder.

## Front matter

${fieldTable(card, ["figure"], "[a dose](#a-dose)")}

## A dose

What a set is, how many, how hard and how often. A card's dose has at least \`sets\` and what a set is; a
protocol and a plan state only what is different.

${fieldTable(authorSchema(dosePart))}

Times are written with their unit (\`30 s\`, \`2 min\`, \`48 h\`, \`6 weeks\`), as are masses (\`12.5 kg\`),
distances (\`20 m\`), speeds (\`9 km/h\`) and shares (\`30 %\`). Dates are YYYY-MM-DD. A tempo names the
seconds of lowering first, then the pause at the bottom, lifting, and the pause at the top, also
where the lift comes first; X means as fast as is safe (common practice). Text that holds a colon
needs quotation marks.

\`demand\` orders the cards of a region: a card named under \`harder\` has more, one named under
\`easier\` less. \`body_share\` is the share of body mass that the exercise moves; one repetition
maximum is counted on that share and the added load together, so a measure taken with one card of a
movement serves the others named in \`capacity_from\`.

## Text

| Heading | What stands under it |
| --- | --- |
${SECTIONS.map(({ heading, says }) => `| \`## ${heading}\` | ${says} |`).join("\n")}

Write for a tired reader: short sentences, everyday words, one action a step. Sets, repetitions and
seconds come from the dose and are not written here. HTML, pictures and outside links are not read.

A section that differs with what makes the load may stand a second time, for those things alone:
\`## Set up with leg-press-machine, barbell\`. The words are some of \`load.with\`; who has another of
them, or no load yet, reads the plain section. \`equipment_with\` does the same for what is needed. So
a page says only what this client has.

Cards for one side at a time may hold these words, which become right for each client:

| Placeholder | Becomes |
| --- | --- |
${Object.entries(PLACEHOLDERS)
  .map(([name, says]) => `| \`{${name}}\` | ${says} |`)
  .join("\n")}

## Translations

The translation of \`ID.md\` lies beside it, or in a clinic's own folder of cards, as
\`ID.LANGUAGE.md\`; languages: ${TRANSLATED.join(", ")}. Field names and headings stay as they are in
every language, so that original and translation can be laid side by side; \`## For the clinician\` is
not translated. A clinic's \`language\` decides which is printed. What a plan uses that has no
translation, or one that is older than its original's last review, is a warning, and the original or
the older text is printed. All texts of a card are translated or none; \`check\` says what is missing.

${fieldTable(authorSchema(cardTranslationSchema(words)))}

In German a placeholder is a stem, and the ending follows the bracket: \`Ihr {side}er Fuß\`,
\`die {side}e Ferse\`, \`mit dem {other}en Bein\`. \`vocabulary.LANGUAGE.yaml\` beside
\`vocabulary.yaml\` holds the client's words for regions, tissues and equipment; flags stay with the
clinician and are not translated.

${fieldTable(authorSchema(vocabularyTranslationSchema(words)))}

A card that is written in another language from the start says so under \`language\` and needs no
translation into it.

${figures}
## Vocabulary

The words for regions, tissues, equipment and flags are in \`vocabulary.yaml\` of this folder. A
clinic's own \`vocabulary.yaml\` beside its cards has the same form and holds only what it adds or says
otherwise. What a clinic takes for granted in every home it lists under \`at_home\` in clinic.yaml.

${fieldTable(authorSchema(vocabularySchema))}

### Regions

${wordTable(words.regions)}

### Tissues

${wordTable(words.tissues)}

### Equipment

${wordTable(Object.fromEntries(Object.entries(words.equipment).map(([id, { say, makes, home }]) => [id, `${say}${makes ? ` (makes a load: ${makes})` : ""}${home ? " (in every home)" : ""}`])))}

### Flags

${wordTable(words.flags)}
`);
}

function protocolPage(protocol: ReturnType<typeof authorSchema>): string {
  return page(`# Protocols

A protocol is a course for a condition, phase by phase: a Markdown file of front matter with notes
for the clinician below it. \`paulatim new protocol protocols/ID.md\` makes one to fill in.

Weeks are counted from the first week of the phase. An exercise is dosed by what holds in every week
(\`dose\`) and, over it, by a table (\`weeks\`) or a \`rule\`; what neither says comes from the card. In
weeks without a row the \`dose\` holds alone, if it says how many sets, what a set is and how often; if
not, these weeks are an error. \`3-4: none\` leaves weeks without the exercise.

A set is repetitions (\`reps\`, with \`tempo\`), holds (\`hold\`, with \`reps\`), a \`time\`, a \`distance\`
(with \`reps\`) or \`turns\`, and never two of them. What is stated later says all of it: a \`time\` over a
card's repetitions drops their number and tempo.

${fieldTable(protocol, [], `[a dose](${CARD_DOSE})`)}

## Translations

The translation of \`ID.md\` lies beside it, or in a clinic's own folder of protocols, as
\`ID.LANGUAGE.md\` (${TRANSLATED.join(", ")}), with the texts for clients alone: front matter without
notes below it. Phases stand by their ids, reasons and signs by the ids of their cards.

${fieldTable(authorSchema(protocolTranslationSchema))}
`);
}

function planPage(
  plan: ReturnType<typeof authorSchema>,
  clinic: ReturnType<typeof authorSchema>,
): string {
  return page(`# An invented clinic

Two invented clients of an invented clinic, to try the program with: \`npm run demo\` writes their
booklets. A clinic's folder holds \`clinic.yaml\`, its plans, and if it likes its own \`exercises/\` and
\`protocols/\`.

## A plan

\`paulatim new plan CLIENT.md\` makes one to fill in. The text below the front matter is the
clinician's note to the client and is printed on the first page.

${fieldTable(plan, [], `[a dose](${CARD_DOSE})`)}

## Remedies as edits

\`check --json\` and \`plan --json\` give for each fault the \`remedies\` there are: a \`sentence\`, the
\`edits\` of the plan that state it, and whether it \`needs_why\`.

| kind | path | value |
| --- | --- | --- |
| \`set\` | a field, such as \`["week", "free", "mon", "evening"]\` | what it holds from now on; groups around it are made where they are missing |
| \`append\` | a list, such as \`["swap"]\` | one item more at its end; the list is made where it is missing |

Numbers in a path count the items of a list from 0. \`null\` in a value is the reason, which whoever takes
the remedy has to give. \`paulatim plan PLAN --apply N\` makes the edits of one, as \`plan\` numbers them,
lays the plan out again, and writes it where the fault is gone.

## The clinic's settings, clinic.yaml

${fieldTable(clinic)}
`);
}

const page = (text: string): string => `${NOTE}\n\n${text.trim()}\n`;

function wordTable(words: Readonly<Record<string, string>>): string {
  return [
    "| Id | Meaning |",
    "| --- | --- |",
    ...Object.entries(words).map(([id, says]) => `| \`${id}\` | ${says} |`),
  ].join("\n");
}
