import { intersection } from "../../geometry/boolean.js";
import { pointInProfile } from "../../geometry/inside.js";
import { extentsOf } from "../../geometry/measure.js";
import type { Extents, Profile, Region } from "../../geometry/profile.js";
import { rectangle as profileOf } from "../../geometry/shapes.js";
import type { NestedSheet, Within } from "../../model/build.js";
import type { Board, SawCut, SawnPiece } from "../../model/rip.js";
import { isLarge, isLargeEnough, sameSize, wayFor } from "./handling.js";
import type { Sawing } from "./sawing.js";

/** A sheet as it is sawn, from what stands in the rack: an odd offcut is first cut down to the rectangle that a saw has of it. */
export function fromRack(
  { sawn, within }: Pick<NestedSheet, "sawn" | "within">,
  sawing: Sawing,
): SawnPiece | undefined {
  if (!sawn || within?.whole === undefined) return sawn;
  return cutDown(sawn, { ...within, whole: within.whole }, sawing);
}

/** The sides of the rectangle at which board may stand out. */
type Beyond = "top" | "left" | "right";

/**
 * A board cut down to a rectangle at 0, 0 that lies on its true edge: what stands out above it, at its left and at its
 * right. The true edge is the only one there is to go by, at the fence, or along the sled.
 *
 * Order: of a rectangle longer than wide first the rip along the true edge, which makes it handy for the sled, then both
 * ends square. Of one wider than long the ends first: its true edge is too short for the fence.
 */
function cutDown(rectangle: SawnPiece, within: Within & { readonly whole: Region }, sawing: Sawing): SawnPiece {
  const { whole, side: edge, knots = [] } = within;
  const { length, width } = rectangle;
  const order: readonly Beyond[] = length >= width ? ["top", "left", "right"] : ["left", "right", "top"];
  return cutOn(whole, order);

  function cutOn(shape: Region, [beyond, ...others]: readonly Beyond[]): SawnPiece {
    if (beyond === undefined) return rectangle;
    const box = extentsOf(shape);
    const out = { top: box.max.y - width, left: -box.min.x, right: box.max.x - length }[beyond];
    if (out <= sameSize) return cutOn(shape, others);
    const withEnd = beyond === "right" && others.length === 0 ? endLeftOn(rectangle, shape, knots, sawing) : undefined;
    if (withEnd) return withEnd;
    const isSquare = beyond !== "left" && !others.includes("left");
    const { kerf: blade, ...way } = firstWay(beyond, isSquare, box, rectangle, sawing);
    const kerf = Math.min(blade, out);
    const { kept, waste } = parted(shape, beyond, rectangle, kerf);
    const goesOn = cutOn(kept, others);
    const away = waste.length > 0 ? pieceOf(waste, knots) : undefined;
    const [off, rest] = beyond === "left" ? [away, goesOn] : [goesOn, away];
    const size = { top: width, left: -kerf - leftEndOf(shape, edge), right: length }[beyond];
    const cut = { ...way, along: beyond === "top", size, kerf, ...(off && { off }), ...(rest && { rest }), edge };
    return { ...pieceOf([shape], knots), cut };
  }
}

/**
 * A piece that is crossed into lengths from its square left end, its odd right end left on: it stays on the last rest,
 * and one cut and one setting are spared. Undefined where that last rest is a part or goes on, or the cuts would be made otherwise.
 */
function endLeftOn(piece: SawnPiece, shape: Region, knots: readonly Profile[], sawing: Sawing): SawnPiece | undefined {
  const odd = pieceOf([shape], knots);
  const { cut, part, bevels, goesOn } = piece;
  if (!cut) return part === undefined && goesOn === undefined ? odd : undefined;
  if (bevels || cut.along || cut.way === "true edge" || !cut.off || !cut.rest) return undefined;
  const { saw, way } = wayFor(odd.width, odd.length, cut.size, sawing);
  if (saw !== cut.saw || way !== cut.way) return undefined;
  const { min, max } = extentsOf(shape);
  const beside = { outer: profileOf(cut.rest.x, min.y - 1, max.x + 1, max.y + 1, "sawn"), holes: [] };
  const [left, ...more] = intersection(shape, beside);
  if (!left || more.length > 0) return undefined;
  const rest = endLeftOn(cut.rest, left, knots, sawing);
  return rest && { ...odd, cut: { ...cut, rest } };
}

/** Where the true edge begins. */
function leftEndOf({ outer }: Region, edge: string): number {
  const ends = outer.flatMap(({ by, x }, i) => (by === edge ? [x, outer[(i + 1) % outer.length]!.x] : []));
  return Math.min(...ends);
}

/** What stays of a shape round its rectangle, and what comes off beyond the blade; splinters are dust. */
function parted(shape: Region, beyond: Beyond, { length, width }: Board, kerf: number) {
  const { min, max } = extentsOf(shape);
  const [x0, y0, x1, y1] = [min.x - 1, min.y - 1, max.x + 1, max.y + 1];
  const boxes: Readonly<Record<Beyond, readonly [near: Box, far: Box]>> = {
    top: [
      [x0, y0, x1, width],
      [x0, width + kerf, x1, y1],
    ],
    left: [
      [0, y0, x1, y1],
      [x0, y0, -kerf, y1],
    ],
    right: [
      [x0, y0, length, y1],
      [length + kerf, y0, x1, y1],
    ],
  };
  const [near, far] = boxes[beyond];
  const inside = (box: Box) => intersection(shape, { outer: profileOf(...box, "sawn"), holes: [] });
  const middle = { x: length / 2, y: width / 2 };
  const kept = inside(near).find(({ outer }) => pointInProfile(outer, middle)) ?? shape;
  return { kept, waste: inside(far).filter((region) => !isSplinter(region)) };
}

type Box = readonly [number, number, number, number];

function isSplinter(region: Region): boolean {
  const { length, width } = boardOf([region]);
  return Math.min(length, width) <= sameSize;
}

/** A piece of such a shape, with the knots that reach into its extents. */
function pieceOf(shape: readonly Region[], knots: readonly Profile[]): Board {
  const board = boardOf(shape);
  const inside = knots.filter((knot) => {
    const { min, max } = extentsOf(knot);
    const { x, y, length, width } = board;
    return min.x < x + length && max.x > x && min.y < y + width && max.y > y;
  });
  return { ...board, shape, ...(inside.length > 0 && { knots: inside }) };
}

function boardOf(regions: readonly Region[]): Board {
  const boxes = regions.map(extentsOf);
  const x = Math.min(...boxes.map(({ min }) => min.x));
  const y = Math.min(...boxes.map(({ min }) => min.y));
  const right = Math.max(...boxes.map(({ max }) => max.x));
  const top = Math.max(...boxes.map(({ max }) => max.y));
  return { x, y, length: right - x, width: top - y };
}

/**
 * The saw for a cut of an odd piece: the true edge lies at the fence for the rip, as long as more of it lies there than
 * between fence and blade; along the sled for what is square to it. Once the left end is square, the stop block or the
 * fence may lie there too. What is too large for one person or for the table saw is for the track.
 *
 * Source: common practice, no source.
 */
function firstWay(
  beyond: Beyond,
  isSquare: boolean,
  { min, max }: Extents,
  { length, width }: Board,
  sawing: Sawing,
): Pick<SawCut, "saw" | "way" | "kerf" | "trouble"> {
  const { table, track, hold } = sawing;
  const piece = { length: max.x - min.x, width: max.y - min.y };
  const small = isLargeEnough(piece, hold) ? {} : ({ trouble: "small" } as const);
  const along = beyond === "top";
  const [size, beside, run] = along ? [width, length, piece.length] : [length, width, piece.width];
  const rips = (along || isSquare) && size <= table.reach && beside >= Math.max(size, hold.length);
  const crosses = (!along || isSquare) && run <= table.crossCut;
  const way = beyond === "left" ? "true edge" : rips ? "rip" : along && !crosses ? "rip" : "cross-cut";
  const byTable = beyond === "left" ? crosses : rips || crosses;
  if (track && run <= track.longest && (!byTable || isLarge(piece.length, piece.width, sawing)))
    return { saw: "track", way, kerf: track.kerf, ...small };
  return { saw: "table", way, kerf: table.kerf, ...(byTable ? small : { trouble: "reach" }) };
}
