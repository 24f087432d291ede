import { extentsOf } from "../geometry/measure.js";
import type { Region } from "../geometry/profile.js";
import type { Finding } from "../input/finding.js";
import type { Feature, Part } from "../model/part.js";
import type { Shop } from "../model/shop.js";
import { smallestBit } from "../shop/lookups.js";
import { isWithin, routerBits } from "./bits.js";
import { cornersOf, tightCorners } from "./corners.js";

/** The widest bit, mm, that gets into every corner of a feature and between its sides; findings for corners none does. */
export type Reach = { readonly widest: number; readonly findings: readonly Finding[] };

/** A corner that no bit on hand reaches has its finding and does not decide which bit cuts the rest. */
export function reachOf(shop: Shop, part: Part, feature: Feature): Reach {
  const corners = cornersOf(part, feature);
  const smallest = smallestBit(shop, routerBits);
  const reached = corners.filter((corner) => smallest && isWithin(smallest, 2 * corner.radius));
  const { cut } = feature;
  const between = cut.kind === "opening" || cut.kind === "pocket" ? narrowest(cut.region) : Number.POSITIVE_INFINITY;
  return {
    widest: Math.min(between, ...reached.map((corner) => 2 * corner.radius)),
    findings: tightCorners(shop, part, feature, corners),
  };
}

function narrowest(region: Region): number {
  const { min, max } = extentsOf(region);
  return Math.min(max.x - min.x, max.y - min.y);
}
