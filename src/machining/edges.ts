import { directionAtEnd, directionAtStart } from "../geometry/arc.js";
import { offsetRegion } from "../geometry/offset.js";
import { offsetPath } from "../geometry/offsetPath.js";
import { clipPath } from "../geometry/path.js";
import type { Path, Profile, Region } from "../geometry/profile.js";
import { againstTheClock } from "../geometry/shapes.js";
import { type Doubt, sureOffset } from "../geometry/sure.js";
import type { Feature, Cut as PartCut } from "../model/part.js";
import type { Move, WorkKind } from "../model/program.js";
import type { Bench, Done, Lying, Tool } from "./bench.js";
import { cannot, faultOf, tooShort, withheld } from "./faults.js";
import { alongPath, roundPath } from "./lines.js";
import { directed } from "./round.js";
import { sameAngle } from "./toolbox.js";

type EdgeCut = Extract<PartCut, { kind: "edge" }>;

/** How deep the point of a cone runs below the chamfer, mm, so that its slope and not its point leaves the lower edge:
 *  common practice, no source. */
const pointBelow = 0.5;

/** How far past the part's edge a bit clears, mm, so that no thread of board stays. */
const past = 0.5;

/** From one way along a rebate to the next, in radii of the bit. */
const stepShare = 0.8;

/** Cuts a rebate along edges: in steps from the edge in, its wall last. */
export function cutRebate(bench: Bench, lying: Lying, feature: Feature, tool: Tool, cut: EdgeCut): Done {
  const ways = [tool.radius];
  for (let last = tool.radius; last + tool.radius < cut.width + past; ) {
    last = Math.min(last + stepShare * tool.radius, cut.width + past - tool.radius);
    ways.push(last);
  }
  return alongEdges(bench, lying, feature, tool, cut, { kind: "rebate", ways: ways.reverse(), depth: cut.depth });
}

/** Cuts a chamfer along edges with a cone of its angle that ends in a point: its slope in the edge, its point below. */
export function cutChamfer(bench: Bench, lying: Lying, feature: Feature, tool: Tool, cut: EdgeCut): Done {
  const { angle, bearing } = tool.bit;
  const half = Math.atan2(cut.width, cut.depth);
  if (bearing !== undefined) return cannot(lying, feature, tool, "it has a bearing at its tip");
  if (angle === undefined || Math.abs(angle / 2 - half) > sameAngle) {
    return cannot(lying, feature, tool, "its cone is not of the chamfer's angle");
  }
  const depth = cut.depth + Math.min(pointBelow, tool.radius / Math.tan(half) - cut.depth);
  if (depth < cut.depth - 1e-6) return cannot(lying, feature, tool, "the chamfer is wider than its cone");
  return alongEdges(bench, lying, feature, tool, cut, { kind: "chamfer", ways: [depth * Math.tan(half)], depth });
}

/** `ways`: how far from the wall the bit's centre runs, way by way, mm; the last one leaves the wall. */
type Ways = { readonly kind: WorkKind; readonly ways: readonly number[]; readonly depth: number };

function alongEdges(bench: Bench, lying: Lying, feature: Feature, tool: Tool, cut: EdgeCut, how: Ways): Done {
  const short = tooShort(lying, feature, tool, how.depth);
  if (short) return withheld(feature, short);
  const solid = solidAlong(lying.profile, cut.along);
  const kept = sureOffset(solid, (by) => (isNamed(cut.along, by) ? -cut.width : 0));
  if (kept.doubt !== undefined) return withheld(feature, faultOf(lying, feature, tool, { doubt: kept.doubt }));
  const wallWay = how.ways[how.ways.length - 1]!;
  const moves: Move[] = [];
  for (const way of how.ways) {
    for (const keep of kept.value) {
      const found = linesAt(keep, cut.along, way, wallWay, bench.cnc.clearance);
      if ("what" in found) return withheld(feature, faultOf(lying, feature, tool, { doubt: found }));
      for (const loop of found.loops) {
        moves.push(...roundPath(bench, tool, directed(loop.line, loop.kept, bench.cnc.direction), how.depth));
      }
      for (const path of found.paths) moves.push(...alongPath(bench, tool, path, how.depth));
    }
  }
  const operation = { kind: how.kind, part: lying.part.id, feature: feature.id, moves, floor: -how.depth };
  return { cuts: [{ tool, operation }], findings: [], withheld: [] };
}

/** The part with those of its openings that are worked along. */
function solidAlong({ outer, holes }: Region, along: readonly string[]): Region {
  return { outer, holes: holes.filter((hole) => hole.some((vertex) => isNamed(along, vertex.by))) };
}

const isNamed = (along: readonly string[], by: string): boolean => by.split("|").every((name) => along.includes(name));

type Lines = {
  readonly loops: readonly { readonly line: Profile; readonly kept: "inside" | "outside" }[];
  readonly paths: readonly Path[];
};

/** The lines of the bit's centre at this distance from the walls of what is kept: whole loops, or runs between corners
 *  that run out past them, no nearer to anything than the wall's own way. */
function linesAt(keep: Region, along: readonly string[], way: number, wallWay: number, runOut: number): Lines | Doubt {
  const walls = [keep.outer, ...keep.holes].filter((loop) => loop.some((vertex) => isNamed(along, vertex.by)));
  const isWhole = (loop: Profile) => loop.every((vertex) => isNamed(along, vertex.by));
  const loops: Lines["loops"][number][] = [];
  for (const wall of walls.filter(isWhole)) {
    const kept = wall === keep.outer ? "inside" : "outside";
    const moved = sureOffset({ outer: wall, holes: [] }, kept === "inside" ? way : -way);
    if (moved.doubt !== undefined) return moved.doubt;
    loops.push(...moved.value.map(({ outer }) => ({ line: outer, kept }) as const));
  }
  const near = offsetRegion(keep, wallWay - hair);
  const paths = walls
    .filter((wall) => !isWhole(wall))
    .flatMap((wall) => runsAlong(wall === keep.outer ? wall : againstTheClock(wall), along))
    .flatMap((run) => offsetPath(run, way))
    .flatMap((path) => clipPath(extended(path, runOut), false, near, "outside"));
  return { loops, paths };
}

const hair = 1e-3; // mm: noise of two offsets that should agree

/** The runs of a loop's edges that bear one of the names; the loop has others too. */
function runsAlong(loop: Profile, along: readonly string[]): readonly Path[] {
  const n = loop.length;
  const named = loop.map((vertex) => isNamed(along, vertex.by));
  const first = named.findIndex((is, i) => is && !named[(i + n - 1) % n]);
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

/** A path carried on straight at both ends, mm. */
function extended(path: Path, by: number): Path {
  const [a, b] = [path[0]!, path[1]!];
  const [y, z] = [path[path.length - 2]!, path[path.length - 1]!];
  const [on, off] = [directionAtStart(a, b), directionAtEnd(y, z)];
  return [
    { x: a.x - on.x * by, y: a.y - on.y * by, bulge: 0, by: a.by },
    ...path,
    { x: z.x + off.x * by, y: z.y + off.y * by, bulge: 0, by: z.by },
  ];
}
