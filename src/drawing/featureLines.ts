import { isCircle } from "../geometry/measure.js";
import { widen } from "../geometry/offset.js";
import type { Point, Region } from "../geometry/profile.js";
import type { Axis } from "../model/joint.js";
import type { Cut, Feature, Part, Side } from "../model/part.js";
import type { Callout } from "./callouts.js";
import { type EdgeRun, runsBeside } from "./edgeRuns.js";
import type { Item, LineKind } from "./page.js";
import { roleOf } from "./purpose.js";
import { arc, centreCross, circle, lineThrough } from "./shapes.js";
import { pathToPaper, type SeenFrom, toPaper, type View } from "./view.js";

/** How far centre lines stand out over a hole, mm of paper. */
const beyond = 1.5;
const sunkGrey = 0.85;
/** From an edge to the line that says it is covered, mm of paper. */
const coveredAway = 1.4;

/** What one sees of a part: its outline and what goes through wide, what lies on the far side dashed. */
export function partLines(part: Part, view: View): readonly Item[] {
  return [part.profile.outer, ...part.profile.holes].map((profile) => ({
    kind: "stroke" as const,
    path: pathToPaper(view, profile),
    closed: true,
    line: "visible" as const,
  }));
}

/** The lines of each feature that the outline does not show already. */
export function featureLines(part: Part, view: View, axes: readonly Axis[]): readonly Item[] {
  return part.features.flatMap((feature) => linesOf(feature, part, view, axes));
}

/** The circles on which holes lie in equal steps. */
export function patternLines(callouts: readonly Callout[], view: View): readonly Item[] {
  return callouts.flatMap((callout) =>
    callout.circle ? [circle(toPaper(view, callout.circle.centre), (callout.circle.d / 2) * view.scale, "centre")] : [],
  );
}

function linesOf(feature: Feature, part: Part, view: View, axes: readonly Axis[]): readonly Item[] {
  const { cut, side } = feature;
  switch (cut.kind) {
    case "outline":
    case "notch":
      return [];
    case "edge":
      return edgeWork(cut, side, part, view);
    case "opening":
      return [];
    case "pocket":
      return sunkArea(cut.region, side, view);
    case "groove":
      return grooveAreas(cut).flatMap((area) => sunkArea(area, side, view));
    case "hole":
      return typeof side === "object"
        ? edgeHole(cut, side.edge, part, view)
        : faceHole(cut, side, view, roleOf(feature, axes) === "thread");
    case "mark":
      return seen(side, view.from) === "visible" ? centreCross(toPaper(view, cut.at), 1.2) : [];
  }
}

function seen(side: Side, from: SeenFrom): LineKind {
  return side === from ? "visible" : "hidden";
}

/** What lies deeper than the side one sees is tinted; what is sunk into the far side is only dashed. */
function sunkArea(region: Region, side: Side, view: View): readonly Item[] {
  const paths = [region.outer, ...region.holes].map((profile) => pathToPaper(view, profile));
  const here = side === view.from;
  const edges = paths.map((path): Item => ({ kind: "stroke", path, closed: true, line: here ? "narrow" : "hidden" }));
  return here ? [{ kind: "fill", paths, grey: sunkGrey }, ...edges] : edges;
}

function grooveAreas(cut: Extract<Cut, { kind: "groove" }>): readonly Region[] {
  const [first] = cut.path;
  return widen(cut.closed && first ? [...cut.path, first] : cut.path, cut.width / 2);
}

/** A chamfer, round-over or rebate: a narrow line where it ends on the face or back. */
function edgeWork(cut: Extract<Cut, { kind: "edge" }>, side: Side, part: Part, view: View): readonly Item[] {
  const names = new Set(cut.along);
  const line = side === view.from ? "narrow" : "hidden";
  return [part.profile.outer, ...part.profile.holes].flatMap((profile, i) =>
    runsBeside(profile, names, i === 0 ? -cut.width : cut.width).map((run): Item => stroke(run, line, view)),
  );
}

/** A wide chain line beside each edge that a covering goes round. */
export function coveredLines(part: Part, view: View): readonly Item[] {
  const wrapped = Object.entries(part.edges).flatMap(([name, { finish }]) => (finish.kind === "wrapped" ? [name] : []));
  const away = coveredAway / view.scale;
  return wrapped.length === 0
    ? []
    : [part.profile.outer, ...part.profile.holes].flatMap((profile, i) =>
        runsBeside(profile, new Set(wrapped), i === 0 ? away : -away).map((run) => stroke(run, "covered", view)),
      );
}

function stroke(run: EdgeRun, line: LineKind, view: View): Item {
  return { kind: "stroke", path: pathToPaper(view, run.path), closed: run.closed, line };
}

/** The centre lines of round openings, recesses and outlines; of those about one middle, the largest has them. */
export function roundCrosses(part: Part, view: View): readonly Item[] {
  const shapes = part.features.flatMap(({ cut }) => ("region" in cut ? [cut.region.outer] : []));
  const rounds = shapes.flatMap((shape) => isCircle(shape) ?? []).sort((a, b) => b.radius - a.radius);
  const largest = rounds.filter(
    ({ center }, i) =>
      !rounds.slice(0, i).some((other) => Math.hypot(other.center.x - center.x, other.center.y - center.y) < 0.01),
  );
  return largest.flatMap(({ center, radius }) =>
    centreCross(toPaper(view, center), radius * view.scale + beyond, "centre"),
  );
}

/** A hole in the face or back; a threaded insert has a narrow three-quarter circle round it (ISO 6410-1, from memory). */
function faceHole(cut: Extract<Cut, { kind: "hole" }>, side: Side, view: View, thread: boolean): readonly Item[] {
  const at = toPaper(view, cut.at);
  const radius = (cut.d / 2) * view.scale;
  const line = seen(side, view.from);
  const sink = cut.sink ? (cut.sink.d / 2) * view.scale : 0;
  const ring = radius + 0.7;
  return [
    ...(cut.depth === "through" ? [] : [circle(at, radius, line)]),
    ...(sink > radius + 0.3 ? [circle(at, sink, line === "visible" ? "narrow" : "hidden")] : []),
    ...(thread ? [arc(at, ring, Math.PI / 2, 1.5 * Math.PI, "narrow")] : []),
    ...centreCross(at, Math.max(radius, sink, thread ? ring : 0) + beyond),
  ];
}

/** A hole in an edge runs into the board unseen, square to the edge. */
function edgeHole(cut: Extract<Cut, { kind: "hole" }>, edge: string, part: Part, view: View): readonly Item[] {
  const inward = inwardAt(part, edge, cut.at);
  if (inward === undefined || cut.depth === "through") return [];
  const place = (along: number, across: number): Point =>
    toPaper(view, {
      x: cut.at.x + inward.x * along - inward.y * across,
      y: cut.at.y + inward.y * along + inward.x * across,
    });
  const over = beyond / view.scale;
  const half = cut.d / 2;
  const walls = [place(0, half), place(cut.depth, half), place(cut.depth, -half), place(0, -half)];
  const axis = lineThrough([place(-over, 0), place(cut.depth + over, 0)], "centre");
  // Walls that would run into one another are one dashed line, and need no centre line.
  if (cut.d * view.scale < 1) return [lineThrough([place(-over, 0), place(cut.depth, 0)], "hidden")];
  return [lineThrough(walls, "hidden"), axis];
}

/** Into the board, square to the named straight edge that passes nearest to the place. */
function inwardAt(part: Part, edge: string, at: Point): Point | undefined {
  const { outer } = part.profile;
  const candidates = outer.flatMap((from, i) => {
    const to = outer[(i + 1) % outer.length]!;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    if (from.by !== edge || length === 0) return [];
    const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
    const t = Math.max(0, Math.min(length, (at.x - from.x) * along.x + (at.y - from.y) * along.y));
    const away = Math.hypot(from.x + t * along.x - at.x, from.y + t * along.y - at.y);
    return [{ away, inward: { x: -along.y, y: along.x } }];
  });
  return candidates.sort((a, b) => a.away - b.away)[0]?.inward;
}
