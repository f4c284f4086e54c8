/** How many pages a PDF has. */
import { readPdf } from "../../src/pdf/objects/objects.ts";
import { pageObjects } from "../../src/pdf/structure/destinations.ts";

/** Throws `pdf-broken` when the bytes are not a whole PDF. */
export const pageCount = (bytes: Uint8Array): number => pageObjects(readPdf(bytes)).length;
