import { describe, expect, it } from "vitest";
import { allFindings } from "../../src/cli/findingDefs.js";

describe("the words of all findings", () => {
  it("belong to one definition a code", () => {
    const twice = allFindings.filter((def) => allFindings.some((other) => other.code === def.code && other !== def));
    expect(twice.map((def) => def.code)).toEqual([]);
  });

  it.each(allFindings.map((def) => [def.code, def] as const))(
    "%s: a code, a sentence, a next step and an explanation",
    (_, def) => {
      expect(def.code).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
      for (const sentence of [def.words, def.next]) {
        expect(sentence.length).toBeGreaterThan(4);
        expect(sentence).not.toMatch(/[.!]$/);
        // braces hold the name of a fact and nothing else
        for (const [, inside] of sentence.matchAll(/\{([^}]*)\}/g)) expect(inside).toMatch(/^[a-zA-Z ]+$/);
      }
      expect(def.explain.length).toBeGreaterThan(30);
      expect(def.explain).toMatch(/[.)]$/);
    },
  );
});
