import { reachable } from "./floors.js";
import { type Spot, spotsOf } from "./losses.js";
import {
  areaOf,
  type Box,
  both,
  boxOf,
  distanceTo,
  grown,
  meet,
  type Polygon,
  type Polygons,
  separate,
  widened,
  without,
} from "./polygons.js";
import type { Room } from "./stock.js";
import type { Swept } from "./swept.js";
import type { Cutter, Track } from "./tracks.js";

/** What still joins the two sides of a cut through the sheet: how many bridges, how high over the sheet's underside the
 *  highest one reaches, and the area of the largest at the foot. None: the piece is loose. */
export type Held = { readonly bridges: number; readonly height: number; readonly largest: number };

export const loose: Held = { bridges: 0, height: 0, largest: 0 };

/** Just above the underside and above each floor; distance from the line that a finished wall may stand in; the share of
 *  the bit's width that is surely clear beside it. mm. */
const hair = 0.01;
const edge = 0.02;
const share = 0.9;

export type Cut = {
  readonly tracks: readonly Track[];
  readonly cutters: ReadonlyMap<number, Cutter>;
  readonly swept: Swept;
  readonly room: Room;
  readonly chord: number;
};

/** The bridges round a part. */
export function heldOutside(outer: Polygon, cut: Cut): Held {
  const { room, chord } = cut;
  const width = share * bitNear([outer], cut);
  const sheet = [
    { x: 0, y: 0 },
    { x: room.length, y: 0 },
    { x: room.length, y: room.width },
    { x: 0, y: room.width },
  ];
  const ring = both(without(grown([outer], width, chord), grown([outer], edge, chord)), [sheet]);
  return heldIn(ring, outer, width, cut);
}

/** The bridges between a part and the waste in one of its openings; where a bit clears all of it, what it left. */
export function heldInside(
  hole: Polygon,
  name: string,
  cut: Cut,
): { readonly held: Held | undefined; readonly uncut: readonly Spot[] } {
  const { room, swept, chord } = cut;
  const bit = bitNear([hole], cut);
  const core = grown([hole], -share * bit, chord);
  if (core.length > 0) {
    const ring = without(grown([hole], -edge, chord), core);
    return { held: heldIn(ring, hole, share * bit, cut), uncut: [] };
  }
  const depth = room.thickness - hair;
  const left = without(reachable([hole], bit / 2, chord), swept(depth, boxOf([hole])));
  return { held: undefined, uncut: spotsOf(name, depth, left) };
}

function heldIn(ring: Polygons, line: Polygon, width: number, cut: Cut): Held {
  const near = widened(boxOf(ring), 0);
  const foot = bridgesAt(cut.room.thickness - hair, ring, line, width, near, cut);
  if (foot.length === 0) return loose;
  const floors = floorsNear(near, cut).filter((depth) => depth < cut.room.thickness - hair);
  const free = floors.find((depth) => bridgesAt(depth - hair, ring, line, width, near, cut).length === 0) ?? 0;
  return { bridges: foot.length, height: cut.room.thickness - free, largest: Math.max(...foot.map(areaOf)) };
}

/** Pieces of the ring that are still there at a depth and reach from one of its sides to the other. */
function bridgesAt(
  depth: number,
  ring: Polygons,
  line: Polygon,
  width: number,
  near: Box,
  { swept, chord }: Cut,
): readonly Polygons[] {
  return separate(without(ring, swept(depth, near))).filter((piece) => {
    const distances = piece.flat().map((place) => distanceTo([line], place));
    return Math.min(...distances) < edge + 0.03 + chord && Math.max(...distances) > width - 0.03 - chord;
  });
}

/** Diameter of the smallest straight bit that goes through the sheet near some polygons; a hair where there is none. */
function bitNear(polygons: Polygons, { tracks, cutters, room }: Cut): number {
  const box = boxOf(polygons);
  const widths = tracks.flatMap((track) => {
    const cutter = cutters.get(track.tool);
    const through = track.pieces.some(({ to }) => to[2] < -room.thickness + hair);
    return through && cutter?.form === "flat" && meet(widened(track.box, cutter.d / 2), box) ? [cutter.d] : [];
  });
  return widths.length === 0 ? 1 : Math.min(...widths);
}

/** Depths at which the bit ran level, deepest first. */
function floorsNear(near: Box, { tracks, cutters }: Cut): readonly number[] {
  const depths = new Set<number>();
  for (const { tool, pieces, box } of tracks)
    if (meet(widened(box, (cutters.get(tool)?.d ?? 0) / 2), near))
      for (const { from, to } of pieces) if (from[2] === to[2] && to[2] < 0) depths.add(-to[2]);
  return [...depths].sort((a, b) => b - a);
}
