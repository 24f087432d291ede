import { extentsOf } from "../../geometry/measure.js";
import type { Profile } from "../../geometry/profile.js";
import type { PartProcess } from "../../model/build.js";
import type { HandProfile, HandSide, Template } from "../../model/hand.js";
import { featureName } from "../../model/ids.js";
import type { Feature, Part } from "../../model/part.js";
import type { Shop } from "../../model/shop.js";
import { cutOf, rowOf } from "../../shop/lookups.js";
import { rules } from "../../shop/rules.js";
import { isRectangle } from "../method.js";
import { reachOf } from "../reach.js";
import { widestThrough } from "../tools.js";
import { guidesFor } from "./guides.js";
import { handPasses } from "./passes.js";
import { lineOf, templateFor } from "./template.js";

/** A closed line that is routed by hand. */
export type Routed = {
  readonly feature: Feature;
  readonly side: HandSide;
  readonly loop: Profile;
  readonly depth: number;
  readonly through: boolean;
};

/** The closed lines of a part that the hand router cuts; a notch is part of the outline's line. */
export function routedByHand(part: Part, { work }: PartProcess): readonly Routed[] {
  const byHand = new Set(work.filter(({ by }) => by === "hand").map(({ feature }) => feature));
  const [first] = work.filter(({ feature }) => feature === part.features[0]?.id);
  return part.features.flatMap((feature): readonly Routed[] => {
    if (!byHand.has(feature.id)) return [];
    const { cut } = feature;
    const through = { feature, depth: part.thickness + rules.intoSpoilboard.value, through: true };
    // An outline that is only trimmed flush by hand was cut by something else.
    if (cut.kind === "outline")
      return first?.by === "hand" ? [{ ...through, side: "outside", loop: part.blank.outer }] : [];
    if (cut.kind === "opening") return openingsOf(part, feature).map((loop) => ({ ...through, side: "inside", loop }));
    if (cut.kind !== "pocket") return [];
    return [{ feature, side: "recess", loop: cut.region.outer, depth: cut.depth, through: false }];
  });
}

/** An opening as it is in the part, where others have not run into it. */
function openingsOf(part: Part, { id, cut }: Feature): readonly Profile[] {
  if (cut.kind !== "opening") return [];
  const names = new Set([featureName(id), ...cut.region.outer.map(({ by }) => by)]);
  return part.profile.holes.filter((hole) => hole.every(({ by }) => by.split("|").some((name) => names.has(name))));
}

/** What bushes and bits on hand can do along a line whose corners take bits up to `widest`, mm; the best first. */
export type Ways = (routed: Routed, widest: number) => readonly Template[];

/** Parts are often alike: for the same line the ways are worked out once. */
export function waysWith(shop: Shop): Ways {
  const known = new Map<string, readonly Template[]>();
  return ({ loop, side, depth, through }, widest) => {
    const key = JSON.stringify([loop, side, depth, through, widest]);
    const before = known.get(key);
    if (before) return before;
    const line = lineOf(loop, side);
    const ways = guidesFor(shop, widest, depth, through)
      .map((guide) => templateFor(line, guide))
      .sort(bestFirst(shop))
      .map(({ outline, ...way }, i) => (i === 0 && outline ? { ...way, outline } : way));
    known.set(key, ways);
    return ways;
  };
}

/** How a line is routed along a template. */
export function handProfile(shop: Shop, part: Part, routed: Routed, ways: Ways): HandProfile {
  const { feature, side, loop, depth, through } = routed;
  const { min, max } = extentsOf(loop);
  const templates = ways(routed, reachOf(shop, part, feature).widest);
  const bit = rowOf(shop.bits, templates.find(({ bush }) => bush !== undefined)?.bit ?? "");
  return {
    part: part.id,
    feature: feature.id,
    side,
    size: [max.x - min.x, max.y - min.y],
    depth,
    through,
    straight: side === "outside" && isRectangle(loop),
    passes: bit ? handPasses(cutOf(bit), depth, shop.router.step) : [],
    feed: side === "outside" ? "counter-clockwise" : "clockwise",
    allowance: through ? rules.roughAllowance.value : 0,
    templates,
  };
}

/** A template that there can be, that rounds nothing over; a wide bit, but none too wide for the router; a small offset. */
const bestFirst =
  (shop: Shop) =>
  (a: Template, b: Template): number => {
    const width = ({ bit }: Template) => cutOf(shop.bits[bit] ?? { kind: "straight", d: 0 });
    return (
      Number(a.size === undefined) - Number(b.size === undefined) ||
      a.rounded - b.rounded ||
      Number(width(a) > widestThrough) - Number(width(b) > widestThrough) ||
      width(b) - width(a) ||
      a.offset - b.offset
    );
  };
