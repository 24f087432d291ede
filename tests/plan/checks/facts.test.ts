import { describe, expect, it } from "vitest";
import { compose, frameFromAxes, shifted } from "../../../src/geometry/frame.js";
import type { Profile } from "../../../src/geometry/profile.js";
import { rectangle } from "../../../src/geometry/shapes.js";
import type { Finding } from "../../../src/input/finding.js";
import { pieceId } from "../../../src/model/ids.js";
import { runChecks } from "../../../src/plan/checks/checks.js";
import {
  airOf,
  type BoxSize,
  boxParts,
  edgeNames,
  grossLitres,
  hole,
  obstacleAt,
  opening,
  planOf,
  type Scene,
  scene,
  sketchPart,
  spaceWith,
  tenInch,
  wrapped,
} from "./fixture.js";

async function found({ job, shop, plan }: Scene, code: string): Promise<readonly Finding[]> {
  return (await runChecks(job, shop, plan)).filter((finding) => finding.code === code);
}

const value = (finding: Finding | undefined, fact: string) => finding?.facts[fact]?.value;
const size: BoxSize = { width: 500, depth: 400, height: 300, t: 18 };
const board = (changes: Partial<Parameters<typeof sketchPart>[0]> = {}) =>
  sketchPart({ piece: "plate", role: "plate", outer: rectangle(0, 0, 400, 300, edgeNames), ...changes });

describe("what the findings say", () => {
  it("counts a block as air taken, touching its panel or let into it", async () => {
    const outer = rectangle(0, 0, 60, 60, edgeNames);
    for (const sunk of [0, 4]) {
      const own = boxParts(size);
      const block = sketchPart({ role: "block.1", outer, at: shifted(100, 100, size.height - 18 + sunk) });
      const terms = [
        { what: "gross inside", litres: grossLitres(size), shaped: true },
        { what: "block 1", litres: -(60 * 60 * (18 - sunk)) / 1e6, shaped: true },
        { what: "driver", litres: -1.4, shaped: false },
      ];
      const turned = { origin: [40, 30, 20], quat: [0.5, 0.5, 0.5, 0.5] } as const;
      const plan = planOf([...own, block], { air: [airOf(size, own, { terms })] }, turned);
      expect(await found(scene(plan), "volume-in-doubt")).toEqual([]);
      const wrong = [terms[0]!, { ...terms[1]!, litres: terms[1]!.litres * 1.01 }];
      const doubted = planOf([...own, block], { air: [airOf(size, own, { terms: wrong })] }, turned);
      expect(await found(scene(doubted), "volume-in-doubt")).toHaveLength(1);
    }
  });

  it("says how much deeper the box must be for the whole disc of the magnet", async () => {
    // the driver's axis lies in the middle, over air; a shelf 18 thick reaches under the edge of its magnet only
    const own = boxParts(size, { top: [opening("opening.driver", 250, 200, 233, "driver ten")] });
    const shelf = sketchPart({
      role: "shelf",
      outer: rectangle(0, 0, 170, 300, edgeNames),
      at: shifted(18, 50, size.height - 60),
    });
    const mount = { driver: "ten", piece: pieceId("box"), at: shifted(250, 200, size.height), from: [] };
    const plan = planOf([...own, shelf], { mounts: [mount] });
    // the magnet begins at x = 250 - 75 = 175 and the shelf ends at 188; 60 of room for 96 and 6 of air
    const [finding, ...others] = await found(scene(plan, { drivers: { ten: tenInch } }), "basket-hits");
    expect(others).toEqual([]);
    expect(finding?.on).toEqual(["box/shelf", "box"]);
    const long = { ...shelf, profile: { outer: rectangle(0, 0, 464, 300, edgeNames), holes: [] } };
    const under = planOf([...own, long], { mounts: [mount] });
    const [deep] = await found(scene(under, { drivers: { ten: tenInch } }), "magnet-hits");
    expect(value(deep, "missing")).toBeCloseTo(96 + 6 - 60, 6);
    const [vented] = await found(scene(under, { drivers: { ten: { ...tenInch, vented: true } } }), "magnet-hits");
    expect(value(vented, "missing")).toBeCloseTo(96 + 25 - 60, 6);
  });

  it("sees a driver's frame hang over a sunk panel, but not over one that runs on flush", async () => {
    const driver = { ...tenInch, frame: 420 };
    const front = (proud: number) => {
      const baffle = sketchPart({
        role: "baffle",
        outer: rectangle(0, 0, 400, 500, edgeNames),
        features: [opening("opening.driver", 200, 250, 233, "driver ten")],
      });
      const sides = [-18, 400].map((x) =>
        sketchPart({ role: `side ${x}`, outer: rectangle(x, 0, x + 18, 500, edgeNames), at: shifted(0, 0, proud) }),
      );
      const mount = { driver: "ten", piece: pieceId("box"), at: shifted(200, 250, 0), from: [] };
      return scene(planOf([baffle, ...sides], { mounts: [mount] }, shifted(300, 300, 300)), {
        drivers: { ten: driver },
      });
    };
    const inVehicle = ({ plan, ...rest }: Scene): Scene => {
      const mounts = plan.built.mounts.map((m) => ({ ...m, at: compose(shifted(300, 300, 300), m.at) }));
      return { ...rest, plan: { ...plan, built: { ...plan.built, mounts } } };
    };
    expect(await found(inVehicle(front(0)), "frame-off-face")).toEqual([]);
    const [finding] = await found(inVehicle(front(-20)), "frame-off-face");
    expect(value(finding, "over")).toBeCloseTo(10, 6);
  });

  it("names the side of the space a leaning part stands over, once for the piece", async () => {
    // a wall that leans out over the right side by 300 sin 10 degrees, and one that stands in the space
    const lean = (10 * Math.PI) / 180;
    const at = frameFromAxes([2000, 600, 20], [0, 1, 0], [Math.sin(lean), 0, Math.cos(lean)]);
    const parts = [board({ at }), board({ role: "other", at: shifted(100, 100, 100) })];
    const [finding, ...others] = await found(scene(planOf(parts)), "outside-space");
    expect(others).toEqual([]);
    expect(value(finding, "side")).toBe("right");
    expect(value(finding, "out")).toBeCloseTo(300 * Math.sin(lean), 1);
  });

  it("counts coverings where a part meets the space and its obstacles", async () => {
    const edges = { right: wrapped(40) };
    const space = { obstacles: { post: obstacleAt(515, 150, 600, 200, 12) } };
    const at = shifted(100, 100, 100);
    const groove = { name: "unused", cut: { kind: "mark", text: "", at: { x: 0, y: 0 } } } as const;
    const bare = scene(planOf([board({ at, features: [groove] })]), { space: spaceWith(space) });
    expect(await found(bare, "obstacle-too-near")).toEqual([]);
    const covered = scene(planOf([board({ at, edges })]), { space: spaceWith(space) });
    const [finding] = await found(covered, "obstacle-too-near");
    expect(value(finding, "reached")).toBeCloseTo(15 - 3.5, 6);
    expect(value(finding, "side")).toBe("the left");
    const high = scene(planOf([board({ at: shifted(100, 100, 998), coverings: { face: "carpet" } })]));
    expect(value((await found(high, "above-space"))[0], "out")).toBeCloseTo(1.5, 9);
  });

  it("finds that a notch 8 clear, rounded by 12, comes within 6.34 of a sharp post (computed: sqrt 2 (c - R) + R)", async () => {
    const quarter = Math.tan(Math.PI / 8);
    // as cut the corner is larger by the carpet on it, and lies back by it
    for (const carpet of [0, 3.5]) {
      const [x, y, r, by] = [200 - carpet, 200 - carpet, 12 + carpet, "notch.post"];
      const outer: Profile = [
        { x: 0, y: 0, bulge: 0, by: "bottom" },
        { x: 400, y: 0, bulge: 0, by: "right" },
        { x: 400, y, bulge: 0, by },
        { x: x + r, y, bulge: -quarter, by },
        { x, y: y + r, bulge: 0, by },
        { x, y: 300, bulge: 0, by: "top" },
        { x: 0, y: 300, bulge: 0, by: "left" },
      ];
      const edges = carpet > 0 ? { [by]: wrapped(0) } : {};
      const cut = scene(planOf([board({ outer, edges, at: shifted(0, 0, 100) })]), {
        space: spaceWith({ obstacles: { post: obstacleAt(208, 208, 390, 290, 8) } }),
      });
      const [finding, ...others] = await found(cut, "notch-corner-tight");
      expect(others).toEqual([]);
      expect(value(finding, "reached")).toBeCloseTo(Math.SQRT2 * (8 - 12) + 12, 9);
      expect(value(finding, "reached")).toBeCloseTo(6.34, 2);
      expect(value(finding, "radius")).toBeCloseTo(12, 9);
      // the corner is told once, as a rounding, and not as an obstacle that is too near as well
      expect(await found(cut, "obstacle-too-near")).toEqual([]);
    }
  });

  it("gathers fasteners that break one rule in one part, and gives the worst", async () => {
    const features = [10, 11, 30].map((y, i) => hole(`pilot.${i}`, 150 + 60 * i, y, 2.3, 10, { axis: `screw.${i}` }));
    const part = board({ features, at: shifted(0, 0, 100) });
    const axes = features.map(({ name }, i) => ({
      id: features[i]!.axis!,
      from: [],
      ray: shifted(150, 10, 100),
      fastener: "4.0 x 12 screw",
      stack: [{ part: part.id, feature: part.features.find((f) => f.id.endsWith(name))!.id, role: "pilot" as const }],
    }));
    const [finding, ...others] = await found(scene(planOf([part], { axes })), "face-thread-near-edge");
    expect(others).toEqual([]);
    expect(finding?.on).toEqual([part.id, axes[0]!.id, axes[1]!.id]);
    expect(value(finding, "reached")).toBe(10);
  });

  it("says by how much a box misses the opening, by its best face", async () => {
    const parts = boxParts(size);
    const plan = planOf(parts, { air: [airOf(size, parts)] });
    // 500 x 400 x 300 through 380 x 290: the 400 x 300 face misses by 20 and by 10
    const tight = scene(plan, { space: spaceWith({ opening: { width: 380, height: 290 } }) });
    const [finding] = await found(tight, "will-not-go-in");
    expect(value(finding, "missing")).toBeCloseTo(20, 1);
    expect(finding?.on).toEqual(["box"]);
  });

  it("leaves a piece that is only cut out of every question of place", async () => {
    const plan = planOf([board({ at: shifted(-900, 0, 0) })]);
    const { job, shop } = scene(plan);
    expect(await runChecks(job, shop, { ...plan, frames: [] })).toEqual([]);
  });
});
