import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { wordsOf } from "../../src/input/words.js";
import { acceptedFileOf, acceptedText, acceptedUnreadable, readAcceptedLayout } from "../../src/job/acceptedLayout.js";
import type { AcceptedGroup } from "../../src/model/accepted.js";
import { boardId, partId, pieceId } from "../../src/model/ids.js";

const folder = mkdtempSync(join(tmpdir(), "accepted-"));
afterAll(() => rmSync(folder, { recursive: true }));

const group: AcceptedGroup = {
  board: boardId("box"),
  byMachine: true,
  parts: { "box/top": "0123456789" },
  sheets: [
    {
      sheet: "box 1",
      board: boardId("box"),
      length: 2440,
      width: 1220,
      trim: 5,
      placed: [{ part: partId(pieceId("box"), "top"), x: 5, y: 1 / 3, turn: Math.PI / 2, backUp: false }],
    },
  ],
};

/** Writes what stands beside a job file, and reads it as a layout. */
async function read(words: string) {
  const job = join(folder, "estate car.yaml");
  writeFileSync(acceptedFileOf(job), words);
  return readAcceptedLayout(job);
}

describe("a layout that was accepted", () => {
  it("is kept beside the job, under its name", () => {
    expect(acceptedFileOf(join("jobs", "estate car.yaml"))).toBe(join("jobs", "estate car.layout.json"));
  });

  it("reads back as it was, to the last digit", async () => {
    const { value, findings } = await read(acceptedText([group]));
    expect(findings).toEqual([]);
    expect(value!.groups).toEqual([group]);
  });

  it("is no fault where there is none", async () => {
    expect(await readAcceptedLayout(join(folder, "another.yaml"))).toMatchObject({ value: undefined, findings: [] });
  });

  const good = acceptedText([group]);
  const damaged: Readonly<Record<string, string>> = {
    "cut short": good.slice(0, -20),
    "changed by hand": good.replace("2440", "2441"),
    "of another form": JSON.stringify({ version: 1, sum: "", groups: [{ board: 3 }] }),
    "of a later version": good.replace('"version": 1', '"version": 2'),
    empty: "",
    "not a map": "[]",
    "with a part's place that is no number": good.replace('"x": 5', '"x": "5"'),
  };
  for (const [how, words] of Object.entries(damaged))
    it(`is told and not used where it is ${how}`, async () => {
      const { value, findings } = await read(words);
      expect(value).toBeUndefined();
      expect(findings.map(({ code }) => code)).toEqual([acceptedUnreadable.code]);
      expect(wordsOf(findings[0]!, acceptedUnreadable, { unit: "mm" }).words).toContain("estate car.layout.json");
    });
});
