import { describe, expect, it } from "vitest";
import { type FindingDef, list, mm, raise, text } from "../../src/input/finding.js";
import { wordsOf } from "../../src/input/words.js";

const def: FindingDef = {
  code: "too-wide",
  severity: "error",
  words: "{what} is {found} wide[, after {nearest}]",
  next: "use {allowed}",
  explain: "Invented for this test.",
};
const facts = { what: text("the {odd} [box]"), found: mm(19.05), allowed: list(["3/4in", "18mm"]) };

describe("wordsOf", () => {
  it("fills in the facts, in the reader's unit", () => {
    const finding = raise(def, { facts });
    expect(wordsOf(finding, def, { unit: "mm" }).words).toBe("the {odd} [box] is 19.1 mm wide");
    expect(wordsOf(finding, def, { unit: "in", denominator: 16 }).words).toBe('the {odd} [box] is 3/4" wide');
    expect(wordsOf(finding, def, { unit: "mm" }).next).toBe("use 3/4in or 18mm");
  });

  it("leaves a stretch in brackets out where its fact is missing, and keeps it where it is there", () => {
    const finding = raise(def, { facts: { ...facts, nearest: text("the plate") } });
    expect(wordsOf(finding, def, { unit: "mm" }).words).toContain(", after the plate");
  });

  it("throws on a fact that the check forgot, and on another code's words", () => {
    expect(() => wordsOf(raise(def), def, { unit: "mm" })).toThrow("{what}");
    expect(() => wordsOf(raise(def, { facts }), { ...def, code: "other" }, { unit: "mm" })).toThrow("other");
  });
});
