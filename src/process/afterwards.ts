import type { FeatureWork } from "../model/build.js";
import type { Part } from "../model/part.js";
import type { Shop } from "../model/shop.js";
import { bitsOf, isLongEnough } from "./bits.js";

/** What is done to a part's outline once it is cut: bevels at the saw, and edges trimmed flush to what it is glued to. */
export function afterwards(shop: Shop, part: Part): readonly FeatureWork[] {
  const outline = part.features.find(({ cut }) => cut.kind === "outline");
  if (outline === undefined) return [];
  const edges = Object.entries(part.edges);
  const bevelled = edges.filter(([, edge]) => edge.bevel !== 0).map(([name]) => name);
  const flush = edges.filter(([, edge]) => edge.flush > 0).map(([name]) => name);
  const tool = bitsOf(shop, ["flush trim"]).find((bit) => isLongEnough(bit, part.thickness))?.name;
  return [
    ...(bevelled.length > 0
      ? [{ feature: outline.id, by: "saw", why: `bevel along ${bevelled.join(", ")}` } as const]
      : []),
    ...(flush.length > 0
      ? [
          {
            feature: outline.id,
            by: "hand",
            ...(tool && { tool }),
            why: `trimmed flush along ${flush.join(", ")}`,
          } as const,
        ]
      : []),
  ];
}
