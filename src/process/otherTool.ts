import { tolerance } from "../geometry/tolerance.js";
import type { Finding } from "../input/finding.js";
import type { FeatureWork } from "../model/build.js";
import type { Cut, Feature, Part } from "../model/part.js";
import type { Shop } from "../model/shop.js";
import { cutOf } from "../shop/lookups.js";
import { bitsOf, isLongEnough, isWithin, type NamedBit, routerBit, routerBits } from "./bits.js";
import { chamferBit } from "./chamferBit.js";
import { reachOf } from "./reach.js";

/** A tool's name, or what it would have to be; neither where a hand needs none, as for a mark. */
export type Found = {
  readonly name?: string | undefined;
  readonly needs?: string;
  readonly findings?: readonly Finding[];
};

/** A drill within this of a hole's diameter makes it: mm, common practice, no source. */
const sameDrill = 0.1;

const isSame = (a: number, b: number): boolean => Math.abs(a - b) <= sameDrill + tolerance.samePoint;

/** The tool for what is not cut through the board all round. `inUse`: the bit that already goes round the part. */
export function otherTool(
  shop: Shop,
  part: Part,
  feature: Feature,
  by: FeatureWork["by"],
  inUse: NamedBit | undefined,
): Found {
  const { cut } = feature;
  switch (cut.kind) {
    case "hole":
      return holeTool(shop, part, feature, cut, inUse);
    case "groove":
      return named(
        routerBit(shop, cut.width, cut.depth),
        "a straight bit no wider than the groove and as long as it is deep",
      );
    case "pocket": {
      const { widest, findings } = reachOf(shop, part, feature);
      const bit = reuse(inUse, widest, cut.depth) ?? routerBit(shop, widest, cut.depth);
      return { ...named(bit, "a straight bit that goes into the pocket and is as long as it is deep"), findings };
    }
    case "edge":
      return edgeTool(shop, cut, by, inUse);
    case "mark":
      return by === "cnc" ? { name: bitsOf(shop, ["v"]).at(-1)?.name } : {};
    default:
      return {};
  }
}

const named = (bit: NamedBit | undefined, needs: string): Found => (bit ? { name: bit.name } : { needs });

const reuse = (bit: NamedBit | undefined, widest: number, depth: number): NamedBit | undefined =>
  bit && isWithin(bit, widest) && isLongEnough(bit, depth) ? bit : undefined;

/** A drill of its own diameter; on a face also a router bit that goes round in it. */
function holeTool(
  shop: Shop,
  part: Part,
  { side }: Feature,
  { d, depth }: Extract<Cut, { kind: "hole" }>,
  inUse: NamedBit | undefined,
): Found {
  const deep = depth === "through" ? part.thickness : depth;
  if (typeof side !== "string") return named(drillFor(shop, d, deep), "a drill of the hole's diameter");
  const bit = drillFor(shop, d, deep) ?? reuse(inUse, d, deep) ?? routerBit(shop, d, deep);
  return named(bit, "a drill of the hole's diameter, or a thinner straight bit that is long enough");
}

/** The bit for a hole from above: a drill of its own diameter, or a router bit that goes round in it. mm. */
export const holeBit = (shop: Shop, d: number, deep: number): NamedBit | undefined =>
  drillFor(shop, d, deep) ?? routerBit(shop, d, deep);

function drillFor(shop: Shop, d: number, deep: number): NamedBit | undefined {
  const [drill] = bitsOf(shop, ["drill"])
    .filter(({ bit }) => isSame(cutOf(bit), d))
    .filter((bit) => isLongEnough(bit, deep))
    .sort((a, b) => Math.abs(cutOf(a.bit) - d) - Math.abs(cutOf(b.bit) - d));
  return drill;
}

/** A rebate by a straight bit, a chamfer by a cone, a round-over by the bit of its radius. */
function edgeTool(
  shop: Shop,
  cut: Extract<Cut, { kind: "edge" }>,
  by: FeatureWork["by"],
  inUse: NamedBit | undefined,
): Found {
  if (cut.form === "rebate") {
    const [widest] = bitsOf(shop, routerBits).filter((bit) => isLongEnough(bit, cut.depth));
    return named(
      reuse(inUse, Number.POSITIVE_INFINITY, cut.depth) ?? widest,
      "a straight bit as long as the rebate is deep",
    );
  }
  if (cut.form === "chamfer")
    return named(
      chamferBit(shop, cut, by === "cnc" ? "cnc" : "hand"),
      "a chamfer or v bit of its angle that reaches as far in",
    );
  const bit = bitsOf(shop, ["round-over"]).find((each) => isSame(cutOf(each.bit) / 2, cut.width));
  return named(bit, "a round-over bit of that radius");
}
