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
  const { url, fault } = readPicture(tree, source.file.replace(/[^/]*$/, card.image.file));
  if (url !== undefined) return { image: { url, alt: card.image.alt }, faults: [] };
  if (!fault) return { faults: [] };
  const { code, message, hint } = fault;
  return { faults: [new Fault(code, message, { place, frame: source.frame(place), hint })] };
}

/** A picture as a data: address, or what is wrong with it (without its place). */
export function readPicture(
  tree: Tree,
  path: string,
): { readonly url?: string; readonly fault?: Fault } {
  const name = path.replace(/^.*\//, "");
  const reading = tree.readBytes(path);
  if (reading.fault) {
    return { fault: new Fault(reading.fault.code, `${name}: ${reading.fault.message}`) };
  }
  const kind = kindOf(reading.bytes, name);
  if (!kind) {
    const hint = "Save it again as SVG, PNG or JPEG.";
    return { fault: new Fault("image-wrong", `${name} is not what its name says.`, { hint }) };
  }
  if (kind === "image/svg+xml") {
    const active = activeIn(Buffer.from(reading.bytes).toString("utf8"));
    if (active) {
      const hint =
        "Export it again as a plain SVG without scripts, links and fonts from elsewhere.";
      return { fault: new Fault("image-wrong", `${name} holds ${active}.`, { hint }) };
    }
  }
  return { url: `data:${kind};base64,${Buffer.from(reading.bytes).toString("base64")}` };
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
