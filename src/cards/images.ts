/** A clinic's own picture of an exercise: read from the card's folder, small, of a known kind, and without anything active. */
import { Fault } from "../faults/fault.ts";
import type { Tree } from "../files/tree.ts";
import type { Source } from "../read/source.ts";
import type { Card } from "./schema.ts";

export interface CardImage {
  /** data: address. */
  readonly url: string;
  readonly alt: string;
}

/** The card's picture. Faults: image-wrong, file-unreadable, file-too-large, outside-folder. */
export function readImage(
  tree: Tree,
  card: Card,
  source: Source,
): { readonly image?: CardImage; readonly faults: readonly Fault[] } {
  if (!card.image) return { faults: [] };
  const place = source.at(["image", "file"]);
  const wrong = (message: string, hint: string) => ({
    faults: [new Fault("image-wrong", message, { place, frame: source.frame(place), hint })],
  });
  if (card.figure) {
    return wrong("This card has both a figure and an image.", "Keep one of the two.");
  }
  const path = source.file.replace(/[^/]*$/, card.image.file);
  const reading = tree.readBytes(path);
  if (reading.fault) {
    const { code, message } = reading.fault;
    return {
      faults: [
        new Fault(code, `${card.image.file}: ${message}`, { place, frame: source.frame(place) }),
      ],
    };
  }
  const kind = kindOf(reading.bytes, card.image.file);
  if (!kind) {
    return wrong(
      `${card.image.file} is not what its name says.`,
      "Save it again as SVG, PNG or JPEG.",
    );
  }
  if (kind === "image/svg+xml") {
    const active = activeIn(Buffer.from(reading.bytes).toString("utf8"));
    if (active) {
      return wrong(
        `${card.image.file} holds ${active}.`,
        "Export it again as a plain SVG without scripts, links and fonts from elsewhere.",
      );
    }
  }
  const url = `data:${kind};base64,${Buffer.from(reading.bytes).toString("base64")}`;
  return { image: { url, alt: card.image.alt }, faults: [] };
}

type Kind = "image/svg+xml" | "image/png" | "image/jpeg";

/** The kind by the first bytes, where it agrees with the name. */
function kindOf(bytes: Uint8Array, name: string): Kind | undefined {
  const starts = (...head: readonly number[]) => head.every((byte, index) => bytes[index] === byte);
  if (/\.png$/i.test(name)) return starts(0x89, 0x50, 0x4e, 0x47) ? "image/png" : undefined;
  if (/\.jpe?g$/i.test(name)) return starts(0xff, 0xd8, 0xff) ? "image/jpeg" : undefined;
  const text = Buffer.from(bytes.subarray(0, 2000)).toString("utf8");
  return /<svg[\s>]/.test(text) ? "image/svg+xml" : undefined;
}

/** What an SVG holds that acts or leads elsewhere, in words. */
function activeIn(svg: string): string | undefined {
  if (/<!(DOCTYPE|ENTITY)/i.test(svg)) return "a document type";
  if (/<\s*(\w+:)?script/i.test(svg)) return "a script";
  if (/\son\w+\s*=/i.test(svg)) return "an event handler";
  if (/<\s*(\w+:)?(foreignObject|iframe|embed|object|audio|video)/i.test(svg))
    return "a foreign object";
  if (/(href|src)\s*=\s*["'](?!#|data:image\/(png|jpeg))/i.test(svg)) return "a link to elsewhere";
  if (/url\(\s*["']?(?!#)/i.test(svg) || /@import/i.test(svg)) return "a style from elsewhere";
  return undefined;
}
