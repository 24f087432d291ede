import { describe, expect, it } from "vitest";
import { allFindings, findingDefs } from "../../src/cli/findingDefs.js";
import { pathInFile } from "../../src/cli/places.js";
import { reportOf } from "../../src/cli/report.js";
import { painter } from "../../src/cli/terminal.js";
import type { Finding, Origin } from "../../src/input/finding.js";
import type { Show } from "../../src/input/show.js";
import { wordsOf } from "../../src/input/words.js";
import { tables } from "./everyCode.js";
import { type CallPair, type JobPair, type Told, travel } from "./road.js";

const entries = tables.flatMap((table) => Object.entries(table));
const jobs = entries.filter((entry): entry is [string, JobPair] => "upTo" in entry[1]);
const calls = entries.filter((entry): entry is [string, CallPair] => "why" in entry[1]);
const shown: readonly Show[] = [{ unit: "mm" }, { unit: "in", denominator: 16 }];

const withCode = (code: string, findings: readonly Finding[]) => findings.filter((finding) => finding.code === code);

/** Whole sentences, whoever reads them, as severe as its definition says. */
function expectReadable(findings: readonly Finding[]): void {
  for (const finding of findings) {
    const def = findingDefs.get(finding.code)!;
    expect(finding.severity).toBe(def.severity);
    for (const show of shown) {
      const { words, next } = wordsOf(finding, def, show);
      for (const sentence of [words, next]) {
        expect(sentence).not.toMatch(/[{}]|undefined|NaN|Infinity|\[object| {2}| ,|^\s*$/);
        // what is found wrong is never nothing
        expect(sentence).not.toMatch(/\bby 0( mm|")/);
      }
    }
  }
}

/** The text of the file from a finding's place on. */
function textAt(at: Origin, { files, locate }: Told): string {
  const { file, line, column } = locate(at);
  const rest = files[file]?.split("\n").slice(line - 1) ?? [];
  expect(rest.length, `line ${line} of ${file}`).toBeGreaterThan(0);
  expect(column).toBeLessThanOrEqual(rest[0]!.length + 1);
  return rest.join("\n").slice(column - 1);
}

/** Every place stands in a file that was read, and the report names it so that an editor can go there. */
function expectPlaced(told: Told): void {
  const reading = { defs: findingDefs, show: shown[0]!, locate: told.locate };
  for (const finding of told.findings) {
    const report = reportOf([finding], reading, painter(false));
    for (const at of finding.at) {
      textAt(at, told);
      const { file, line, column } = told.locate(at);
      expect(report).toContain(`${file}:${line}:${column}`);
    }
  }
}

/** Where the first finding stands, as the table says it: its path, or else what is written there. */
function placeOf(finding: Finding, told: Told, expected: string): string {
  const [at] = finding.at;
  if (at === undefined) return "";
  return at.path.length > 0 ? pathInFile(at.path) : textAt(at, told).slice(0, expected.length);
}

describe("every finding", () => {
  it("has one entry here, and every entry is one of a finding", () => {
    const codes = new Set(allFindings.map((def) => def.code));
    expect(entries.map(([code]) => code).sort()).toEqual([...codes].sort());
  });

  it.each(jobs)("%s: raised by a job, at its place, and not just short of it", async (code, { at, upTo, ...pair }) => {
    const [raised, spared] = [await travel(pair.raises, upTo), await travel(pair.spares, upTo)];
    const [finding] = withCode(code, raised.findings);
    expect(finding, "what the job raises").toBeDefined();
    expect(placeOf(finding!, raised, at)).toBe(at);
    expect(withCode(code, spared.findings), "what is just short of it").toEqual([]);
    for (const told of [raised, spared]) {
      expectReadable(told.findings);
      expectPlaced(told);
    }
  });

  it.each(calls)("%s: raised without a job, and not just short of it", async (code, { why, raises, spares }) => {
    expect(why.length).toBeGreaterThan(10);
    const raised = await raises();
    expect(withCode(code, raised).length).toBeGreaterThan(0);
    expectReadable(raised);
    expect(withCode(code, await spares())).toEqual([]);
  });
});
