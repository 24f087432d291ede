import { describe, expect, it } from "vitest";
import { z } from "zod";
import { doorFor } from "../../src/input/door.js";
import { type FindingDef, mm, text } from "../../src/input/finding.js";
import { inputFindings } from "../../src/input/inputFindings.js";
import { readWith } from "../../src/input/issues.js";
import { refuse } from "../../src/input/refusal.js";
import { wordsOf } from "../../src/input/words.js";

const door = doorFor("mm");
const at = { file: "job.yaml", path: ["pieces", "box"] };
const width = z.union([z.literal("free"), door.length({ min: 10, max: 2000 })]);
const schema = z.strictObject({
  kind: z.literal("enclosure"),
  width: width.optional(),
  place: z.union([z.strictObject({ x: z.number() }), z.strictObject({ y: z.number(), z: z.number() })]).optional(),
  faces: z
    .array(z.enum(["top", "front"]))
    .max(2)
    .optional(),
  note: z.string().min(1).max(5).optional(),
  count: z.int().min(2).max(8).optional(),
});

function findingsOf(value: object) {
  return readWith(schema, { kind: "enclosure", ...value }, at).findings.map((finding) => {
    const def = inputFindings.find((known) => known.code === finding.code)!;
    return { ...finding, ...wordsOf(finding, def, { unit: "mm" }) };
  });
}

describe("readWith", () => {
  it("points at an unknown key itself and names the nearest known one", () => {
    expect(findingsOf({ widht: 3 })).toMatchObject([
      {
        code: "unknown-key",
        at: [{ path: ["pieces", "box", "widht"], token: "key" }],
        facts: { nearest: text("width") },
      },
    ]);
  });

  it("tells every mistake at once", () => {
    expect(
      findingsOf({ widht: 3, note: 7, count: 1 })
        .map(({ code }) => code)
        .sort(),
    ).toEqual(["too-small", "unknown-key", "wrong-type"]);
  });

  it("offers quotes where a number stands for a text", () => {
    expect(findingsOf({ note: 2024 })).toMatchObject([{ next: expect.stringContaining("quotes") }]);
    expect(findingsOf({ note: [1] })).toMatchObject([{ next: "write a text" }]);
  });

  it("speaks of the word that was nearly written, where a word or a length may stand", () => {
    expect(findingsOf({ width: "fre" })).toMatchObject([{ code: "not-one-of", facts: { nearest: text("free") } }]);
  });

  it("speaks of the length where a word or a length may stand and neither is near", () => {
    expect(findingsOf({ width: "12 mn" })).toMatchObject([
      { code: "not-a-length", next: expect.stringContaining("free") },
    ]);
    expect(findingsOf({ width: 5 })).toMatchObject([
      { code: "out-of-range", facts: { least: mm(10), most: mm(2000) } },
    ]);
  });

  it("tells the mistakes inside the form that comes closest", () => {
    expect(findingsOf({ place: { y: 1, z: "a" } })).toMatchObject([
      { code: "wrong-type", at: [{ path: ["pieces", "box", "place", "z"] }] },
    ]);
    expect(findingsOf({ place: { x: 1, q: 2 } })).toMatchObject([{ code: "unknown-key" }]);
    expect(findingsOf({ place: 3 })).toMatchObject([{ code: "wrong-type", next: "write keys with values below it" }]);
  });

  it("tells an empty value from a missing one", () => {
    expect(findingsOf({ width: null })).toMatchObject([{ code: "nothing-written" }]);
    expect(findingsOf({ note: "" })).toMatchObject([{ code: "nothing-written" }]);
    expect(readWith(schema, {}, at).findings).toMatchObject([{ code: "missing-key", facts: { key: text("kind") } }]);
  });

  it("counts the letters and items that are too many", () => {
    expect(findingsOf({ note: "123456" })).toMatchObject([{ code: "too-many", facts: { most: text("5 letters") } }]);
    expect(findingsOf({ faces: ["top", "top", "top"] })).toMatchObject([{ code: "too-many" }]);
    expect(findingsOf({ faces: ["top", "frnt"] })).toMatchObject([
      { code: "not-one-of", at: [{ path: ["pieces", "box", "faces", 1] }], facts: { nearest: text("front") } },
    ]);
    expect(findingsOf({ count: 9 })).toMatchObject([{ code: "too-large" }]);
    expect(findingsOf({ count: 2.5 })).toMatchObject([{ code: "wrong-type" }]);
  });

  it("raises a check's own finding at the key that it names", () => {
    const tooFlat: FindingDef = { code: "too-flat", severity: "error", words: "w", next: "n", explain: "e" };
    const own = z.strictObject({ a: z.number() }).superRefine(({ a }, issues) => {
      if (a < 1) refuse(issues, tooFlat, { found: mm(a) }, ["a"]);
    });
    expect(readWith(own, { a: 0 }, at).findings).toEqual([
      {
        code: "too-flat",
        severity: "error",
        at: [{ file: "job.yaml", path: ["pieces", "box", "a"] }],
        on: [],
        facts: expect.objectContaining({ found: mm(0) }),
      },
    ]);
    expect(readWith(own, { a: 1 }, at).findings).toEqual([]);
  });
});
