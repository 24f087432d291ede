import { arcOf, isFlat } from "../../geometry/arc.js";
import { extentsOf } from "../../geometry/measure.js";
import { offsetRegion } from "../../geometry/offset.js";
import type { Point, Profile, Region, Vertex } from "../../geometry/profile.js";
import { rectangle } from "../../geometry/shapes.js";
import { chordsOf } from "../../geometry/tessellate.js";
import type { Loop } from "./loops.js";

/** What a polygon may add to an arc, mm: two parts pressed together keep at most twice this more than their gap. */
const chord = 0.005;

/**
 * A shape grown by `by` all round, as a polygon that never lies within it: what two such keep apart, the shapes keep at
 * least twice `by` apart. Straight sides are exact. mm.
 */
export function grownLoops(shape: Region, by: number): Loop[] {
  const [grown, ...more] = by > 0 ? offsetRegion(shape, by) : [shape];
  return grown !== undefined && more.length === 0 ? aroundRegion(grown) : aroundRegion(extentsGrown(shape, by));
}

/** The rectangle about a shape, for the one whose outline could not be moved. */
function extentsGrown(shape: Region, by: number): Region {
  const { min, max } = extentsOf(shape);
  return { outer: rectangle(min.x - by, min.y - by, max.x + by, max.y + by, "around"), holes: [] };
}

function aroundRegion({ outer, holes }: Region): Loop[] {
  return [around(outer, 1), ...holes.map((hole) => around(hole, -1).reverse())];
}

/** Arcs that turn as `bowed` (1 left, -1 right) become tangents, the others chords; neither leaves its arc by more than `off`. */
export function around(profile: Profile, bowed: 1 | -1, off = chord): Point[] {
  return profile.flatMap((a, i) => aroundEdge(a, profile[(i + 1) % profile.length]!, bowed, off));
}

function aroundEdge(a: Vertex, b: Vertex, bowed: 1 | -1, off: number): Point[] {
  const from = { x: a.x, y: a.y };
  if (isFlat(a, b)) return [from];
  const { center, radius, start, sweep } = arcOf(a, b);
  const n = Math.max(chordsOf(radius, sweep, off), Math.ceil(Math.abs(sweep)));
  const half = sweep / (2 * n);
  const at = (steps: number, r: number) => ({
    x: center.x + r * Math.cos(start + steps * half),
    y: center.y + r * Math.sin(start + steps * half),
  });
  if (Math.sign(sweep) === bowed) return [from, ...range(n).map((k) => at(2 * k + 1, radius / Math.cos(half)))];
  return [from, ...range(n - 1).map((k) => at(2 * k + 2, radius))];
}

const range = (n: number): number[] => Array.from({ length: n }, (_, k) => k);
