/** Taking contents of pages apart and marking artifacts in them: made-up contents of every form. */
import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { numbers, operands, scanContent } from "../../../src/pdf/objects/content.ts";
import { Lexer } from "../../../src/pdf/objects/lexer.ts";
import { Dict, Name, Ref, Text, type Value, writeValue } from "../../../src/pdf/objects/values.ts";
import { wrapArtifacts } from "../../../src/pdf/structure/artifacts.ts";

const bytes = (text: string) => Buffer.from(text, "latin1");

const someNumber = fc.oneof(
  fc.integer({ min: -1e9, max: 1e9 }),
  fc.integer({ min: -1e7, max: 1e7 }).map((value) => value / 1e4),
);
const someName = fc
  .stringMatching(/^[A-Za-z0-9+_.#-]{1,12}$/)
  .filter((name) => name !== "MCID")
  .map((name) => new Name(name));
const someText = fc
  .uint8Array({ maxLength: 20 })
  .map((raw) => new Text(Buffer.from(raw).toString("latin1")));
const valuesOf = (...more: fc.Arbitrary<Value>[]) =>
  fc.letrec<{ value: Value; deep: Value }>((tie) => ({
    value: fc.oneof(
      { maxDepth: 4 },
      someNumber,
      someName,
      someText,
      fc.constantFrom<Value>(true, false, null),
      ...more,
      tie("deep"),
    ),
    deep: fc.oneof(
      fc.array(tie("value"), { maxLength: 5 }),
      fc
        .array(fc.tuple(someName, tie("value")), { maxLength: 5 })
        .map((entries) => new Dict(entries.map(([name, value]) => [name.text, value]))),
    ),
  })).value;
const someValue = valuesOf(fc.nat(9999).map((object) => new Ref(object)));
/** A page's contents know no references. */
const someOperand = valuesOf();

describe("values", () => {
  it("are read as they were written", () => {
    fc.assert(
      fc.property(someValue, (value) => {
        const lexer = new Lexer(bytes(`${writeValue(value)} `));
        expect(lexer.value()).toEqual(value === 0 ? 0 : value);
        expect(lexer.skip()).toBe(-1);
      }),
      { numRuns: 1000 },
    );
  });

  test.each([
    ["(a\\(b\\)c\\\\d)", new Text("a(b)c\\d")],
    ["(a(b)c)", new Text("a(b)c")],
    ["(\\101\\12\\n\\r\\t\\b\\f\\q)", new Text("A\n\n\r\t\b\fq")],
    ["(a\\\nb\r\nc)", new Text("ab\nc")],
    ["<4 1 4>", new Text("A@")],
    ["+.5", 0.5],
    ["-0.25", -0.25],
    ["4.", 4],
    ["[1 0 R 2 3 R/a]", "stray"],
    ["% x\n 7", 7],
  ])("%s", (text, expected) => {
    const read = () => new Lexer(bytes(text)).value();
    if (expected === "stray") expect(read).toThrow();
    else expect(read()).toEqual(expected);
  });

  it("are read or refused, whatever the bytes", () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[<>[\]()/ 0-9aR.+\\%\n-]{0,40}$/), (text) => {
        try {
          new Lexer(bytes(text)).value();
        } catch (fault) {
          expect(fault).toMatchObject({ code: "pdf-broken" });
        }
      }),
      { numRuns: 2000 },
    );
    expect(() => new Lexer(bytes("[".repeat(100_000))).value()).toThrow(/deep/);
  });
});

/** Operations as text, each with its operator. */
const someOperation = fc.oneof(
  fc.tuple(
    fc.array(someNumber, { maxLength: 6 }),
    fc.constantFrom("re", "l", "c", "cm", "f*", "'"),
  ),
  fc.tuple(fc.array(someOperand, { maxLength: 3 }), fc.constantFrom("Tj", "TJ", "gs", "BDC", '"')),
  fc.tuple(fc.constant([]), fc.constantFrom("q", "Q", "BT", "ET", "EMC", "T*", "W*", "n")),
);
const someGap = fc.constantFrom(" ", "\n", "\r\n", "  \t", " % BT (Tj\n", "\0");

describe("scanContent", () => {
  it("finds every operation, its operands and its place, whatever lies between", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(someOperation, someGap), { maxLength: 30 }), (all) => {
        const text = all
          .map(
            ([[values, operator], gap]) =>
              `${values.map((one) => writeValue(one)).join(gap)}${gap}${operator}${gap}`,
          )
          .join("");
        const found = scanContent(bytes(text));
        expect(found.length).toBe(all.length);
        all.forEach(([[values, operator]], index) => {
          const operation = found.get(index);
          expect(operation.operator).toBe(operator);
          expect(operands(bytes(text), operation)).toEqual(
            values.map((one) => (one === 0 ? 0 : one)),
          );
          if (values.every((one) => typeof one === "number") && !text.includes("%")) {
            const read = numbers(bytes(text), operation);
            for (const [at, one] of values.entries())
              expect(read[at]).toBeCloseTo(one as number, 6);
          }
        });
      }),
      { numRuns: 500 },
    );
  });

  it("leaves the bytes of an inline picture alone", () => {
    const text = "q BI /W 2 /H 1 ID \x00(EI<BT\xff EI Q";
    const found = scanContent(bytes(text));
    expect(found.length).toBe(3);
    expect([0, 1, 2].map((index) => found.operator(index))).toEqual(["q", "BI", "Q"]);
    expect(() => scanContent(bytes("BI /W 2 ID abc"))).toThrow(/picture/);
  });

  test.each(["(abc", "<4142", "1 2", "/Name", "1 0 0 foo", "<< /a (b) >>"])(
    "refuses %s",
    (text) => {
      expect(() => scanContent(bytes(text))).toThrow();
    },
  );
});

const leaf = fc.constantFrom(
  "1 2 m 3 4 l S",
  "0 0 9 9 re f",
  "0 0 9 9 re 1 1 2 2 re f*",
  "0 0 9 9 re W* n",
  "/X0 Do",
  "1 0 0 rg",
  "BT /F4 9 Tf <0003> Tj 1 0 Td <0003> Tj ET",
  "BT <0003> Tj /P <</MCID 3>>BDC <0003> Tj EMC (ab) Tj ET",
  "BT <0003> Tj /Span BMC (fi) Tj EMC <0003> Tj ET",
  "BT /Span BMC (fi) Tj (fi) Tj EMC <0003> Tj /P <</MCID 4>>BDC <0003> Tj EMC ET",
);
/** Contents as a tree: states saved, marks, texts, paths; always well nested. */
const { tree } = fc.letrec<{ tree: string }>((tie) => ({
  tree: fc
    .array(
      fc.oneof(
        { maxDepth: 4, depthSize: "small" },
        leaf,
        tie("tree").map((inner) => `q\n${inner}\nQ`),
        leaf
          .filter((one) => !one.includes("BDC"))
          .map((inner) => `/NonStruct <</MCID 1>>BDC\n${inner}\nEMC`),
        tie("tree").map((inner) => `/Span BMC ${inner} EMC`),
      ),
      { maxLength: 6 },
    )
    .map((parts) => parts.join("\n")),
}));

/** A second way to look at contents: split at spaces, which the made-up ones allow. */
function unmarked(content: string): string[] {
  const found: string[] = [];
  const open: string[] = [];
  const words = content.split(/\s+/);
  for (const [index, word] of words.entries()) {
    if (word === "BMC") open.push(words[index - 1] === "/Artifact" ? "mark" : "plain");
    else if (word.endsWith(">>BDC")) open.push("mark");
    else if (word === "BT") open.push("text");
    else if (word === "EMC" && open.pop() === "text") found.push("a mark crosses a text object");
    else if (word === "ET" && open.pop() !== "text") found.push("a text object crosses a mark");
    else if (SHOWS.has(word) && open.filter((one) => one === "mark").length !== 1) found.push(word);
  }
  return [...found, ...open];
}

/** The contents without artifacts' marks, as words. */
function bare(content: string): string {
  const open: boolean[] = [];
  const left = content
    .replace(/\/Artifact BMC/g, "ARTIFACT")
    .split(/\s+/)
    .filter((word) => {
      if (word === "ARTIFACT") open.push(true);
      else if (word === "BMC" || word.endsWith(">>BDC")) open.push(false);
      return word !== "ARTIFACT" && !(word === "EMC" && open.pop() === true);
    });
  return left.join(" ").trim();
}

const SHOWS = new Set(["S", "f", "f*", "Tj", "Do"]);

describe("wrapArtifacts", () => {
  const wrap = (text: string, decoration: number[] = []) =>
    wrapArtifacts(bytes(text), scanContent(bytes(text)), new Set(decoration)).content.toString(
      "latin1",
    );

  it("leaves nothing unmarked, and nothing else changed", () => {
    fc.assert(
      fc.property(tree, (text) => {
        const wrapped = wrap(text);
        expect(unmarked(wrapped)).toEqual([]);
        expect(bare(wrapped)).toBe(text.split(/\s+/).join(" ").trim());
        expect(wrap(wrapped)).toBe(wrapped);
      }),
      { numRuns: 1000 },
    );
  });

  it("makes artifacts of marks that are decoration", () => {
    const text = "/P <</MCID 0>>BDC\n0 0 1 1 re f\nEMC\n/P <</MCID 1>>BDC\n0 0 1 1 re f\nEMC";
    expect(wrap(text, [1])).toBe(text.replace("/P <</MCID 1>>BDC", "/Artifact BMC"));
  });

  it("marks no path that is only cut out", () => {
    expect(wrap("0 0 9 9 re W* n")).toBe("0 0 9 9 re W* n");
  });

  it("closes before the state it was opened in ends", () => {
    expect(wrap("q\n0 0 1 1 re\nf\nQ\nq\nQ")).toBe("q\n/Artifact BMC\n0 0 1 1 re\nf\nEMC\nQ\nq\nQ");
  });

  test.each(["EMC", "/P BMC", "q /P BMC EMC EMC"])("refuses %s", (text) => {
    expect(() => wrap(text)).toThrow(/marks/);
  });
});
