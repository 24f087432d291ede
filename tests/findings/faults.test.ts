import { expect, it } from "vitest";
import { findingDefs } from "../../src/cli/findingDefs.js";
import type { Show } from "../../src/input/show.js";
import { wordsOf } from "../../src/input/words.js";
import type { Change } from "../pieces/planned.js";
import { box, boxAlone, carpet, cover, coverAlone, plate, space, ten } from "./changes.js";
import { type JobWay, type Stage, travel } from "./road.js";

// Faults that jobs have found in the checks and their words.

const millimetres: Show = { unit: "mm" };
const sixteenths: Show = { unit: "in", denominator: 16 };

async function found(job: JobWay["job"], upTo: Stage, shop?: string) {
  return (await travel({ job, ...(shop !== undefined && { shop }) }, upTo)).findings;
}

const codes = async (...way: Parameters<typeof found>) => (await found(...way)).map((finding) => finding.code);

/** Every finding with this code, in words. */
async function told(code: string, show: Show, ...way: Parameters<typeof found>): Promise<readonly string[]> {
  const findings = (await found(...way)).filter((finding) => finding.code === code);
  return findings.map((finding) => {
    const { words, next } = wordsOf(finding, findingDefs.get(code)!, show);
    return `${words}; ${next}`;
  });
}

const lying = (on: string) => ({ kind: "plate", board: "plate", outline: "space", height: `top of ${on}` });
const circle: readonly Change[] = [
  [["pieces", "plate"], lying("lid")],
  [["pieces", "lid"], lying("plate")],
];

it("a screw that ends in the box's air is no danger to a tank under the floor, one that reaches the floor is", async () => {
  const screwed = (length: number) => [
    ...boxAlone,
    ten("bolts.screw", `4.0 x ${length}`),
    space("no screws.fuel tank.from", [300, 30]),
  ];
  expect(await codes(screwed(40), "checks")).not.toContain("screw-into-zone");
  // 157 from under its head to the floor; eight screws are one finding
  expect(await told("screw-into-zone", millimetres, screwed(160), "nest")).toEqual([
    expect.stringContaining("4.0 x 160 screw goes 3 mm into the floor above fuel tank"),
  ]);
});

it("a drill that is a tenth off makes the hole, whatever the last digits say", async () => {
  const peg = (across: number) => coverAlone({ holes: { peg: { at: [20, 15], across, deep: 5 } } });
  for (const across of [1.9, 2.1, 2.4]) expect(await codes(peg(across), "process")).toEqual([]);
  expect(await codes(peg(2.15), "process")).toEqual(["no-bit-fits"]);
});

it("a cut-out that is exactly as high as the inside does not leave it", async () => {
  const terminal = (height: number) => [
    ...boxAlone,
    box("terminal.corners", "round"),
    box("terminal.hole", `78 x ${height}`),
  ];
  expect(await codes(terminal(113.6), "plan")).not.toContain("cut-out-off-face");
  expect(await codes(terminal(113.7), "plan")).toContain("cut-out-off-face");
});
