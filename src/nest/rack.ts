import { midpoint } from "../geometry/arc.js";
import { extentsOf, isCircle } from "../geometry/measure.js";
import type { Profile, Region, Vertex } from "../geometry/profile.js";
import { circle, polygon } from "../geometry/shapes.js";
import { moved } from "../geometry/transform.js";
import { outlineOf } from "../input/outline.js";
import type { NestedSheet } from "../model/build.js";
import type { Offcut } from "../model/shop.js";
import type { Remainder } from "./remainder.js";
import { around } from "./shapes/grown.js";

/** What a sheet leaves, as offcuts of a shop file: either the pieces as they are, or the rectangles cut from them. */
export type Rack = { readonly pieces: readonly Offcut[]; readonly rectangles: readonly Offcut[] };

/** As finely as anyone measures a piece of board, mm. */
const step = 0.1;
/** More corners than this nobody pastes into a file. */
const mostCorners = 120;

/**
 * What a sheet leaves, ready for the rack: named after the sheet, each from its own lower left corner, in tenths of a
 * millimetre. A piece that is a plain rectangle is given as one; a piece with too many corners is there as rectangles only.
 */
export function rackOf({ sheet, measured }: NestedSheet, { regions, rectangles }: Remainder): Rack {
  const common = { trim: 0, ...(measured !== undefined && { measured }) };
  const name = (count: number, i: number) => (count === 1 ? `left of ${sheet}` : `left of ${sheet}, ${i + 1}`);
  const pieces = regions.flatMap((region, i): Offcut[] => {
    const piece = pieceOf(region);
    return piece === undefined ? [] : [{ name: name(regions.length, i), ...common, ...piece }];
  });
  return {
    pieces,
    rectangles: rectangles.map(({ length, width }, i) => ({
      name: name(rectangles.length, i),
      ...common,
      length: down(length),
      width: down(width),
    })),
  };
}

function pieceOf(region: Region): Pick<Offcut, "length" | "width" | "outline" | "holes"> | undefined {
  const { min } = extentsOf(region);
  const own = (loop: Profile) => inSteps(moved(loop, -min.x, -min.y));
  const outline = own(region.outer);
  const size = extentsOf(outline);
  const [length, width] = [size.max.x - size.min.x, size.max.y - size.min.y];
  if (region.holes.length === 0 && isRectangle(outline)) return { length, width };
  if (outline.length > mostCorners) return undefined;
  const made = outlineOf(outline.map(({ x, y, bulge }) => ({ at: [x, y], bulge })));
  if ("fault" in made) return undefined;
  const holes = region.holes.map((hole) => holeOf(moved(hole, -min.x, -min.y)));
  return { length, width, outline: made.profile, ...(holes.length > 0 && { holes }) };
}

/** A hole as a zone of a shop file: round, or straight sides about it. */
function holeOf(hole: Profile): Profile {
  const round = isCircle(hole);
  if (round) return circle({ x: near(round.center.x), y: near(round.center.y) }, near(round.radius + step), "hole");
  return polygon(
    around(hole, 1, step).map(({ x, y }) => ({ x: near(x), y: near(y) })),
    "hole",
  );
}

/** Corners in steps, those that fall together once; arcs of more than a half circle in two. */
function inSteps(loop: Profile): Profile {
  const halves = loop.flatMap((a, i): Vertex[] => {
    const b = loop[(i + 1) % loop.length]!;
    if (Math.abs(a.bulge) < 1 && loop.length > 2) return [a];
    const half = Math.tan(Math.atan(a.bulge) / 2);
    return [
      { ...a, bulge: half },
      { ...midpoint(a, b), bulge: half, by: a.by },
    ];
  });
  const rounded = halves.map((v) => ({ ...v, x: near(v.x), y: near(v.y) }));
  return rounded.filter((v, i) => {
    const next = rounded[(i + 1) % rounded.length]!;
    return v.x !== next.x || v.y !== next.y;
  });
}

function isRectangle(outline: Profile): boolean {
  if (outline.length !== 4 || outline.some(({ bulge }) => bulge !== 0)) return false;
  return outline.every((a, i) => {
    const b = outline[(i + 1) % 4]!;
    return a.x === b.x || a.y === b.y;
  });
}

const near = (value: number): number => Math.round(value / step) / (1 / step);
const down = (value: number): number => Math.floor(value / step + 1e-6) / (1 / step);
