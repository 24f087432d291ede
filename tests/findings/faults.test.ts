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
  expect((await codes(terminal(113.6), "plan")).filter((code) => code.startsWith("cut-out"))).toEqual([]);
  expect(await codes(terminal(113.7), "plan")).toContain("cut-out-wider-than-face");
});

it("a circle of pieces is told where one piece names the other, though a board has the same name", async () => {
  const finding = (await found(circle, "plan")).find(({ code }) => code === "pieces-in-a-circle");
  expect(finding!.at.map(({ path }) => path.join("."))).toEqual(["pieces.plate.height", "pieces.lid.height"]);
});

it("things that belong together are joined with and", async () => {
  expect(await told("pieces-in-a-circle", millimetres, circle, "plan")).toEqual([
    expect.stringContaining("in a circle: plate and lid;"),
  ]);
  expect(await told("groove-broken", millimetres, [], "plan")).toEqual([
    expect.stringContaining("stops short of bolt.3 and bolt.6;"),
  ]);
});

it("what is too much or too little is never told as nothing, however little it is", async () => {
  const low = coverAlone({ lies: { x: 100, y: 600, z: -0.1 } });
  const lower = coverAlone({ lies: { x: 100, y: 600, z: -0.02 } });
  expect(await told("below-floor", millimetres, lower, "checks")).toEqual([expect.stringContaining("0.02 mm below")]);
  expect(await told("below-floor", sixteenths, low, "checks")).toEqual([expect.stringContaining('0.004" below')]);
});

it("limits are told so that they can be kept", async () => {
  expect(await told("box-too-small", millimetres, [...boxAlone, box("outside.height", 66.3)], "plan")).toEqual([
    expect.stringContaining("make it 66.4 mm or more"),
  ]);
  // a covering so thick that no length at all will do
  const thick = [plate("bolted.insert", "M6 x 12"), carpet("thick", 14), carpet("clamped", 0.5)];
  expect(await told("no-bolt-length", millimetres, thick, "plan")).toEqual([
    expect.stringContaining("its thread needs 27.6 mm or more, its hole takes 25.1 mm or less"),
  ]);
});

it("a part is told by its piece and its place in it, not by a number that only the drawings have", async () => {
  const slit = { openings: { slit: { at: [30, 15], size: "4 x 30" } } };
  expect(await told("nothing-left", millimetres, coverAlone(slit), "plan")).toEqual([
    expect.stringContaining("cover panel falls apart"),
  ]);
  const large = [...boxAlone, cover({ outline: "3040.1 x 1000" })];
  expect(await told("part-over-sheet", millimetres, large, "nest")).toEqual([
    expect.stringContaining("cover panel is 0.1 mm larger"),
  ]);
});

it("a sheet that the machine does not take is told at its board", async () => {
  const bed = "cnc: {length: 2439, width: 1220}\nboards: {mdf-12: {sheets: [{length: 2440, width: 1220}]}}";
  const finding = (await found(coverAlone({}), "nest", bed)).find(({ code }) => code === "sheet-over-machine");
  expect(finding!.at).toEqual([{ file: "estate-cargo.yaml", path: ["boards", "plate"] }]);
});
