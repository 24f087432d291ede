import { isCircle } from "../geometry/measure.js";
import type { Path, Profile, Region } from "../geometry/profile.js";
import type { Cut, Edge, Feature, Part, Side } from "../model/part.js";
import { type Motion, moved } from "./motion.js";
import { differ, near, together } from "./near.js";

/** Whether `a`, moved so, lies on `b` edge by edge and feature by feature. */
export function fits(a: Part, b: Part, motion: Motion): boolean {
  const names = sameNames(a, b, motion);
  return (
    names !== undefined &&
    sameGrain(a, b, motion) &&
    matched(a.features, b.features, (f, g) => sameFeature(f, g, motion, names))
  );
}

/** Which edge of b each named edge of a falls on; undefined where the outlines or their edges differ. */
function sameNames(a: Part, b: Part, motion: Motion): ReadonlyMap<string, string> | undefined {
  const names = new Map<string, string>();
  const loopsA = [a.profile.outer, ...a.profile.holes];
  const loopsB = [b.profile.outer, ...b.profile.holes];
  const found = matched(loopsA, loopsB, (loop, other) => {
    const shift = loopShift(loop, other, motion);
    if (shift === undefined) return false;
    const edges = loop.map((vertex, i) => [vertex.by, other[(i + shift) % other.length]!.by] as const);
    if (!edges.every(([by, onto]) => sameEdge(a.edges[by], b.edges[onto]))) return false;
    for (const [by, onto] of edges) names.set(by, onto);
    return true;
  });
  return found ? names : undefined;
}

/** By how many vertices `other` must be read later for its corners to lie on those of `loop`. Circles: 0. */
function loopShift(loop: Profile, other: Profile, motion: Motion): number | undefined {
  const round = isCircle(loop);
  const otherRound = isCircle(other);
  if (round && otherRound) {
    return together(moved(round.center, motion), otherRound.center) && !differ(round.radius, otherRound.radius)
      ? 0
      : undefined;
  }
  if (loop.length !== other.length) return undefined;
  const at = loop.map((vertex) => moved(vertex, motion));
  return loop
    .map((_, shift) => shift)
    .find((shift) =>
      loop.every((vertex, i) => {
        const onto = other[(i + shift) % other.length]!;
        return together(at[i]!, onto) && Math.abs(vertex.bulge - onto.bulge) < 1e-6;
      }),
    );
}

const square: Edge = { bevel: 0, finish: { kind: "bare" }, flush: 0 };

function sameEdge(a: Edge = square, b: Edge = square): boolean {
  if (Math.abs(a.bevel - b.bevel) > 1e-6 || differ(a.flush, b.flush) || a.finish.kind !== b.finish.kind) return false;
  if (a.finish.kind !== "wrapped" || b.finish.kind !== "wrapped") return true;
  return a.finish.covering === b.finish.covering && !differ(a.finish.wrap, b.finish.wrap);
}

/** The grain's direction, either way along it. */
function sameGrain(a: Part, b: Part, { cos, sin }: Motion): boolean {
  if (a.grain === undefined || b.grain === undefined) return a.grain === b.grain;
  return Math.abs(Math.sin(a.grain + Math.atan2(sin, cos) - b.grain)) < 1e-6;
}

function sameFeature(f: Feature, g: Feature, motion: Motion, names: ReadonlyMap<string, string>): boolean {
  return f.stage === g.stage && sameSide(f.side, g.side, names) && sameCut(f.cut, g.cut, motion, names);
}

function sameSide(a: Side, b: Side, names: ReadonlyMap<string, string>): boolean {
  if (typeof a === "string" || typeof b === "string") return a === b;
  return (names.get(a.edge) ?? a.edge) === b.edge;
}

function sameCut(a: Cut, b: Cut, motion: Motion, names: ReadonlyMap<string, string>): boolean {
  switch (a.kind) {
    case "outline":
    case "notch":
    case "opening":
      return b.kind === a.kind && a.corner === b.corner && sameRegion(a.region, b.region, motion);
    case "pocket":
      return (
        b.kind === "pocket" &&
        a.corner === b.corner &&
        !differ(a.depth, b.depth) &&
        sameRegion(a.region, b.region, motion)
      );
    case "groove":
      return (
        b.kind === "groove" &&
        !differ(a.width, b.width) &&
        !differ(a.depth, b.depth) &&
        a.closed === b.closed &&
        (a.closed ? loopShift(a.path, b.path, motion) !== undefined : sameRun(a.path, b.path, motion))
      );
    case "hole":
      return b.kind === "hole" && together(moved(a.at, motion), b.at) && sameHole(a, b);
    case "edge":
      return (
        b.kind === "edge" &&
        a.form === b.form &&
        ![a.width - b.width, a.depth - b.depth].some((d) => Math.abs(d) > near) &&
        Math.abs(a.angle - b.angle) < 1e-6 &&
        sameNameSet(
          a.along.map((name) => names.get(name) ?? name),
          b.along,
        )
      );
    case "mark":
      return b.kind === "mark" && a.text === b.text && together(moved(a.at, motion), b.at);
  }
}

type Hole = Extract<Cut, { kind: "hole" }>;

function sameHole(a: Hole, b: Hole): boolean {
  const sizes = (hole: Hole) => [
    hole.d,
    hole.depth === "through" ? -1 : hole.depth,
    hole.below ?? -1,
    hole.sink?.d ?? -1,
    hole.sink?.depth ?? -1,
    (hole.sink?.angle ?? -1) * 10, // rad: coarse enough in hundredths
  ];
  const other = sizes(b);
  return sizes(a).every((size, i) => !differ(size, other[i]!));
}

function sameRegion(a: Region, b: Region, motion: Motion): boolean {
  return (
    loopShift(a.outer, b.outer, motion) !== undefined &&
    matched(a.holes, b.holes, (loop, other) => loopShift(loop, other, motion) !== undefined)
  );
}

/** An open groove may be walked from either end. */
function sameRun(a: Path, b: Path, motion: Motion): boolean {
  const back = b.map((_, i) => ({ ...b[b.length - 1 - i]!, bulge: 0 - (b[b.length - 2 - i]?.bulge ?? 0) }));
  return [b, back].some(
    (path) =>
      path.length === a.length &&
      a.every((v, i) => together(moved(v, motion), path[i]!) && Math.abs(v.bulge - path[i]!.bulge) < 1e-6),
  );
}

/** Whether each of `as` has one of `bs` to itself. Near-equal things are far apart here, so the first that fits will do. */
function matched<T>(as: readonly T[], bs: readonly T[], same: (a: T, b: T) => boolean): boolean {
  if (as.length !== bs.length) return false;
  const left = [...bs];
  return as.every((a) => {
    const i = left.findIndex((b) => same(a, b));
    if (i < 0) return false;
    left.splice(i, 1);
    return true;
  });
}

function sameNameSet(a: readonly string[], b: readonly string[]): boolean {
  const [x, y] = [new Set(a), new Set(b)];
  return x.size === y.size && [...x].every((name) => y.has(name));
}
