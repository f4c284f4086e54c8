/** The reference of what clients send back: the diary's file, column by column, and the codes made from it. */
import { LONGEST_PART } from "../diary/code.ts";
import {
  COLUMN_NAMES,
  COLUMNS,
  LARGEST,
  LONGEST_NOTE,
  MOST_ROWS,
  VERSION,
} from "../diary/columns.ts";

/** The page in Markdown. */
export function diaryPage(): string {
  return `# The client's diary

The booklet's HTML file keeps a diary on the client's phone. It comes back in one of two ways: as a
CSV file that the client sends or saves, or as QR codes on the phone's screen. \`paulatim diary FILE…\`
reads both, several files of one client at once, and shows each session with what was not as planned;
\`--csv FILE\` writes them as one file, \`--json\` prints them for programs. Nothing is sent by itself.

## The file

CSV as in RFC 4180: UTF-8 with a byte order mark, commas, lines ended by CR LF. Each planned session
has one row for itself, in which \`exercise\` is empty, and below it one row for each exercise. Rows of
a session belong together by \`date\` and \`part\`, and all of them repeat what stands in columns of every
row but for \`done\`. A diary without sessions has one row with the first three columns alone.

Pain and effort are numbers from 0 to 10. Numbers have a decimal dot. An empty cell means that
nothing was said, never 0 or no.

| Column | Rows | What stands in it | What it means |
| --- | --- | --- | --- |
${COLUMN_NAMES.map(rowOf).join("\n")}

A text that begins as a formula does (with =, +, - or @, a tab or a line break) has an apostrophe
before it, so that no spreadsheet runs it; one that a client began with an apostrophe and such a sign
has one more. So has what follows a semicolon, a tab or a line break within a text, since spreadsheets
of many languages begin a cell there. Taking one off gives the text again. A note longer than ${thousands(LONGEST_NOTE)} characters is cut and
ends in …

## What reading forgives

Columns in another order or of other names beside these; semicolons or tabs between cells, and then
decimal commas; UTF-16; no byte order mark; other line ends; empty lines; capitals in words; blanks
around values. Everything else is told with its line and column, all problems at once, and a session
of which a row cannot be read is left out. A date that a spreadsheet has rewritten (\`1/12/2026\`) is not
guessed at. Of two files the entry of a session that was written last is taken. A file may have
${LARGEST / 1024 / 1024} MB and ${thousands(MOST_ROWS)} rows.

## Versions

\`paulatim_diary\` is ${VERSION} in every row. New columns alone do not change it: readers pass over columns
that they do not know. It grows when a column goes or changes its meaning; a file of a version above
one's own is refused as a whole. The version of the codes and that of \`--json\` are counted for
themselves by the same rule.

## The codes

The file's text without its byte order mark, deflated (RFC 1951), written in Base45 (RFC 9285) and cut
into parts of at most ${LONGEST_PART} characters, all of QR's alphanumeric mode:

    PAULATIM1:PART/PARTS:CHECKSUM:BASE45:

The checksum is the CRC-32 of the deflated bytes of all parts together, eight hexadecimal digits.
The colon at the end says that the code is all there: Base45 may end in a space. Save what a scanner
reads as a text file, one code a line, or let it type into \`paulatim diary -\`. Parts may come in any
order and several times, in capitals or not. The scanner's keyboard layout has to be the machine's own.

## For programs

\`--json\` prints \`version\`, \`plan\`, \`client\`, \`sessions\` and \`problems\` (as \`check --json\` does). A session
has \`date\`, \`part\`, \`week\`, \`booklet\`, \`done\`, \`done_on\`, \`short\`, \`effort\`, \`pain_during\` (the worst of
its exercises), \`pain_after\`, \`pain_morning\`, \`worse_morning\`, \`note\`, \`written\` and \`exercises\`; an
exercise has \`card\`, \`title\`, \`side\`, \`done\`, \`planned\` and \`real\` (each \`sets\`, \`reps\`, \`kg\`) and
\`pain_during\`. They mean what the columns of the file mean; what was not said is null.`;
}

function rowOf(name: (typeof COLUMN_NAMES)[number]): string {
  const { rows, needed, kind, says } = COLUMNS[name];
  return `| \`${name}\` | ${rows} | ${kind.values}${needed ? "" : "; may be empty"} | ${says} |`;
}

const thousands = (n: number): string => n.toLocaleString("en-GB");
