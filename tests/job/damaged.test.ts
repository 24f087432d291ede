import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, it } from "vitest";
import { inputFindings } from "../../src/input/inputFindings.js";
import { wordsOf } from "../../src/input/words.js";
import { jobFindings } from "../../src/job/findings.js";
import { parseJob } from "../../src/job/parse.js";
import { kinds } from "../../src/pieces/kinds.js";
import { shopFindings } from "../../src/shop/findings.js";
import { parseShop } from "../../src/shop/parse.js";

const defs = new Map(
  [...inputFindings, ...jobFindings, ...shopFindings, ...kinds.flatMap((kind) => kind.findings)].map((def) => [
    def.code,
    def,
  ]),
);

const scraps = [
  "",
  "0",
  "-1",
  "null",
  "~",
  "[]",
  "{}",
  "free",
  "x",
  "1e99",
  ".inf",
  "!!set",
  "*a",
  "&a",
  ": ",
  "- ",
  "#",
  "\t",
  '"',
  "\n",
  "[",
  "}",
  "3/4",
  "\u0000",
];
/** A stretch of the file replaced by a scrap. */
const damage = fc.tuple(fc.nat(1_000_000), fc.nat(12), fc.constantFrom(...scraps));

function damaged(source: string, blows: readonly (readonly [number, number, string])[]): string {
  return blows.reduce((text, [at, length, scrap]) => {
    const from = at % (text.length + 1);
    return text.slice(0, from) + scrap + text.slice(from + length);
  }, source);
}

it.each([
  ["templates/estate-cargo.yaml", (text: string) => parseJob(text, "damaged.yaml", kinds)],
  ["tests/job/small-shop.yaml", (text: string) => parseShop(text, "damaged.yaml")],
])("tells what is wrong with any damaged %s in whole sentences, each with its place", (file, parse) => {
  const source = readFileSync(file, "utf8");
  fc.assert(
    fc.property(fc.array(damage, { minLength: 1, maxLength: 4 }), (blows) => {
      const { value, findings, locate } = parse(damaged(source, blows));
      expect(value !== undefined || findings.some((finding) => finding.severity === "error")).toBe(true);
      for (const finding of findings) {
        const def = defs.get(finding.code)!;
        const { words, next } = wordsOf(finding, def, { unit: "in", denominator: 16 });
        expect(words + next).not.toMatch(/undefined|NaN/);
        expect(locate(finding.at[0]!).line).toBeGreaterThan(0);
      }
    }),
    { seed: 4, numRuns: 80 },
  );
});
