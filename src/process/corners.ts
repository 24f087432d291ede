import { type InsideCorner, insideCorners } from "../geometry/insideCorners.js";
import { extentsOf } from "../geometry/measure.js";
import type { Region } from "../geometry/profile.js";
import { rectangle } from "../geometry/shapes.js";
import { tolerance } from "../geometry/tolerance.js";
import { count, type Finding, type FindingDef, mm, raise, text } from "../input/finding.js";
import { featureName } from "../model/ids.js";
import type { Feature, Part } from "../model/part.js";
import type { Shop } from "../model/shop.js";
import { nameOf } from "../plan/standing.js";
import { cutOf, smallestBit } from "../shop/lookups.js";
import { routerBits } from "./bits.js";

const explain =
  "A router bit is round: it leaves an inside corner with its own radius at least. A corner that nothing seats in can " +
  "simply take that radius; where something square seats in it, it is relieved by a small hole at the corner.";

export const cornerTooTight: FindingDef = {
  code: "corner-too-tight",
  severity: "error",
  words:
    "inside corners of {feature} in {part} that are too tight: {corners}, the tightest with radius {radius} at x {x}, y {y}; " +
    "the smallest bit on hand, {bit}, leaves {least}",
  next: "give the corners a radius of {least} or more, let them be relieved, or add a smaller bit to the shop file",
  explain,
};

export const cornerLeftToBench: FindingDef = {
  ...cornerTooTight,
  code: "corner-left-to-bench",
  severity: "warning",
  next: "square them with a file or chisel at the bench, or give them a radius of {least} or more",
};

/** The corners a bit must get into to cut a feature right round, each with its radius, mm; 0 is sharp. */
export function cornersOf(part: Part, feature: Feature): readonly InsideCorner[] {
  const { cut } = feature;
  if (cut.kind === "pocket") return cornersInside(cut.region);
  if (cut.kind !== "outline" && cut.kind !== "notch" && cut.kind !== "opening") return [];
  return insideCorners(part.profile).filter((corner) => makerOf(part, corner) === feature);
}

/** A pocket's corners are those of the board around it. */
function cornersInside(pocket: Region): readonly InsideCorner[] {
  const { min, max } = extentsOf(pocket);
  const outer = rectangle(min.x - 1, min.y - 1, max.x + 1, max.y + 1, "board");
  return insideCorners({ outer, holes: [pocket.outer] });
}

/** The feature whose cut left a corner of the profile: that which names its edges, or else the outline. */
function makerOf(part: Part, corner: InsideCorner): Feature | undefined {
  const names = corner.by.split("|");
  const named = part.features.find(({ id, cut }) => {
    if (cut.kind !== "notch" && cut.kind !== "opening" && cut.kind !== "hole") return false;
    if (names.includes(featureName(id))) return true;
    return cut.kind !== "hole" && cut.region.outer.some((vertex) => names.includes(vertex.by));
  });
  return named ?? part.features.find(({ cut }) => cut.kind === "outline");
}

/** The finding for a feature some of whose corners no bit on hand reaches; it tells where the first of the tightest lies. */
export function tightCorners(
  shop: Shop,
  part: Part,
  feature: Feature,
  corners: readonly InsideCorner[],
): readonly Finding[] {
  const smallest = smallestBit(shop, routerBits);
  const least = smallest ? cutOf(smallest.bit) / 2 : 0;
  const tight = corners.filter((corner) => corner.radius < least - tolerance.samePoint);
  const [worst] = [...tight].sort((a, b) => a.radius - b.radius);
  if (!smallest || !worst) return [];
  const facts = {
    part: text(nameOf(part)),
    feature: text(featureName(feature.id)),
    corners: count(tight.length),
    radius: mm(worst.radius),
    x: mm(worst.at.x),
    y: mm(worst.at.y),
    bit: text(smallest.name),
    least: mm(least),
  };
  const def = feature.stage === "sheet" ? cornerTooTight : cornerLeftToBench;
  return [raise(def, { at: feature.from, on: [part.id, feature.id], facts })];
}
