import { describe, expect, it } from "vitest";
import { arcOf, midpoint } from "../../../src/geometry/arc.js";
import { nearestOn, nearestOnPath } from "../../../src/geometry/distance.js";
import { compose, place } from "../../../src/geometry/frame.js";
import type { Path, Point, Profile } from "../../../src/geometry/profile.js";
import { tessellate } from "../../../src/geometry/tessellate.js";
import { type Change, codesOf, featureNamed, type Planned, partNamed, planned } from "../planned.js";

const plateOf = (job: Planned) => partNamed(job, "plate/plate");

function arcsBy(profile: Profile, by: string) {
  return profile.flatMap((vertex, i) =>
    vertex.by === by && vertex.bulge !== 0 ? [arcOf(vertex, profile[(i + 1) % profile.length]!)] : [],
  );
}

/** Where a hole of a part lies in the vehicle, on the part's face. */
function holeInVehicle({ plan }: Planned, id: string): readonly number[] {
  const part = plan.built.parts.find((candidate) => id.startsWith(`${candidate.id}:`))!;
  const { cut } = part.features.find((feature) => feature.id === id)!;
  if (cut.kind !== "hole") throw new Error(`${id} is no hole`);
  const frame = compose(new Map(plan.frames).get(part.piece)!, part.at);
  return place(frame, [cut.at.x, cut.at.y, 0]);
}

/** The vertices of an open chain and the middles of its edges. */
function placesAlong(path: Path): readonly Point[] {
  return [...path, ...path.slice(1).map((vertex, i) => midpoint(path[i]!, vertex))];
}

/** The starter's plate with its covering all round, where the starter leaves the rear bare. */
const allRound: readonly Change[] = [[["pieces", "plate", "sides"], undefined]];

describe("a covered plate", () => {
  const job = planned(allRound);
  const part = plateOf(job);

  it("is cut back from the space by its gap and its covering", () => {
    // gap 3 + carpet 3.5, so that the finished edge stands 3 from the space
    for (const p of tessellate(part.profile.outer, 0.01)) {
      const near = nearestOn(job.job.space.outline, p)!;
      expect(near.distance).toBeGreaterThan(6.5 - 0.02);
    }
    const [corner] = arcsBy(part.profile.outer, "right|front");
    expect(corner!.radius).toBeCloseTo(60 - 6.5, 9);
  });

  it("keeps its notch clear of the obstacle by clearance and covering", () => {
    const battery = job.job.space.obstacles["auxiliary battery"]!.outline;
    const cut = part.profile.outer.filter((vertex) => vertex.by === "notch.auxiliary battery");
    const nearest = Math.min(...cut.map((vertex) => nearestOn(battery, vertex)!.distance));
    expect(nearest).toBeCloseTo(12 + 3.5, 6);
  });

  // Geometry of a rounded notch about a sharp corner: sqrt(2) (c - R) + R; c 8, R 12 comes to 6.34 (computed).
  it("comes to 6.34 mm from a sharp corner at 8 mm clearance and a finished radius of 12 mm", () => {
    const tight = planned([
      [["space", "obstacles", "auxiliary battery", "clear"], 8],
      [["pieces", "plate", "notch", "round"], 12],
    ]);
    const corner: Point = { x: 800, y: 560 };
    const asCut = nearestOn(plateOf(tight).profile.outer, corner)!;
    expect(asCut.by).toBe("notch.auxiliary battery");
    expect(asCut.distance - 3.5).toBeCloseTo(6.34, 2);
  });

  it("opens round the ring by reveal and covering", () => {
    const opening = part.profile.holes.find((hole) => hole[0]!.by === "opening.driver")!;
    const { radius, center } = arcOf(opening[0]!, opening[1]!);
    // ring 310 across, reveal 1 (carpet: common practice, no source), carpet 3.5
    expect(radius).toBeCloseTo(155 + 1 + 3.5, 9);
    expect(center.x).toBeCloseTo(520, 9); // the striker line
  });

  it("shares every bolt's axis with an insert in the box", () => {
    const axes = job.plan.built.axes.filter((axis) => axis.id.startsWith("plate:bolt"));
    expect(axes).toHaveLength(6);
    for (const axis of axes) {
      const [clearance, thread] = axis.stack;
      expect([clearance!.role, thread!.role]).toEqual(["clearance", "thread"]);
      const a = holeInVehicle(job, clearance!.feature);
      const b = holeInVehicle(job, thread!.feature);
      expect(Math.hypot(a[0]! - b[0]!, a[1]! - b[1]!)).toBeLessThan(1e-9);
    }
  });

  // ISO 273: M6 medium 6.6, coarse 7.0; a covered plate takes the coarse hole.
  it("takes the coarse clearance hole where it is covered and the medium one where it is bare", () => {
    const hole = featureNamed(part, "bolt.1").cut;
    expect(hole.kind === "hole" && hole.d).toBe(7.0);
    const bare = plateOf(planned([[["pieces", "plate", "covered"], undefined]]));
    const bareHole = featureNamed(bare, "bolt.1").cut;
    expect(bareHole.kind === "hole" && bareHole.d).toBe(6.6);
  });

  it("takes the shortest bolt that starts loose, engages clamped and does not bottom", () => {
    // under the head: 12.1 board + 2 carpet clamped beneath + carpet on the face, 3.5 laid or 2 clamped
    // loose 17.6 + 1 thread = 18.6; tight 16.1 + 6 = 22.1; at most 16.1 + 16 - 1 = 31.1: stock 25
    const fastener = job.plan.built.axes.find((axis) => axis.id === "plate:bolt.1")!.fastener;
    expect(fastener).toBe("M6 x 25 button black");
  });

  it("places its bolts evenly about the line that the box is lined up on", () => {
    const xs = job.plan.built.axes.filter((axis) => axis.id.startsWith("plate:bolt")).map((axis) => axis.ray.origin[0]);
    const sum = xs.reduce((total, x) => total + (x - 520), 0);
    expect(sum).toBeCloseTo(0, 6);
  });
});

describe("the groove on the back", () => {
  const job = planned(allRound);
  const part = plateOf(job);
  const grooves = part.features.filter((feature) => feature.cut.kind === "groove");

  it("runs at the wrap line everywhere", () => {
    for (const { cut } of grooves) {
      if (cut.kind !== "groove") continue;
      for (const p of placesAlong(cut.path)) {
        const away = [part.profile.outer, ...part.profile.holes.filter((hole) => hole[0]!.by === "opening.driver")].map(
          (loop) => nearestOn(loop, p)!.distance,
        );
        expect(Math.min(...away)).toBeCloseTo(40, 6);
      }
    }
    expect(grooves.length).toBeGreaterThan(0);
  });

  it("is as deep as the covering is thick when pressed, on the back", () => {
    for (const feature of grooves) {
      expect(feature.side).toBe("back");
      expect(feature.cut.kind === "groove" && feature.cut.depth).toBe(2);
    }
  });

  it("is never deeper than a third of the board, and says so", () => {
    const thick = planned([
      [["coverings", "carpet", "thick"], 6],
      [["coverings", "carpet", "clamped"], 5],
    ]);
    const groove = plateOf(thick).features.find((feature) => feature.cut.kind === "groove")!;
    expect(groove.cut.kind === "groove" && groove.cut.depth).toBeCloseTo(12.1 / 3, 9);
    expect(codesOf(thick)).toContain("groove-limited");
    expect(codesOf(job)).not.toContain("groove-limited");
  });

  it("stops short of bolt holes and names them", () => {
    const holes = part.features.flatMap(({ cut }) => (cut.kind === "hole" ? [cut] : []));
    for (const { cut } of grooves) {
      if (cut.kind !== "groove") continue;
      for (const hole of holes) {
        const near = nearestOnPath(cut.path, hole.at)!.distance;
        expect(near).toBeGreaterThanOrEqual(hole.d / 2 + 2 + 3 - 1e-6);
      }
    }
    expect(codesOf(job)).toContain("groove-broken");
  });

  it("runs out to the edge where a bare side meets covered ones", () => {
    const some = planned([[["pieces", "plate", "sides"], { rear: { bare: true } }]]);
    const runs = plateOf(some).features.flatMap(({ cut }) => (cut.kind === "groove" ? [cut] : []));
    const ends = runs.filter((run) => !run.closed).flatMap((run) => [run.path[0]!, run.path.at(-1)!]);
    const outer = plateOf(some).profile.outer;
    const out = ends.filter((end) => nearestOn(outer, end)!.distance < 1e-6);
    expect(out).toHaveLength(2);
    for (const end of out) expect(nearestOn(outer, end)!.by).toBe("rear");
    // the bare side is cut back by its gap alone
    expect(Math.min(...outer.map((vertex) => vertex.y))).toBeCloseTo(3, 9);
  });
});

describe("a plate that cannot be made", () => {
  it("says when its gaps eat it", () => {
    // the space is 1040 wide: two sides of 515 and the carpet leave 3 mm, of 520 nothing
    const wide = (gap: number) => ({ left: { gap }, right: { gap } });
    const alone: readonly Change[] = ["notch", "open over", "bolted"].map((key) => [
      ["pieces", "plate", key],
      undefined,
    ]);
    const left = planned([...alone, [["pieces", "plate", "sides"], wide(515)]]);
    expect(codesOf(left)).toEqual([]);
    const none = planned([...alone, [["pieces", "plate", "sides"], wide(520)]]);
    expect(codesOf(none)).toContain("plate-vanishes");
  });

  it("says when there is no room for all its bolts", () => {
    const crowded = planned([[["pieces", "plate", "bolted", "set in"], 200]]);
    expect(codesOf(crowded)).toContain("too-few-bolt-places");
  });

  it("does not round a bolt up when no stock length fits", () => {
    // M6 x 12 in its 13 mm hole, carpet 8 laid and 0.5 clamped: loose 12.1 + 0.5 + 8 + 1 = 21.6, and at most
    // 12.1 + 1 + 13 - 1 = 25.1: only 25 fits. With carpet 12 laid it must be 25.6 to start, and nothing fits.
    const squashy = (thick: number) =>
      planned([
        [["coverings", "carpet", "thick"], thick],
        [["coverings", "carpet", "clamped"], 0.5],
        [["pieces", "plate", "bolted", "insert"], "M6 x 12"],
      ]);
    const fits = squashy(8).plan.built.axes.find((axis) => axis.id === "plate:bolt.1")!;
    expect(fits.fastener).toBe("M6 x 25 button black");
    expect(codesOf(squashy(12))).toContain("no-bolt-length");
  });
});
