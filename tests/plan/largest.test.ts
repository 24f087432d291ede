import { describe, expect, it } from "vitest";
import { hasErrors } from "../../src/input/finding.js";
import { showQuantity } from "../../src/input/show.js";
import { runChecks } from "../../src/plan/checks/checks.js";
import { type Change, type Planned, planned } from "../pieces/planned.js";

const box = (path: string, value: unknown): Change => [["pieces", "box", ...path.split(".")], value];
const space = (path: string, value: unknown): Change => [["space", ...path.split(".")], value];

/** The starter's box alone, its corner placed, one size as large as the space allows. */
const alone: readonly Change[] = [
  [["pieces", "plate"], undefined],
  [["pieces", "ring"], undefined],
  [["pieces", "sill strip"], undefined],
  box("net", undefined),
  box("stands", { x: 20, y: 30 }),
];

/** How large the box became, and what it says about that. */
function largest(...changes: readonly Change[]) {
  const made = planned([...alone, ...changes]);
  const note = made.findings.find(({ code }) => code.startsWith("largest"));
  if (note === undefined) throw new Error("nothing is said about the size");
  const limits = note.facts["limits"]!.value;
  return { made, code: note.code, size: note.facts["size"]!.value, limits, net: note.facts["net"]?.value };
}

const aboutRoom = [
  "outside-space",
  "above-space",
  "below-floor",
  "fouls-obstacle",
  "obstacle-too-near",
  "will-not-go-in",
];

/** What the checks, which ask solids, say of the room that a box of this size has. */
async function roomFindings({ job, shop, plan }: Planned): Promise<readonly string[]> {
  const findings = await runChecks(job, shop, plan);
  return findings.map(({ code }) => code).filter((code) => aboutRoom.includes(code));
}

/** The box fits by the checks, and a step more does not, for this reason. */
async function expectJustFits(key: "width" | "depth" | "height", changes: readonly Change[], reason: string) {
  const { made, size } = largest(...changes);
  expect(await roomFindings(made)).toEqual([]);
  const step = made.shop.saw.step;
  const more = planned([...alone, ...changes, box(`outside.${key}`, Number(size) + step)]);
  expect(await roomFindings(more)).toContain(reason);
}

const wide = box("outside", { width: "largest", depth: 420, height: 150 });
const high = box("outside", { width: 500, depth: 420, height: "largest" });
const deep = box("outside", { width: 500, depth: "largest", height: 150 });

describe("a size as large as the space allows", () => {
  it("is limited by the outline of the space, and says which side", async () => {
    // from x = 20 to the right side at 1040
    expect(largest(wide)).toMatchObject({ code: "largest-size", size: 1020, limits: ["the right side of the space"] });
    await expectJustFits("width", [wide], "outside-space");
  });

  it("counts the covering on both sides", async () => {
    const covered = box("covered", { with: "carpet" });
    expect(largest(wide, covered).size).toBe(1020 - 3.5);
    await expectJustFits("width", [wide, covered], "outside-space");
  });

  it("goes as far into a rounded corner as its own corner can", async () => {
    // the corner's radius is 60 about 980, 800: at x = 1030 its corner may lie sqrt(60^2 - 50^2) = 33.166 beyond y = 800
    const corner = [deep, box("outside.width", 1010)];
    expect(largest(...corner, space("obstacles", {})).size).toBe(803);
    await expectJustFits("depth", [...corner, space("obstacles", {})], "outside-space");
  });

  it("is limited by the height of the space", async () => {
    expect(largest(high)).toMatchObject({ size: 420, limits: ["the height of the space"] });
    await expectJustFits("height", [high], "above-space");
  });

  it("is limited by an obstacle and its clearance, and names it", async () => {
    // the battery begins at x = 800 and y = 560, and 12 are kept clear of it
    const beside = [wide, box("outside.depth", 600)];
    expect(largest(...beside)).toMatchObject({ size: 800 - 12 - 20, limits: ["auxiliary battery"] });
    await expectJustFits("width", beside, "obstacle-too-near");
  });

  it("passes under an obstacle that hangs from above", async () => {
    const shelf = space("obstacles", { shelf: { from: [0, 0, 300], to: [1040, 860, 420], clear: 10 } });
    expect(largest(high, shelf)).toMatchObject({ size: 290, limits: ["shelf"] });
    await expectJustFits("height", [high, shelf], "obstacle-too-near");
  });

  it("is limited by the loading opening, turned as it may be", async () => {
    const slit = space("opening", { side: "rear", width: 300, height: 60 });
    expect(largest(high, slit)).toMatchObject({ code: "largest-has-no-room", limits: ["the loading opening"] });
    // the end of the box, 290 x its height, goes through 300 x 260 where that is no more than 260
    const post = space("opening", { side: "rear", width: 300, height: 260 });
    const tall = box("outside", { width: 500, depth: 290, height: "largest" });
    expect(largest(tall, post)).toMatchObject({ size: 260, limits: ["the loading opening"] });
    await expectJustFits("height", [tall, post], "will-not-go-in");
  });

  it("says the volume that it reaches, whatever net volume is wanted", () => {
    const { net, made } = largest(wide, box("driver", undefined), box("terminal", undefined), box("net", "20 L"));
    expect(net).toBeCloseTo(((1020 - 36.4) * (420 - 36.4) * (150 - 36.4)) / 1e6, 9);
    const note = made.findings.find(({ code }) => code === "largest-size")!;
    expect(note.severity).toBe("note");
    expect(showQuantity(note.facts["net"]!, made.job.show)).toBe("42.86 L");
  });

  it("is limited by another box beside it, at the size that one settles on", () => {
    const other = {
      kind: "enclosure",
      board: "box",
      net: "12 L",
      outside: { width: "free", depth: 300, height: 150 },
      stands: { x: 20, y: 500 },
      "held by": { straps: 2, to: "floor rings" },
    };
    const { made, size, limits } = largest(deep, [["pieces", "second"], other]);
    expect(limits).toEqual(["second"]);
    expect(size).toBe(470);
    expect(hasErrors(made.findings)).toBe(false);
  });

  it("tells what is in the way where even the least finds no room", () => {
    const blocked = largest(wide, box("stands", { x: 900, y: 560 }));
    expect(blocked.code).toBe("largest-has-no-room");
    expect(blocked.limits).toContain("auxiliary battery");
  });

  it("has no limit but good sense where the space has no height", () => {
    const open = largest(high, space("height", undefined), space("opening", undefined));
    expect(open.size).toBe(1000);
    expect(open.limits).toEqual(["the most that makes sense where the space has no `height`"]);
  });
});
