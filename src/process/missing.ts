import { type Finding, type FindingDef, mm, raise, text } from "../input/finding.js";
import type { FeatureWork } from "../model/build.js";
import { featureName } from "../model/ids.js";
import type { Feature, Part } from "../model/part.js";
import type { Shop } from "../model/shop.js";
import { nameOf } from "../plan/standing.js";
import { cutOf } from "../shop/lookups.js";
import { bitsOf, isWithin, routerBits } from "./bits.js";

const explain =
  "The tool for each feature is taken from the bits in the shop file: a drill of a hole's own diameter or a straight bit " +
  "that is thinner, a straight bit no wider than a groove, a bit of the right form for an edge. Each must be long enough " +
  "for the depth.";

export const noBitFits: FindingDef = {
  code: "no-bit-fits",
  severity: "error",
  words: "no bit on hand makes {feature} of {part} at the machine: it needs {needs}",
  next: "add such a bit to the shop file, or change the feature to suit a bit that is there",
  explain,
};

export const toolToBuy: FindingDef = {
  ...noBitFits,
  code: "tool-to-buy",
  severity: "warning",
  words: "no bit on hand makes {feature} of {part} by hand: it needs {needs}",
  next: "buy one and add it to the shop file, or change the feature to suit a bit that is there",
};

export const bitTooShort: FindingDef = {
  code: "bit-too-short",
  severity: "error",
  words:
    "{bit} is too short to cut {feature} of {part} through: its edges are {length} long, the board is {thickness} thick",
  next: "add a longer bit of at most {widest} diameter, or give the inside corners a larger radius so that a wider bit fits",
  explain:
    "A bit whose cutting edges are shorter than the board is thick rubs with its shank, burns the edge and may break. " +
    "Thin bits are short ones: a small inside corner in thick board asks for a bit that few workshops have.",
};

/** The finding for a feature without a tool: an error only where a machine would be told to cut it. */
export function missingTool(part: Part, feature: Feature, by: FeatureWork["by"], needs: string): Finding {
  return raise(by === "cnc" ? noBitFits : toolToBuy, {
    at: feature.from,
    on: [part.id, feature.id],
    facts: { part: text(nameOf(part)), feature: text(featureName(feature.id)), needs: text(needs) },
  });
}

/** The finding for a cut through the board for which every bit that reaches its corners is too short. */
export function tooShort(shop: Shop, part: Part, feature: Feature, widest: number): Finding | undefined {
  const reaching = bitsOf(shop, routerBits).filter((bit) => isWithin(bit, widest));
  const [longest] = reaching.sort((a, b) => (b.bit["cutting length"] ?? 0) - (a.bit["cutting length"] ?? 0));
  if (!longest) return undefined;
  return raise(bitTooShort, {
    at: feature.from,
    on: [part.id, feature.id],
    facts: {
      part: text(nameOf(part)),
      feature: text(featureName(feature.id)),
      bit: text(longest.name),
      length: mm(longest.bit["cutting length"] ?? 0),
      thickness: mm(part.thickness),
      widest: mm(Math.min(widest, cutOf(reaching.at(0)!.bit))),
    },
  });
}
