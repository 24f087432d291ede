import { isCircle } from "../../geometry/measure.js";
import type { Point } from "../../geometry/profile.js";
import { samePoint } from "../../geometry/tolerance.js";
import type { CircleJig, HandSide, JigCut } from "../../model/hand.js";
import type { Part } from "../../model/part.js";
import type { Shop } from "../../model/shop.js";
import { cutOf } from "../../shop/lookups.js";
import { rules } from "../../shop/rules.js";
import { bitsOf, isLongEnough, type NamedBit } from "../bits.js";
import { widestThrough } from "../tools.js";
import { handPasses } from "./passes.js";
import type { Routed } from "./profiles.js";

type Circle = Routed & { readonly center: Point; readonly radius: number };

/** The inside is cut last: the pivot goes with it. */
const order: readonly HandSide[] = ["recess", "outside", "inside"];

/** The circles of a part that a jig can cut, those about one pivot together. */
export function circleJigs(shop: Shop, part: Part, routed: readonly Routed[]): readonly CircleJig[] {
  const circles = routed.flatMap((each): readonly Circle[] => {
    const round = isCircle(each.loop);
    return round && round.radius >= rules.jigRadius.value ? [{ ...each, ...round }] : [];
  });
  const pivots = circles.filter((one, i) => circles.findIndex(({ center }) => samePoint(center, one.center)) === i);
  return pivots.flatMap(({ center }) =>
    jigAt(
      shop,
      part,
      circles.filter((one) => samePoint(one.center, center)),
    ),
  );
}

function jigAt(shop: Shop, part: Part, circles: readonly Circle[]): readonly CircleJig[] {
  const deepest = Math.max(...circles.map(({ depth }) => depth));
  const bit = bitsOf(shop, ["straight"]).find((one) => cutOf(one.bit) <= widestThrough && isLongEnough(one, deepest));
  const [first] = circles;
  if (!bit || !first) return [];
  const inside = circles.find(({ side }) => side === "inside")?.radius ?? 0;
  const sorted = [...circles].sort((a, b) => order.indexOf(a.side) - order.indexOf(b.side) || b.radius - a.radius);
  return [
    {
      part: part.id,
      pivot: first.center,
      bit: bit.name,
      cuts: sorted.map((circle) => jigCut(shop, circle, bit, inside)),
      pivotStays: inside === 0,
    },
  ];
}

/**
 * From the pivot to the middle of the bit: R + d / 2 round a disc, R - d / 2 round a hole and along a recess's wall, by
 * the diameter that the bit really cuts. Follows from the circle's radius and the bit's.
 */
function jigCut(
  shop: Shop,
  { feature, side, radius, depth, through }: Circle,
  { bit }: NamedBit,
  inside: number,
): JigCut {
  const d = cutOf(bit);
  const wall = side === "outside" ? radius + d / 2 : radius - d / 2;
  return {
    feature: feature.id,
    side,
    radius,
    pivots: side === "recess" ? floorOf(wall, inside, d) : [wall],
    passes: handPasses(d, depth, shop.router.step),
    through,
    feed: side === "outside" ? "counter-clockwise" : "clockwise",
  };
}

/** Rings that clear a recess's floor, from the inside out, so that the wall is cut last; what is cut out later need not be cleared. */
function floorOf(wall: number, inside: number, d: number): readonly number[] {
  const nearest = inside > 0 ? inside + d / 2 - 1 : d / 2;
  const rings = Math.max(0, Math.ceil((wall - nearest) / (d * rules.besidePass.value) - 1e-9));
  const step = rings === 0 ? 0 : (wall - nearest) / rings;
  return Array.from({ length: rings + 1 }, (_, i) => wall - (rings - i) * step);
}
