import { describe, expect, it } from "vitest";
import { z } from "zod";
import { doorFor } from "../../src/input/door.js";
import type { Finding } from "../../src/input/finding.js";
import { readWith } from "../../src/input/issues.js";

const door = doorFor("mm");
const root = { file: "job.yaml", path: [] };
const codes = (findings: readonly Finding[]) => findings.map((finding) => finding.code);
const length = door.length({ min: 1, max: 100 });

describe("the door", () => {
  it("takes a bare number in the file's unit and a text in its own", () => {
    expect(readWith(length, 18, root).value).toBe(18);
    expect(readWith(doorFor("in").length({ min: 1, max: 100 }), 0.75, root).value).toBe(19.05);
    expect(readWith(length, "3/4in", root).value).toBe(19.05);
  });

  it("keeps the ends of its range and refuses what lies just beyond, naming value, least and most", () => {
    expect(readWith(length, 100, root).value).toBe(100);
    expect(readWith(length, 1, root).value).toBe(1);
    const [finding] = readWith(length, 100.01, root).findings;
    expect(finding?.code).toBe("out-of-range");
    expect(finding?.facts).toMatchObject({
      found: { value: "100.01" },
      least: { unit: "mm", value: 1 },
      most: { unit: "mm", value: 100 },
    });
  });

  it("shows how a refused value is written", () => {
    const [finding] = readWith(length, "18 mn", root).findings;
    expect(finding).toMatchObject({ code: "not-a-length", facts: { found: { value: "18 mn" } } });
    expect(finding?.facts.allowed).toMatchObject({ unit: "list" });
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, true, [18], { mm: 18 }])("refuses %s as a length", (value) => {
    expect(codes(readWith(length, value, root).findings)).toEqual(["not-a-length"]);
  });

  it("tells a missing value from one that cannot be read", () => {
    const schema = z.strictObject({ wide: length, deep: length.optional() });
    expect(codes(readWith(schema, {}, root).findings)).toEqual(["missing-key"]);
    expect(codes(readWith(schema, { wide: null }, root).findings)).toEqual(["nothing-written"]);
    expect(readWith(schema, { wide: 5 }, root).value).toEqual({ wide: 5 });
  });

  it("keeps both ends of a span and both sides of a size in range", () => {
    const volumes = door.volumes({ min: 1, max: 30 });
    expect(readWith(volumes, "24 to 18 L", root).value).toEqual([18, 24]);
    expect(readWith(volumes, "20 L", root).value).toEqual([20, 20]);
    expect(codes(readWith(volumes, "20 to 40 L", root).findings)).toEqual(["out-of-range"]);
    expect(codes(readWith(door.size({ min: 8, max: 100 }), "78 x 540", root).findings)).toEqual(["out-of-range"]);
  });

  it("takes whole numbers only where things are counted", () => {
    expect(readWith(door.count({ min: 2, max: 24 }), 8, root).value).toBe(8);
    expect(codes(readWith(door.count({ min: 2, max: 24 }), 8.5, root).findings)).toEqual(["not-a-whole-number"]);
  });

  it("says in the JSON Schema that a length is a number or a text with a pattern", () => {
    const schema = z.toJSONSchema(z.strictObject({ wide: length, deep: length, at: door.point() }), { io: "input" });
    const { wide, at } = schema.properties as Record<string, Record<string, unknown>>;
    expect(wide?.["$ref"]).toBe("#/$defs/length");
    expect(schema.$defs?.["length"]?.anyOf).toMatchObject([{ type: "number" }, { type: "string" }]);
    expect(at).toMatchObject({ type: "array", minItems: 2, maxItems: 2 });
    expect(schema.required).toEqual(["wide", "deep", "at"]);
  });
});
