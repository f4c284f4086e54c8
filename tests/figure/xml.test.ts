/** The well-formedness check itself: takes what is XML, refuses what is not. */
import { describe, expect, test } from "vitest";
import { xmlFault } from "./xml.ts";

describe("well-formed XML", () => {
  test.each([
    ["nested elements", '<a b="1"><c/>text &amp; more</a>', undefined],
    ["an element left open", "<a><b></a>", "</a> closes another element"],
    ["no end", "<a><b></b>", "<a> is not closed"],
    ["two roots", "<a/><b/>", "2 roots"],
    ["a bare ampersand", "<a>x & y</a>", "a bare ampersand"],
    ["an attribute twice", '<a b="1" b="2"/>', "an attribute twice in <a>"],
    ["an attribute without quotes", "<a b=1/>", "not XML at 0"],
    ["text outside the root", "<a/>text", "text outside the root"],
  ])("%s", (_name, text, fault) => {
    if (fault === undefined) expect(xmlFault(text)).toBeUndefined();
    else expect(xmlFault(text)).toContain(fault);
  });
});
