import { describe, expect, it } from "vitest";
import { isCircle } from "../../../src/geometry/measure.js";
import { type Change, codesOf, featureNamed, partNamed, planned } from "../planned.js";

const set = (path: string, value: unknown): Change => [["pieces", "ring", ...path.split(".")], value];

describe("a driver ring", () => {
  const job = planned();
  const part = partNamed(job, "ring/ring");

  it("takes its inside from the driver's cut-out and its recess from the frame, with clearance", () => {
    expect(isCircle(part.profile.outer)?.radius).toBeCloseTo(155, 9);
    const inside = part.profile.holes.find((hole) => hole[0]!.by === "opening.inside")!;
    expect(isCircle(inside)?.radius).toBeCloseTo(116.5, 9);
    const { cut } = featureNamed(part, "recess");
    if (cut.kind !== "pocket") throw new Error("no pocket");
    // frame 262 and half a millimetre each side (common practice, no source); as deep as the flange is high
    expect(isCircle(cut.region.outer)?.radius).toBeCloseTo(131.5, 9);
    expect(cut.depth).toBe(7);
  });

  it("drills the driver's pilots evenly on its bolt circle", () => {
    const places = part.features.flatMap(({ cut }) => (cut.kind === "hole" ? [cut.at] : []));
    expect(places).toHaveLength(8);
    for (const at of places) expect(Math.hypot(at.x, at.y)).toBeCloseTo(124, 6);
    const angles = places.map((at) => (Math.atan2(at.y, at.x) * 180) / Math.PI).map((a) => (a + 360) % 360);
    expect([...angles].sort((a, b) => a - b)[0]).toBeCloseTo(22.5, 6);
  });

  // A pilot in MDF is 85 to 95 % of the screw's root (MDF makers' published advice); the 4.0 screw's root is 2.5
  // (from memory).
  it("drills pilots that a 4.0 screw bites in", () => {
    const { cut } = featureNamed(part, "driver.1");
    if (cut.kind !== "hole") throw new Error("no hole");
    expect(cut.d / 2.5).toBeGreaterThanOrEqual(0.85);
    expect(cut.d / 2.5).toBeLessThanOrEqual(0.95);
  });

  it("lets the screws go on into the box only as deep as they are long", () => {
    // 25 long, 7 of it in the flange, 11.2 in the ring's floor: 6.8 in the box, and a millimetre more for the pilot
    const { cut } = featureNamed(partNamed(job, "box/top"), "driver.1");
    expect(cut.kind === "hole" && cut.depth).toBeCloseTo(7.8, 9);
  });

  it("is chamfered at 45 degrees", () => {
    const { cut } = featureNamed(part, "chamfer.outside");
    expect(cut).toMatchObject({ kind: "edge", form: "chamfer", width: 4, depth: 4, angle: Math.PI / 4 });
  });

  it("snaps its diameters to the step of the hand router", () => {
    const hand = planned([set("cut by", "hand"), set("outside", 310.2)]);
    expect(isCircle(partNamed(hand, "ring/ring").profile.outer)?.radius).toBeCloseTo(155, 9);
    const cnc = planned([set("outside", 310.2)]);
    expect(isCircle(partNamed(cnc, "ring/ring").profile.outer)?.radius).toBeCloseTo(155.1, 9);
  });
});

describe("a ring that cannot be cut", () => {
  const found = (...changes: Change[]) => codesOf(planned(changes));

  it("has no driver to go around", () => {
    const bare: Change = [["pieces", "box", "driver"], undefined];
    const still: Change = [["pieces", "box", "stands"], { x: 200, y: 30 }];
    expect(found(bare, still)).toContain("ring-without-driver");
    expect(found(still)).not.toContain("ring-without-driver");
  });

  it("is too narrow outside its recess", () => {
    // 263 across the recess and 3 mm of web: at least 269
    expect(found(set("outside", 268.9))).toContain("ring-too-narrow");
    expect(found(set("outside", 269))).not.toContain("ring-too-narrow");
  });

  it("has a recess that leaves no floor", () => {
    // 18.2 - 3 = 15.2
    expect(found(set("recess", { across: 263, deep: 15.3 }))).toContain("recess-too-deep");
    expect(found(set("recess", { across: 263, deep: 15.2 }))).not.toContain("recess-too-deep");
  });

  it("does not know the frame", () => {
    expect(found([["drivers", "ten", "frame"], undefined])).toContain("frame-unknown");
    expect(found([["drivers", "ten", "flange"], undefined])).toContain("frame-unknown");
    expect(found()).not.toContain("frame-unknown");
  });
});
