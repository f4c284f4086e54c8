/** Numbers in English words, as people say them. */

const SMALL =
  "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split(
    " ",
  );
const TENS = "zero ten twenty thirty forty fifty sixty seventy eighty ninety".split(" ");
const GROUPS = ["", "thousand", "million", "billion"];

/**
 * The words of a number written in figures: 12, 1.5, 1,000, 1948.
 *
 * Four figures from 1100 to 2099 are said in pairs, as a year is (Flesch 1948 counts 1918 as
 * nineteen-eighteen); figures that begin with 0, as those of a telephone number do, one by one.
 */
export function englishNumber(figures: string): readonly string[] {
  const [whole = "", ...decimals] = figures.replaceAll(",", "").split(".");
  const after = decimals.flatMap((part) => ["point", ...oneByOne(part)]);
  return [...wholeNumber(whole, figures), ...after];
}

function wholeNumber(whole: string, typed: string): readonly string[] {
  if (whole.length > 12 || (whole.length > 1 && whole.startsWith("0"))) return oneByOne(whole);
  const number = Number(whole);
  const pair = number % 100;
  const year = typed.length === 4 && number >= 1100 && number < 2100 && pair >= 10;
  if (year) return [...belowThousand(Math.floor(number / 100)), ...belowThousand(pair)];
  if (number === 0) return ["zero"];
  const groups: string[] = [];
  let rest = number;
  for (const name of GROUPS) {
    const group = rest % 1000;
    if (group > 0) groups.unshift(...belowThousand(group), ...(name === "" ? [] : [name]));
    rest = Math.floor(rest / 1000);
  }
  return groups;
}

function belowThousand(number: number): readonly string[] {
  if (number >= 100) {
    const rest = number % 100;
    const hundreds = [SMALL[Math.floor(number / 100)] ?? "", "hundred"];
    return rest === 0 ? hundreds : [...hundreds, "and", ...belowThousand(rest)];
  }
  if (number < 20) return [SMALL[number] ?? ""];
  const ones = number % 10;
  const tens = TENS[Math.floor(number / 10)] ?? "";
  return ones === 0 ? [tens] : [tens, SMALL[ones] ?? ""];
}

const oneByOne = (figures: string): readonly string[] =>
  [...figures].map((figure) => SMALL[Number(figure)] ?? "");
