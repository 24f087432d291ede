import { type Frame, place, type Vector } from "../../../geometry/frame.js";
import type { Shop } from "../../../model/shop.js";
import { screwRow, splitScrew } from "../../../shop/lookups.js";

/** What is known of a fastener by its name; mm. */
export type Fastener = {
  /** Outside of its thread. */
  readonly d?: number;
  readonly length?: number;
  /** Of a screw: what is drilled for its thread. */
  readonly pilot?: number;
};

/** Reads "4.0 x 50 screw", `#8 x 1 1/4"` or "M6 x 20 button black": size and length, then words that do not matter. */
export function fastenerOf(name: string, shop: Shop): Fastener {
  const sized = /^(.*?[x\u00d7][\d\s/.]+(?:mm\b|in\b|")?)/i.exec(name)?.[1];
  const split = sized === undefined ? undefined : splitScrew(sized);
  if (split === undefined) return {};
  const screw = screwRow(shop, split.row);
  if (screw !== undefined) return { d: screw.d, pilot: screw.pilot, length: split.length };
  const bolt = Object.values(shop.bolts).find(({ thread }) => thread === split.row);
  return { ...(bolt === undefined ? {} : { d: bolt.d }), length: split.length };
}

/** Where a fastener ends, in the frame that holds its ray. */
export function tipOf(ray: Frame, length: number): Vector {
  return place(ray, [0, 0, -length]);
}
