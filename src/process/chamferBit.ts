import { tolerance } from "../geometry/tolerance.js";
import type { Cut } from "../model/part.js";
import type { Shop } from "../model/shop.js";
import { cutOf } from "../shop/lookups.js";
import { bitsOf, isLongEnough, type NamedBit } from "./bits.js";

type Edge = Extract<Cut, { kind: "edge" }>;

/** Cones this near in angle count as the same: rad (half a degree), common practice, no source. */
const sameSlope = 0.0087;

/**
 * The bit for a chamfer: a cone of its slope that reaches as far in. At the machine the board is still whole beside the
 * edge, where a bearing has no room; by hand a bearing is what guides it, and comes first.
 */
export function chamferBit(shop: Shop, cut: Edge, by: "cnc" | "hand"): NamedBit | undefined {
  const fits = bitsOf(shop, ["chamfer", "v"]).filter((bit) => reaches(bit, cut) && slopes(bit, cut));
  const [guided, free] = [fits.filter(hasBearing), fits.filter((bit) => !hasBearing(bit))];
  return by === "cnc" ? free[0] : (guided[0] ?? free[0]);
}

const hasBearing = ({ bit }: NamedBit): boolean => bit.bearing !== undefined;

/** A cone reaches in from the edge by no more than half its diameter, less its bearing's. */
const reaches = (named: NamedBit, { width, depth }: Edge): boolean =>
  (cutOf(named.bit) - (named.bit.bearing ?? 0)) / 2 >= width - tolerance.samePoint && isLongEnough(named, depth);

/** A bit whose angle nobody wrote down is taken at its word. */
const slopes = ({ bit }: NamedBit, { width, depth }: Edge): boolean =>
  bit.angle === undefined || Math.abs(Math.atan2(width, depth) - bit.angle / 2) <= sameSlope;
