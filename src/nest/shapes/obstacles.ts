import { offsetProfile } from "../../geometry/offset.js";
import type { Profile } from "../../geometry/profile.js";
import { rectangle } from "../../geometry/shapes.js";
import type { NestStock } from "../engine.js";
import { grownLoops } from "./grown.js";
import type { Loop } from "./loops.js";

/** How far an offcut's frame reaches beyond its extents, mm. */
const frame = 20;

/**
 * What parts must not cover on a sheet, from its corner, mm: its zones, kept a gap away, and all round the outline of an
 * odd offcut, kept its trim away. Parts are grown by `half` a gap themselves.
 */
export function obstaclesOf(row: NestStock, half: number): Loop[][] {
  const zones = (row.zones ?? []).map((zone) => grownLoops({ outer: zone, holes: [] }, half));
  return row.outline === undefined ? zones : [...framesOf(row, row.outline, half), ...zones];
}

/** Everything about the outline; two halves would leave a seam, so one ring. Where nothing is left, the whole sheet. */
function framesOf(row: NestStock, outline: Profile, half: number): Loop[][] {
  const by = half - row.trim;
  const clear = by === 0 ? [outline] : offsetProfile(outline, by);
  const outer = rectangle(-frame, -frame, row.length + frame, row.width + frame, "frame");
  return [grownLoops({ outer, holes: clear }, 0)];
}
