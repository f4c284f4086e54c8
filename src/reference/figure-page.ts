/** The author's reference for figures: joints, postures, contacts and things, each with a picture from the library. */
import { figureOf } from "../cards/figures.ts";
import type { Library, LibraryCard } from "../cards/library.ts";
import { drawFigure } from "../figure/draw-figure.ts";
import { type Figure, figureSchema } from "../figure/format/schema.ts";
import {
  BASES,
  MIDDLE_JOINTS,
  MIDDLE_PARTS,
  PAIRED_JOINTS,
  PAIRED_PARTS,
  SURFACES,
} from "../figure/format/words.ts";
import { authorSchema, fieldTable } from "./fields.ts";
import { SAMPLES } from "./figure-samples.ts";

/** Folder of the pictures, from the folder of the cards. */
const FOLDER = "figures";

export interface FigurePage {
  readonly text: string;
  /** File (from the folder of the cards) to SVG. */
  readonly pictures: ReadonlyMap<string, string>;
}

/** The section on figures, and the pictures it shows: for each word the first card that uses it. */
export function figurePage(library: Library): FigurePage {
  const cards = [...library.cards.values()].sort((a, b) => (a.card.id < b.card.id ? -1 : 1));
  const pictures = new Map<string, string>();
  const shown = (uses: (figure: Figure) => boolean): string => {
    const card = cards.find(({ card: { figure } }) => figure && uses(figure));
    const sample = card ? undefined : [...SAMPLES].find(([, figure]) => uses(figure));
    const svg = card ? figureOf(card, "right")?.svg : sample && drawFigure(sample[1], "right").svg;
    const name = card?.card.id ?? sample?.[0];
    if (!svg || name === undefined) return "";
    const file = `${FOLDER}/${name}.svg`;
    pictures.set(file, `${svg}\n`);
    return card ? `![${alt(card)}](${file})<br>\`${name}\`` : `![A sample](${file})`;
  };
  const text = `## Figures

The picture of a card is drawn from joint angles, in the client's own side, and printed in grey as well
as in colour. Write every figure for a client whose working side is the right. \`paulatim library
figures --watch\` draws all of them again while you edit; \`paulatim check\` names every angle out of
range, hand or foot off its surface, body through the floor and balance lost, and a figure with a
fault is never printed. Lengths are in body heights, angles in degrees.

${fieldTable(authorSchema(figureSchema), ["poses", "props", "arrows"])}

A pose names joints (\`knee right: 90\`, \`knee: 90\` for both) and what rests where (\`rests: { foot:
floor, hand: { on: wall, slides: true } }\`). Stated angles are fixed; all others are found so that
everything rests where it should. A bare number is the first motion of the joint.

| Joint | Motions, the positive one first |
| --- | --- |
${[...Object.entries(PAIRED_JOINTS), ...Object.entries(MIDDLE_JOINTS)]
  .map(([name, motions]) => `| \`${name}\` | ${motions.join(", ")} |`)
  .join("\n")}

### Base postures

${table(BASES, (name) => shown((figure) => figure.base === name || figure.poses.some((pose) => pose.base === name)))}

### What can rest

${table([...PAIRED_PARTS, ...MIDDLE_PARTS], (name) => shown((figure) => restsOf(figure).some(([part]) => part === name || part.startsWith(`${name} `))))}

### What it can rest on

Parts can also rest on a part of the own body.

${table(SURFACES, (name) => shown((figure) => restsOf(figure).some(([, on]) => on === name)))}

### Things

${table(Object.keys(authorSchema(figureSchema).properties?.props?.properties ?? {}), (name) => shown((figure) => Object.keys(figure.props ?? {}).includes(name)))}
`;
  return { text, pictures };
}

function table(names: readonly string[], picture: (name: string) => string): string {
  return [
    "| Word | As in |",
    "| --- | --- |",
    ...names.map((name) => `| \`${name}\` | ${picture(name)} |`),
  ].join("\n");
}

/** Parts that rest in any pose, each with what it rests on. */
function restsOf({ poses }: Figure): (readonly [string, string])[] {
  return poses.flatMap(({ rests }) =>
    Object.entries(rests ?? {}).flatMap(([part, place]) => {
      if (place === undefined) return [];
      const on = typeof place === "object" && place !== null && "on" in place ? place.on : place;
      return [[part, String(on)] as const];
    }),
  );
}

const alt = (card: LibraryCard): string => card.card.title.replaceAll(/[[\]|]/g, "");
