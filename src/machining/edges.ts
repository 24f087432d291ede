import { offsetRegion } from "../geometry/offset.js";
import { clipPath } from "../geometry/path.js";
import type { Path, Profile, Region } from "../geometry/profile.js";
import { sureOffset } from "../geometry/sure.js";
import type { Feature, Cut as PartCut } from "../model/part.js";
import type { Move, WorkKind } from "../model/program.js";
import type { Bench, Done, Lying, Tool } from "./bench.js";
import { type Centres, centresInside, centresOutside } from "./centres.js";
import { cannot, faultOf, tooShort, withheld } from "./faults.js";
import { alongPath, roundPath } from "./lines.js";
import { directed } from "./round.js";
import { sameAngle } from "./toolbox.js";

type EdgeCut = Extract<PartCut, { kind: "edge" }>;

/** How deep the point of a cone runs below the chamfer, mm, so that its slope and not its point leaves the lower edge:
 *  common practice, no source. */
const pointBelow = 0.5;

/** How near the outermost way along a rebate comes to the part's edge, in radii of the bit: its square corners lie within
 *  the bit's reach, the root of 2 times that. */
const toEdge = 0.7;

/** From one way along a rebate to the next, in radii of the bit. */
const stepShare = 0.8;

/** Cuts a rebate along edges: in steps from the edge in, its wall last. */
export function cutRebate(bench: Bench, lying: Lying, feature: Feature, tool: Tool, cut: EdgeCut): Done {
  const ways = [tool.radius];
  const outermost = cut.width - toEdge * tool.radius;
  for (let last = tool.radius; last < outermost; ) {
    last = Math.min(last + stepShare * tool.radius, outermost);
    ways.push(last);
  }
  return alongEdges(bench, lying, feature, tool, cut, (_, keep) => ({
    kind: "rebate",
    depth: cut.depth,
    reach: tool.radius,
    ways: [...ways].reverse().map((distance) => ({ from: keep, distance })),
    missed: missedAt(keep, cut.along, tool.radius),
  }));
}

/** Cuts a chamfer along edges with a cone of its angle that ends in a point: its slope in the edge, its point below. A
 *  cone whose angle nobody wrote down is taken at its word. */
export function cutChamfer(bench: Bench, lying: Lying, feature: Feature, tool: Tool, cut: EdgeCut): Done {
  const { angle, bearing } = tool.bit;
  const half = Math.atan2(cut.width, cut.depth);
  if (bearing !== undefined) return cannot(lying, feature, tool, "it has a bearing at its tip");
  if (angle !== undefined && Math.abs(angle / 2 - half) > sameAngle) {
    return cannot(lying, feature, tool, "its cone is not of the chamfer's angle");
  }
  const depth = cut.depth + Math.min(pointBelow, tool.radius / Math.tan(half) - cut.depth);
  if (depth < cut.depth - 1e-6) return cannot(lying, feature, tool, "the chamfer is wider than its cone");
  const reach = depth * Math.tan(half);
  // beside the edge itself, not beside the slope's upper end: round a corner of that the point would cut the corner off
  return alongEdges(bench, lying, feature, tool, cut, (solid) => ({
    kind: "chamfer",
    depth,
    reach,
    ways: [{ from: solid, distance: Math.max(hair, reach - cut.width) }],
  }));
}

/** How edges are worked. `reach`: from the bit's centre to where it cuts at the sheet's top; no way comes nearer than that
 *  to what is kept. `ways`: one after the other, how far from a shape's edges the centre runs, mm. */
type Ways = {
  readonly kind: WorkKind;
  readonly depth: number;
  readonly reach: number;
  readonly ways: readonly { readonly from: Region; readonly distance: number }[];
  readonly missed?: Centres | undefined;
};

function alongEdges(
  bench: Bench,
  lying: Lying,
  feature: Feature,
  tool: Tool,
  cut: EdgeCut,
  waysOf: (solid: Region, keep: Region) => Ways,
): Done {
  const solid = solidAlong(lying.profile, cut.along);
  const kept = sureOffset(solid, (by) => (isNamed(cut.along, by) ? -cut.width : 0));
  if (kept.doubt !== undefined) return withheld(feature, faultOf(lying, feature, tool, { doubt: kept.doubt }));
  const moves: Move[] = [];
  let operation: Pick<Ways, "kind" | "depth"> | undefined;
  for (const keep of kept.value) {
    const how = waysOf(solid, keep);
    const short = tooShort(lying, feature, tool, how.depth);
    if (short) return withheld(feature, short);
    if (how.missed) return withheld(feature, faultOf(lying, feature, tool, how.missed));
    const near = offsetRegion(keep, how.reach - hair);
    for (const { from, distance } of how.ways) {
      const moved = sureOffset(from, (by) => (isNamed(cut.along, by) ? distance : bench.cnc.clearance), sharp);
      if (moved.doubt !== undefined) return withheld(feature, faultOf(lying, feature, tool, { doubt: moved.doubt }));
      for (const line of linesOf(moved.value, cut.along, near)) {
        if (line.closed)
          moves.push(...roundPath(bench, tool, directed(line.path, line.kept, bench.cnc.direction), how.depth));
        else moves.push(...alongPath(bench, tool, line.path, how.depth));
      }
    }
    operation = how;
  }
  if (operation === undefined || moves.length === 0) return cannot(lying, feature, tool, "nothing is left of the part");
  const { kind, depth } = operation;
  const made = { kind, part: lying.part.id, feature: feature.id, moves, floor: -depth };
  return { cuts: [{ tool, operation: made }], findings: [], withheld: [] };
}

/** Edges are carried on to where they meet, so that the corner between them is cleared too. */
const sharp = { corners: "sharp" } as const;

/** Where a bit does not go in along a wall that runs all round; undefined where it does. */
function missedAt(keep: Region, along: readonly string[], radius: number): Centres | undefined {
  const whole = (loop: Profile) => loop.every((vertex) => isNamed(along, vertex.by));
  const outside = whole(keep.outer) ? [centresOutside(keep.outer, radius)] : [];
  const inside = keep.holes.filter(whole).map((outer) => centresInside({ outer, holes: [] }, radius));
  return [...outside, ...inside].find((centres) => centres.regions === undefined);
}

/** The part with those of its openings that are worked along. */
function solidAlong({ outer, holes }: Region, along: readonly string[]): Region {
  return { outer, holes: holes.filter((hole) => hole.some((vertex) => isNamed(along, vertex.by))) };
}

const isNamed = (along: readonly string[], by: string): boolean => by.split("|").every((name) => along.includes(name));

/** A line of the bit's centre; what is kept lies inside or outside of a closed one. */
type Line = { readonly path: Path; readonly closed: boolean; readonly kept: "inside" | "outside" };

/** The parts of moved loops that run beside named edges: whole loops, or runs no nearer to what is kept than `near`. */
function linesOf(moved: readonly Region[], along: readonly string[], near: readonly Region[]): readonly Line[] {
  const loops = moved.flatMap(({ outer, holes }) => [
    { path: outer, kept: "inside" as const },
    ...holes.map((path) => ({ path, kept: "outside" as const })),
  ]);
  return loops.flatMap(({ path: loop, kept }): readonly Line[] => {
    if (loop.every((vertex) => isNamed(along, vertex.by))) return [{ path: loop, closed: true, kept }];
    const runs = runsAlong(loop, along).flatMap((run) => clipPath(run, false, near, "outside"));
    return runs.map((path) => ({ path, closed: false, kept }));
  });
}

const hair = 1e-3; // mm: noise of two offsets that should agree

/** The runs of a loop's edges that bear one of the names; the loop has others too. */
function runsAlong(loop: Profile, along: readonly string[]): readonly Path[] {
  const n = loop.length;
  const named = loop.map((vertex) => isNamed(along, vertex.by));
  const first = named.findIndex((is, i) => is && !named[(i + n - 1) % n]);
  if (first < 0) return [];
  const runs: Path[] = [];
  let run: Profile[number][] = [];
  for (let k = 0; k <= n; k++) {
    const i = (first + k) % n;
    if (k < n && named[i]) run.push(loop[i]!);
    else if (run.length > 0) {
      runs.push([...run, { ...loop[i]!, bulge: 0 }]);
      run = [];
    }
  }
  return runs;
}
