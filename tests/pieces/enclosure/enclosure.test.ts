import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { shifted } from "../../../src/geometry/frame.js";
import { extentsOf } from "../../../src/geometry/measure.js";
import { doorFor } from "../../../src/input/door.js";
import { axisId, pieceId } from "../../../src/model/ids.js";
import type { Part } from "../../../src/model/part.js";
import type { Ask } from "../../../src/model/piece.js";
import { enclosure } from "../../../src/pieces/enclosure/enclosure.js";
import { aroundOf } from "../../../src/plan/around.js";
import { starterShop } from "../../../src/shop/starter.js";
import { type Change, codesOf, estate, featureNamed, partNamed, planned } from "../planned.js";

const sizeOf = (part: Part) => {
  const { min, max } = extentsOf(part.profile.outer);
  return [max.x - min.x, max.y - min.y] as const;
};
const set = (path: string, value: unknown): Change => [["pieces", "box", ...path.split(".")], value];

/** The codes of building the starter's box at its settled size with one thread asked for at this x of the vehicle. */
function threadAt(x: number): readonly string[] {
  const { job, shop, plan } = planned();
  const origin = { file: job.file, path: ["pieces", "box"] };
  const spec = enclosure.schema(doorFor("mm")).parse(boxOf(estate));
  const named = { id: pieceId("box"), kind: enclosure, spec, origin, refs: [] } as const;
  const ask: Ask = {
    kind: "thread",
    of: pieceId("box"),
    by: pieceId("plate"),
    from: [origin],
    axis: axisId(pieceId("plate"), "bolt.1"),
    ray: shifted(x, 240, 150),
    insert: "M6 x 15",
  };
  const [, size] = plan.sizes[0]!;
  return enclosure.build(spec, size, aroundOf(named, job, shop, new Map(), [ask])).findings.map(({ code }) => code);
}

const boxOf = (source: string): unknown => parse(source).pieces.box;

describe("a closed box", () => {
  it("reaches its net volume by the free size, to less than a step", () => {
    const { plan } = planned();
    const [air] = plan.built.air;
    const net = air!.terms.reduce((sum, term) => sum + term.litres, 0);
    // one step of 0.5 mm moves 383.6 x 113.6 x 0.5 = 0.0218 L
    expect(Math.abs(net - 20)).toBeLessThanOrEqual(0.0218 / 2 + 1e-9);
  });

  it("counts every term by itself", () => {
    const { plan } = planned([set("outside.width", 500), set("terminal.displaces", "0.3 L")]);
    const terms = Object.fromEntries(plan.built.air[0]!.terms.map(({ what, litres }) => [what, litres]));
    expect(terms["gross inside"]).toBeCloseTo((463.6 * 383.6 * 113.6) / 1e6, 9);
    expect(terms["driver"]).toBe(-1.4);
    expect(terms["terminal"]).toBe(-0.3);
    expect(terms["block 1"]).toBeCloseTo((-40 * 40 * 18.2) / 1e6, 9);
  });

  it("lines its driver up on the reference line", () => {
    const { plan } = planned();
    expect(plan.built.mounts[0]!.at.origin[0]).toBeCloseTo(520, 9);
    // top of the box 150, lifted by the ring's 18.2 less its 7 mm recess
    expect(plan.built.mounts[0]!.at.origin[2]).toBeCloseTo(150 + 11.2, 9);
  });

  it("lets its panels lap in the order that the job names", () => {
    const job = planned([
      set("outside.width", 500),
      set("net", undefined),
      set("laps", ["left", "right", "front", "rear", "top", "bottom"]),
    ]);
    expect(sizeOf(partNamed(job, "box/left"))).toEqual([420, 150]);
    const [width, depth] = sizeOf(partNamed(job, "box/top"));
    expect(width).toBeCloseTo(500 - 36.4, 9);
    expect(depth).toBeCloseTo(420 - 36.4, 9);
  });

  it("puts the driver in any face", () => {
    for (const face of ["top", "bottom", "front", "rear", "left", "right"] as const) {
      const job = planned([
        set("outside", { width: 400, depth: 400, height: 300 }),
        set("net", undefined),
        set("driver.in", face),
        set("terminal", undefined),
        set("stands", { x: 300, y: 30 }),
        [["pieces", "ring"], undefined],
        [["pieces", "plate"], undefined],
      ]);
      expect(codesOf(job)).toEqual([]);
      const { cut } = featureNamed(partNamed(job, `box/${face}`), "opening.driver");
      expect(
        cut.kind === "opening" && extentsOf(cut.region.outer).max.x - extentsOf(cut.region.outer).min.x,
      ).toBeCloseTo(233, 9);
      const [x, y, z] = job.plan.built.mounts[0]!.at.origin;
      const centre = {
        top: [500, 230, 300],
        bottom: [500, 230, 0],
        front: [500, 430, 150],
        rear: [500, 30, 150],
        left: [300, 230, 150],
        right: [700, 230, 150],
      }[face];
      [x, y, z].forEach((c, i) => void expect(c).toBeCloseTo(centre[i]!, 9));
    }
  });

  it("leaves a cap oversize where it is to be flushed, and only there", () => {
    const job = planned([set("flush", ["top", "front"])]);
    const over = (role: string) => {
      const { blank, profile } = partNamed(job, `box/${role}`);
      const [a, b] = [extentsOf(blank.outer), extentsOf(profile.outer)];
      return [b.min.x - a.min.x, a.max.x - b.max.x, b.min.y - a.min.y, a.max.y - b.max.y];
    };
    // 3 mm a side (common practice, no source); the front runs over left and right only
    for (const side of over("top")) expect(side).toBeCloseTo(3, 9);
    expect(over("front").map((side) => Math.round(side * 1e6) / 1e6)).toEqual([3, 3, 0, 0]);
    expect(over("bottom").map((side) => Math.round(side * 1e6) / 1e6)).toEqual([0, 0, 0, 0]);
  });

  it("relieves the corners of its terminal's hole where the job asks for it", () => {
    const relieved = planned([set("terminal.corners", "relieved")]);
    const { cut } = featureNamed(partNamed(relieved, "box/front"), "opening.terminal");
    if (cut.kind !== "opening") throw new Error("no opening");
    // a square flange seats in all four corners: the corner itself is cut away
    const { min, max } = extentsOf(cut.region.outer);
    expect(max.x - min.x).toBeGreaterThan(78);
    expect(cut.corner).toBe("relief");
  });
});

describe("a sawn box", () => {
  const step = 25.4 / 16;
  const shop = { ...starterShop(), saw: { ...starterShop().saw, step } };
  const job = planned([[["cut by"], "saw"]], shop);
  const boards = job.plan.built.parts.filter((part) => part.piece === "box");

  it("has every panel and block at whole sixteenths", () => {
    for (const part of boards) {
      for (const size of sizeOf(part)) expect(Math.abs(size / step - Math.round(size / step))).toBeLessThan(1e-6);
    }
  });

  it("has walls of one height, and a volume worked out from the sizes as sawn", () => {
    const height = (role: string) => sizeOf(partNamed(job, `box/${role}`))[1];
    for (const role of ["rear", "left", "right"]) expect(height(role)).toBe(height("front"));
    const [width] = sizeOf(partNamed(job, "box/front"));
    const [depth] = sizeOf(partNamed(job, "box/left"));
    const gross = ((width - 36.4) * depth * height("front")) / 1e6;
    expect(job.plan.built.air[0]!.terms[0]!.litres).toBeCloseTo(gross, 9);
  });
});

describe("showing inches", () => {
  it("changes nothing of the plan", () => {
    const inches = planned([[["show"], "in 1/16"]]);
    expect(JSON.stringify(inches.plan)).toBe(JSON.stringify(planned().plan));
  });
});

describe("a box that cannot be made as described", () => {
  const found = (...changes: Change[]) => codesOf(planned(changes));

  it("has at most one free size", () => {
    expect(found(set("outside.depth", "free"))).toContain("one-free-size");
    expect(found()).not.toContain("one-free-size");
  });

  it("needs a volume for its free size", () => {
    expect(found(set("net", undefined))).toContain("free-needs-net");
    expect(found(set("net", undefined), set("outside.width", 530))).not.toContain("free-needs-net");
  });

  it("names each face once in its laps", () => {
    expect(found(set("laps", ["top", "top", "front", "rear", "left", "right"]))).toContain("laps-name-each-face-once");
  });

  it("needs a driver to line up", () => {
    expect(found(set("driver", undefined))).toContain("line-up-needs-driver");
  });

  it("leaves 30 mm inside", () => {
    // 2 x 18.2 + 30 = 66.4
    expect(found(set("outside.height", 66.3))).toContain("box-too-small");
    expect(found(set("outside.height", 66.5))).not.toContain("box-too-small");
  });

  it("says how it is held", () => {
    expect(found(set("held by", undefined))).toContain("box-not-held");
    expect(found()).not.toContain("box-not-held");
  });

  it("takes only threads that lie on it", () => {
    // the box stands at x 254.25 to 785.75; an insert hole of 9 mm must lie 4.5 inside
    expect(threadAt(254.25 + 4.4)).toContain("thread-off-face");
    expect(threadAt(254.25 + 4.6)).not.toContain("thread-off-face");
  });

  it("takes only joint screws that are long enough", () => {
    // 18.2 + 25 = 43.2 bite, 2 x 18.2 = 36.4 length: at least 43.2
    expect(found(set("screws", { with: "4.0 x 40" }))).toContain("no-screw-length");
    expect(found(set("screws", { with: "4.0 x 45" }))).not.toContain("no-screw-length");
  });

  it("keeps its cut-outs on its air", () => {
    // the front has 113.6 mm of height, all air; a hole at the left end would cut into the side
    expect(found(set("terminal.at", [50, 56.8]))).toContain("cut-out-off-face");
    expect(found(set("terminal.at", [62, 56.8]))).not.toContain("cut-out-off-face");
  });
});
