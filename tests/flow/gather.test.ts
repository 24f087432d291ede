import { expect, it } from "vitest";
import { gatherFindings } from "../../src/flow/gather.js";
import { type FindingDef, mm, raise } from "../../src/input/finding.js";

const near: FindingDef = { code: "near", severity: "warning", words: "", next: "", explain: "" };
const at = [{ file: "job.yaml", path: ["pieces", "box", "driver"] }];

it("tells once what is the same of several, with all their names, and keeps what differs", () => {
  const found = [1, 2, 3].map((i) => raise(near, { at, on: ["box/top", `box:driver.${i}`], facts: { left: mm(1) } }));
  const other = raise(near, { at, on: ["box:driver.4"], facts: { left: mm(2) } });
  expect(gatherFindings([...found, other])).toEqual([
    { ...found[0], on: ["box/top", "box:driver.1", "box:driver.2", "box:driver.3"] },
    other,
  ]);
});
