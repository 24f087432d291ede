import { areaOf, isCircle } from "../geometry/measure.js";
import type { Profile, Region } from "../geometry/profile.js";
import type { Axis } from "../model/joint.js";
import type { Cut, Feature, Part, Side } from "../model/part.js";
import type { Callout } from "./callouts.js";
import { edgeHole, edgeWork } from "./edgeLines.js";
import type { Item, LineKind } from "./page.js";
import { roleOf } from "./purpose.js";
import { arc, centreCross, circle } from "./shapes.js";
import { grooveAreas } from "./sunk.js";
import { pathToPaper, type SeenFrom, toPaper, type View } from "./view.js";

/** How far centre lines stand out over a hole, mm of paper. */
const beyond = 1.5;

/** Blank and finished outline that differ by less are one, mm2: a hair over the longest edge. */
const sameArea = 0.01;

/** A part's outline and what goes through it, wide; round it the blank it is cut from first where that is larger. */
export function partLines(part: Part, view: View): readonly Item[] {
  const loop = (profile: Profile, line: LineKind): Item => ({
    kind: "stroke",
    path: pathToPaper(view, profile),
    closed: true,
    line,
  });
  const { profile, blank } = part;
  const oversize = Math.abs(areaOf(blank.outer) - areaOf(profile.outer)) > sameArea;
  return [
    ...(oversize ? [loop(blank.outer, "phantom")] : []),
    ...[profile.outer, ...profile.holes].map((each) => loop(each, "visible")),
  ];
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
      return sunkEdges(cut.region, side, view);
    case "groove":
      return grooveAreas(cut).flatMap((area) => sunkEdges(area, side, view));
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

function sunkEdges(region: Region, side: Side, view: View): readonly Item[] {
  const line = side === view.from ? "narrow" : "hidden";
  return [region.outer, ...region.holes].map((profile) => ({
    kind: "stroke" as const,
    path: pathToPaper(view, profile),
    closed: true,
    line,
  }));
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
