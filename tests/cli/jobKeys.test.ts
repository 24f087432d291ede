import { describe, expect, it } from "vitest";
import { keysOf } from "../../src/cli/jobKeys.js";

const schema = {
  $defs: { length: { anyOf: [{ type: "number" }, { type: "string", pattern: "x" }], description: "A length." } },
  properties: {
    version: { const: 1 },
    show: { enum: ["mm", "in 1/16"] },
    boards: { type: "object", additionalProperties: { properties: { thick: { $ref: "#/$defs/length" } } } },
    outline: {
      type: "array",
      items: { properties: { round: { $ref: "#/$defs/length", description: "Of its own." } } },
    },
    pieces: {
      additionalProperties: {
        anyOf: [
          { properties: { kind: { const: "box" }, gap: { type: "integer" } } },
          { properties: { kind: { const: "ring" } } },
        ],
      },
    },
  },
};

describe("the keys of a schema", () => {
  it("are found in maps, lists and alternatives, each with what it takes", () => {
    expect(keysOf(schema).map(({ path, takes }) => [path, takes])).toEqual([
      ["version", "1"],
      ["show", "mm, in 1/16"],
      ["boards", "keys of its own"],
      ["boards.<name>.thick", "a number; or text"],
      ["outline", "a list"],
      ["outline[].round", "a number; or text"],
      ["pieces", "any value"],
      ["pieces.<name>.kind", "box; or ring"],
      ["pieces.<name>.gap", "a whole number"],
    ]);
  });

  it("have the description nearest to them", () => {
    const described = keysOf(schema).flatMap(({ path, description }) => (description ? [[path, description]] : []));
    expect(described).toEqual([
      ["boards.<name>.thick", "A length."],
      ["outline[].round", "Of its own."],
    ]);
  });

  it("end where a schema refers to itself", () => {
    const endless = { properties: { a: { $ref: "#" } } };
    expect(keysOf(endless)).toHaveLength(12);
  });
});
