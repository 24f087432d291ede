import type { Finding } from "../input/finding.js";
import { featureName } from "../model/ids.js";
import type { Feature, Part } from "../model/part.js";
import type { Method, Shop } from "../model/shop.js";
import { type NamedBit, routerBit } from "./bits.js";
import { missingTool, tooShort } from "./missing.js";
import { otherTool } from "./otherTool.js";
import { reachOf } from "./reach.js";

/** What cuts each feature, by the feature's name. `through`: the bits that go through the board. */
export type Tools = {
  readonly tool: Readonly<Record<string, string>>;
  readonly through: readonly string[];
  readonly findings: readonly Finding[];
};

/** Wider bits waste board and load a light machine: mm (1/2 in), common practice, no source. */
const widestThrough = 12.7;

/** The widest bit on hand that gets into every corner of what is cut through in a part, and is long enough. */
export function widestBitFor(shop: Shop, part: Part, method: Method): NamedBit | undefined {
  const reaches = routedOf(part, method).map((feature) => reachOf(shop, part, feature).widest);
  return routerBit(shop, Math.min(widestThrough, ...reaches), part.thickness);
}

/**
 * The tool for each feature of a part, with as few changes as may be: one bit goes round all that is cut through, the
 * widest that is no wider than `widest`, mm, and long enough for the board; what it can also do, it does.
 */
export function toolsOf(shop: Shop, part: Part, method: Method, widest: number): Tools {
  const routed = routedOf(part, method);
  const all = routerBit(shop, widest, part.thickness) ?? widestBitFor(shop, part, method);
  const made = [
    ...part.features
      .filter((feature) => isSawn(feature, method))
      .map((feature) => ({ feature, name: "saw", findings: [] })),
    ...routed.map((feature) => cutThrough(shop, part, feature, all)),
    ...part.features
      .filter((feature) => !isThroughCut(feature))
      .map((feature) => other(shop, part, feature, method, all)),
  ];
  const names = Object.fromEntries(
    made.flatMap(({ feature, name }) => (name === undefined ? [] : [[featureName(feature.id), name] as const])),
  );
  return {
    tool: names,
    through: [...new Set(routed.flatMap((feature) => names[featureName(feature.id)] ?? []))],
    findings: made.flatMap((each) => each.findings),
  };
}

const routedOf = (part: Part, method: Method): readonly Feature[] =>
  part.features.filter((feature) => isThroughCut(feature) && !isSawn(feature, method));

const isThroughCut = ({ cut }: Feature) => cut.kind === "outline" || cut.kind === "notch" || cut.kind === "opening";

const isSawn = ({ cut }: Feature, method: Method) => method === "saw" && cut.kind === "outline";

type Made = { readonly feature: Feature; readonly name: string | undefined; readonly findings: readonly Finding[] };

function cutThrough(shop: Shop, part: Part, feature: Feature, all: NamedBit | undefined): Made {
  const { widest, findings } = reachOf(shop, part, feature);
  const bit = all ?? routerBit(shop, Math.min(widestThrough, widest), part.thickness);
  if (bit) return { feature, name: bit.name, findings };
  const short = tooShort(shop, part, feature, widest);
  return { feature, name: undefined, findings: short ? [...findings, short] : findings };
}

function other(shop: Shop, part: Part, feature: Feature, method: Method, all: NamedBit | undefined): Made {
  const { name, needs, findings = [] } = otherTool(shop, part, feature, method, all);
  return {
    feature,
    name,
    findings: needs === undefined ? findings : [...findings, missingTool(part, feature, method, needs)],
  };
}
