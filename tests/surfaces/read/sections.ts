/** Cuts a booklet's blocks at its headings, as a reader finds a page by its title. */
import type { Block } from "./outline.ts";

export interface Section {
  readonly title: string;
  /** Under the title, up to the next heading of any level. */
  readonly blocks: readonly Block[];
  /** Headings under this one, with what stands under each. */
  readonly parts: readonly Section[];
}

/** Headings of level 1 and 2 begin a section; deeper ones begin a part of it. */
export function sectionsOf(blocks: readonly Block[]): Section[] {
  const sections = cut(blocks, 2).map(({ title, blocks: inside }) => {
    const deep = cut([{ kind: "heading", level: 2, text: title }, ...inside], 6);
    const [own, ...parts] = deep;
    return { title, blocks: own?.blocks ?? [], parts };
  });
  return sections;
}

function cut(blocks: readonly Block[], level: number): Section[] {
  const found: { title: string; blocks: Block[]; parts: readonly Section[] }[] = [];
  for (const block of blocks) {
    if (block.kind === "heading" && block.level <= level) {
      found.push({ title: block.text, blocks: [], parts: [] });
    } else {
      if (found.length === 0) found.push({ title: "", blocks: [], parts: [] });
      found.at(-1)?.blocks.push(block);
    }
  }
  return found;
}

export const textsIn = (blocks: readonly Block[]): string[] =>
  blocks.flatMap((block) => (block.kind === "text" ? [block.text] : []));

export const itemsIn = (blocks: readonly Block[]): string[] =>
  blocks.flatMap((block) => (block.kind === "item" ? [block.text] : []));

export type Row = Extract<Block, { kind: "row" }>;

export const rowsIn = (blocks: readonly Block[]): Row[] =>
  blocks.flatMap((block) => (block.kind === "row" ? [block] : []));

export const picturesIn = (blocks: readonly Block[]): string[] =>
  blocks.flatMap((block) => (block.kind === "picture" ? [block.text] : []));
