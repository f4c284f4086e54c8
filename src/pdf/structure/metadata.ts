/** What a PDF says about itself: title, language, dates, and whether it is made for everyone. */
import type { PdfObjects } from "../objects/objects.ts";
import { dict, Name, readText, Stream, Text, textString } from "../objects/values.ts";

const CREATOR = "Paulatim";

export interface About {
  readonly title: string;
  readonly language: string;
}

/** Title and language, as far as the PDF names them. */
export function readAbout(pdf: PdfObjects): About {
  const title = pdf.resolve(pdf.dict(pdf.info).get("Title"));
  const language = pdf.resolve(pdf.dict(pdf.root).get("Lang"));
  return {
    title: title instanceof Text ? readText(title).trim() : "",
    language: language instanceof Text ? readText(language).trim() : "",
  };
}

/** Writes the date into the information of the document, and has readers show its title. */
export function setAbout(pdf: PdfObjects, { title }: About, date: Date): void {
  const info = pdf.dict(pdf.info);
  const digits = date.toISOString().replace(/\D/g, "").slice(0, 14);
  for (const key of ["CreationDate", "ModDate"]) info.set(key, new Text(`D:${digits}+00'00'`));
  info.set("Creator", textString(CREATOR));
  if (title !== "") info.set("Title", textString(title));
  const root = pdf.dict(pdf.root);
  root.set("ViewerPreferences", dict({ DisplayDocTitle: true }));
  root.set("MarkInfo", dict({ Marked: true }));
}

/** Adds the metadata; `accessible` claims PDF/UA-1. */
export function setMetadata(
  pdf: PdfObjects,
  { title, language }: About,
  { date, accessible }: { readonly date: Date; readonly accessible: boolean },
): void {
  const producer = pdf.resolve(pdf.dict(pdf.info).get("Producer"));
  const day = date.toISOString().replace(/\.\d+Z$/, "Z");
  const lines = [
    `<?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>`,
    `<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">`,
    `<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/">`,
    `<dc:title><rdf:Alt><rdf:li xml:lang="x-default">${escaped(title)}</rdf:li></rdf:Alt></dc:title>`,
    ...(language === ""
      ? []
      : [`<dc:language><rdf:Bag><rdf:li>${escaped(language)}</rdf:li></rdf:Bag></dc:language>`]),
    `<xmp:CreateDate>${day}</xmp:CreateDate><xmp:ModifyDate>${day}</xmp:ModifyDate>`,
    `<xmp:CreatorTool>${CREATOR}</xmp:CreatorTool>`,
    ...(producer instanceof Text
      ? [`<pdf:Producer>${escaped(readText(producer))}</pdf:Producer>`]
      : []),
    `</rdf:Description>`,
    ...(accessible
      ? [
          `<rdf:Description rdf:about="" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/"><pdfuaid:part>1</pdfuaid:part></rdf:Description>`,
        ]
      : []),
    `</rdf:RDF></x:xmpmeta>`,
    `<?xpacket end="r"?>`,
  ];
  // Not compressed: programs that know nothing of PDF look for it.
  const entries = dict({ Type: new Name("Metadata"), Subtype: new Name("XML") });
  pdf
    .dict(pdf.root)
    .set("Metadata", pdf.add(new Stream(entries, Buffer.from(lines.join("\n"), "utf8"))));
}

const NAMED: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;" };

/** Text for XML; what XML cannot hold at all is left out. */
function escaped(text: string): string {
  return text
    .replace(/\p{Surrogate}/gu, "")
    .replace(/[^\t\n\r\x20-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, "")
    .replace(/[&<>]/g, (character) => NAMED[character] ?? character);
}
