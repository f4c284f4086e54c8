/** Numbers in German words, as people say them. */

const SMALL =
  "null eins zwei drei vier fünf sechs sieben acht neun zehn elf zwölf dreizehn vierzehn fünfzehn sechzehn siebzehn achtzehn neunzehn".split(
    " ",
  );
const TENS = "null zehn zwanzig dreißig vierzig fünfzig sechzig siebzig achtzig neunzig".split(" ");

/** The words of a number written in figures with a decimal comma: 12, 1,5, 1.000. */
export function germanNumber(figures: string): readonly string[] {
  const [whole = "", ...decimals] = figures.replace(/\.(?=\d{3}(?!\d))/g, "").split(/[.,]/);
  const after = decimals.flatMap((part) => ["Komma", ...oneByOne(part)]);
  return [...wholeNumber(whole), ...after];
}

function wholeNumber(whole: string): readonly string[] {
  if (whole.length > 6 || (whole.length > 1 && whole.startsWith("0"))) return oneByOne(whole);
  const number = Number(whole);
  if (number < 1000) return [belowThousand(number)];
  const rest = number % 1000;
  const thousands = `${joined(Math.floor(number / 1000))}tausend`;
  return [rest === 0 ? thousands : `${thousands}${belowThousand(rest)}`];
}

function belowThousand(number: number): string {
  if (number >= 100) {
    const rest = number % 100;
    const hundreds = `${joined(Math.floor(number / 100))}hundert`;
    return rest === 0 ? hundreds : `${hundreds}${belowThousand(rest)}`;
  }
  if (number < 20) return SMALL[number] ?? "";
  const ones = number % 10;
  const tens = TENS[Math.floor(number / 10)] ?? "";
  return ones === 0 ? tens : `${joined(ones)}und${tens}`;
}

/** “eins” loses its s before another part. */
const joined = (number: number): string => belowThousand(number).replace(/eins$/, "ein");

const oneByOne = (figures: string): readonly string[] =>
  [...figures].map((figure) => SMALL[Number(figure)] ?? "");
