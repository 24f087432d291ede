import { type Finding, type FindingDef, raise, text } from "../input/finding.js";
import type { PartProcess } from "../model/build.js";
import { featureName } from "../model/ids.js";
import type { Part } from "../model/part.js";
import type { Shop } from "../model/shop.js";
import { nameOf } from "../plan/standing.js";
import { rowOf } from "../shop/lookups.js";

export const bitOverRpm: FindingDef = {
  code: "bit-over-rpm",
  severity: "error",
  words:
    "{bit} may turn {most} a minute at most; the machine's spindle turns {least} at least: it cannot cut {feature} of {part}",
  next: "use another bit for it, or correct most rpm of the bit or the machine's least rpm in the shop file",
  explain:
    "The limit that is marked on a bit always comes first: a bit that turns faster may throw its edges. A spindle that " +
    "cannot turn so slowly must not be given that bit.",
};

/** Findings for features that the machine would cut with a bit that must not turn as fast as it turns at least. */
export function overRpm(shop: Shop, part: Part, { work }: PartProcess): readonly Finding[] {
  const least = shop.cnc?.rpm.least ?? 0;
  return work.flatMap(({ by, feature, tool }) => {
    const most = rowOf(shop.bits, tool ?? "")?.["most rpm"];
    if (by !== "cnc" || tool === undefined || most === undefined || most >= least) return [];
    const at = part.features.find(({ id }) => id === feature)?.from ?? part.from;
    const facts = {
      bit: text(tool),
      most: text(`${most}`),
      least: text(`${least}`),
      feature: text(featureName(feature)),
      part: text(nameOf(part)),
    };
    return [raise(bitOverRpm, { at, on: [part.id, feature], facts })];
  });
}
