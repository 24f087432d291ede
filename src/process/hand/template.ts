import { insideCorners } from "../../geometry/insideCorners.js";
import { extentsOf, isCircle } from "../../geometry/measure.js";
import { offsetProfile } from "../../geometry/offset.js";
import type { Profile } from "../../geometry/profile.js";
import { circle, rectangle } from "../../geometry/shapes.js";
import { tolerance } from "../../geometry/tolerance.js";
import type { HandSide, Template } from "../../model/hand.js";
import { isRectangle } from "../method.js";
import type { Guide } from "./guides.js";

/** A line to be cut, and the radii of its corners as the cutter and as the template's bush find them, mm. */
export type Line = {
  readonly loop: Profile;
  readonly side: HandSide;
  /** Where a bit must turn into a corner. */
  readonly hollow: readonly number[];
  /** Where the work juts out. */
  readonly jutting: readonly number[];
};

export function lineOf(loop: Profile, side: HandSide): Line {
  const [ofSolid, ofHole] = [cornersAround(loop), cornersWithin(loop)];
  const [hollow, jutting] = side === "outside" ? [ofSolid, ofHole] : [ofHole, ofSolid];
  return { loop, side, hollow, jutting };
}

/** Corners that lie hollow for a bit outside the loop. */
const cornersAround = (loop: Profile) => insideCorners({ outer: loop, holes: [] }).map(({ radius }) => radius);

/** Corners that lie hollow for a bit inside the loop. */
function cornersWithin(loop: Profile): readonly number[] {
  const { min, max } = extentsOf(loop);
  const around = rectangle(min.x - 1, min.y - 1, max.x + 1, max.y + 1, "around");
  return insideCorners({ outer: around, holes: [loop] }).map(({ radius }) => radius);
}

/**
 * The template for a line and a guide: the line moved away from the cutter's side by the guide's offset. An inside
 * corner grows by the offset, so that it takes the bush wherever it takes the bit; an outside corner shrinks by it, and
 * one that is tighter than the offset comes out with the offset for its radius, as the bush rolls round the point.
 */
export function templateFor(line: Line, { bush, bit, offset, thick }: Guide): Template {
  const outline = templateOutline(line, offset);
  const box = outline && extentsOf(outline);
  const tightest = line.hollow.length > 0 ? Math.min(...line.hollow) + offset : undefined;
  return {
    ...(bush === undefined ? {} : { bush }),
    bit: bit.name,
    offset,
    ...(box && { size: [box.max.x - box.min.x, box.max.y - box.min.y] as const }),
    ...(tightest === undefined ? {} : { corner: tightest }),
    rounded: line.jutting.filter((radius) => radius < offset - tolerance.samePoint).length,
    thick,
    ...(outline && { outline }),
  };
}

/** The line moved; undefined where it falls apart or vanishes, as a narrow neck does. */
function templateOutline({ loop, side }: Line, offset: number): Profile | undefined {
  const by = side === "outside" ? -offset : offset;
  if (by === 0) return loop;
  const round = isCircle(loop);
  if (round) return round.radius + by > 0 ? circle(round.center, round.radius + by, loop[0]?.by ?? "") : undefined;
  if (by < 0 && isRectangle(loop)) return smallerRectangle(loop, -by);
  const moved = offsetProfile(loop, by);
  return moved.length === 1 ? moved[0] : undefined;
}

function smallerRectangle(loop: Profile, by: number): Profile | undefined {
  const { min, max } = extentsOf(loop);
  if (Math.min(max.x - min.x, max.y - min.y) <= 2 * by) return undefined;
  return rectangle(min.x + by, min.y + by, max.x - by, max.y - by, loop[0]?.by ?? "");
}
