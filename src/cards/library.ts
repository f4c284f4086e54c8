/** The cards of a library, checked, with the file each came from. */

import type { Source } from "../read/source.ts";
import type { CardImage } from "./images.ts";
import type { Card } from "./schema.ts";
import type { Sections } from "./sections.ts";
import type { Vocabulary } from "./vocabulary.ts";

export interface LibraryCard {
  readonly card: Card;
  readonly sections: Sections;
  readonly source: Source;
  /** The clinic's own picture, where the card has one. */
  readonly image?: CardImage | undefined;
  /** The picture in words, with placeholders, where they are not its own: in a translation. */
  readonly picture?: string;
  /** Captions of its frames, where they are not its own: in a translation; none where that has none. */
  readonly captions?: readonly string[];
}

export interface Library {
  readonly words: Vocabulary;
  readonly cards: ReadonlyMap<string, LibraryCard>;
}
