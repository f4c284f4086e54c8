/** A sheet of all cards' pictures at print size, to look over a whole library at once. */
import { figureFaults, figureOf, svgUrl } from "../cards/figures.ts";
import type { Library, LibraryCard } from "../cards/library.ts";

/** The sheet as one HTML file that needs nothing else, cards by region and demand. */
export function contactSheet(library: Library, title: string): string {
  const regions = Object.entries(library.words.regions).flatMap(([region, name]) => {
    const cards = [...library.cards.values()]
      .filter(({ card }) => card.region === region)
      .sort((a, b) => a.card.demand - b.card.demand || (a.card.id < b.card.id ? -1 : 1));
    return cards.length === 0
      ? []
      : [`<h2>${escaped(name)}</h2>\n<ul>\n${cards.map(entry).join("\n")}\n</ul>`];
  });
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(title)}</title>
<style>${STYLE}</style>
</head>
<body>
<h1>${escaped(title)}</h1>
${regions.join("\n")}
</body>
</html>
`;
}

function entry(card: LibraryCard): string {
  const { id, title, demand } = card.card;
  return `<li>${picture(card)}<p><strong>${escaped(title)}</strong><br>${escaped(id)} · ${demand}</p></li>`;
}

/** The picture for the right side, or in its place why there is none. */
function picture(card: LibraryCard): string {
  if (card.image) return image(card.image.url, card.image.alt, 70);
  const drawing = figureOf(card, card.card.side === "each" ? "right" : "none");
  if (drawing?.svg !== undefined) return image(svgUrl(drawing.svg), drawing.alt, drawing.width);
  const faults = figureFaults(card).map(({ message }) => message);
  return `<p class="none">${escaped(faults.join(" ") || "No figure.")}</p>`;
}

function image(url: string, alt: string, width: number): string {
  return `<img src="${url}" alt="${escaped(alt)}" style="width:${width}mm">`;
}

function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (letter) => `&#${letter.codePointAt(0)};`);
}

const STYLE = `
@page { size: A4; margin: 12mm; }
body { margin: 1rem; font: 10pt/1.35 sans-serif; color: #1b2530; background: #fff; }
h1 { font-size: 16pt; } h2 { font-size: 13pt; break-after: avoid; }
ul { display: flex; flex-wrap: wrap; gap: 5mm 7mm; align-items: end; padding: 0; list-style: none; }
li { break-inside: avoid; max-width: 118mm; }
img { display: block; max-width: 100%; height: auto; }
p { margin: 1mm 0 0; }
.none { width: 50mm; padding: 3mm; border: 1px dashed #7d1d12; color: #7d1d12; }
`;
