import type { Finding } from "../input/finding.js";
import type { FeatureWork } from "../model/build.js";
import type { Feature, Part } from "../model/part.js";
import type { Method, Shop } from "../model/shop.js";
import { afterwards } from "./afterwards.js";
import { type NamedBit, routerBit } from "./bits.js";
import { missingTool, tooShort } from "./missing.js";
import { otherTool } from "./otherTool.js";
import { reachOf } from "./reach.js";
import { type How, type Place, placeOf } from "./work.js";

/** Who cuts each feature, and with what. `through`: the bits that go through the board at the machine or by hand. */
export type Works = {
  readonly work: readonly FeatureWork[];
  readonly through: readonly string[];
  readonly findings: readonly Finding[];
};

/** Wider bits waste board and load a light machine: mm (1/2 in), common practice, no source. */
export const widestThrough = 12.7;

/** The widest bit on hand that gets into every corner of what is cut through in a part, and is long enough. */
export function widestBitFor(shop: Shop, part: Part, method: Method): NamedBit | undefined {
  const reaches = routedOf(part, method).map((feature) => reachOf(shop, part, feature).widest);
  return routerBit(shop, Math.min(widestThrough, ...reaches), part.thickness);
}

/**
 * Where each feature of a part is cut, and with what, with as few changes of tool as may be: one bit goes round all that
 * is cut through, the widest that is no wider than `widest`, mm, and long enough for the board; what it can also do, it
 * does.
 */
export function worksOf(shop: Shop, part: Part, how: How, widest: number): Works {
  const all = routerBit(shop, widest, part.thickness) ?? widestBitFor(shop, part, how.method);
  const made = part.features.map((feature): Made => {
    const place = placeOf(shop, feature, how);
    if (place.by === "saw") return { feature, place, name: undefined, findings: [] };
    return isThroughCut(feature) ? cutThrough(shop, part, feature, place, all) : other(shop, part, feature, place, all);
  });
  const through = made.flatMap(({ feature, name }) => (isThroughCut(feature) && name !== undefined ? [name] : []));
  return {
    work: [...made.map(workOf), ...afterwards(shop, part)],
    through: [...new Set(through)],
    findings: made.flatMap((each) => each.findings),
  };
}

const routedOf = (part: Part, method: Method): readonly Feature[] =>
  part.features.filter((feature) => isThroughCut(feature) && !(method === "saw" && feature.cut.kind === "outline"));

const isThroughCut = ({ cut }: Feature) => cut.kind === "outline" || cut.kind === "notch" || cut.kind === "opening";

type Made = {
  readonly feature: Feature;
  readonly place: Place;
  readonly name: string | undefined;
  readonly findings: readonly Finding[];
};

const workOf = ({ feature, place, name }: Made): FeatureWork => ({
  feature: feature.id,
  by: place.by,
  ...(place.setup === undefined ? {} : { setup: place.setup }),
  ...(name === undefined ? {} : { tool: name }),
  why: place.why,
});

function cutThrough(shop: Shop, part: Part, feature: Feature, place: Place, all: NamedBit | undefined): Made {
  const { widest, findings } = reachOf(shop, part, feature);
  const bit = all ?? routerBit(shop, Math.min(widestThrough, widest), part.thickness);
  if (bit) return { feature, place, name: bit.name, findings };
  const short = tooShort(shop, part, feature, widest);
  return { feature, place, name: undefined, findings: short ? [...findings, short] : findings };
}

function other(shop: Shop, part: Part, feature: Feature, place: Place, all: NamedBit | undefined): Made {
  const { name, needs, findings = [] } = otherTool(shop, part, feature, place.by, all);
  const missing = needs === undefined ? [] : [missingTool(part, feature, place.by, needs)];
  return { feature, place, name, findings: [...findings, ...missing] };
}
