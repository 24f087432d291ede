import { intersection } from "../geometry/boolean.js";
import { areaOfRegion } from "../geometry/measure.js";
import type { Region } from "../geometry/profile.js";
import { type Show, showQuantity } from "../input/show.js";
import type { Job } from "../model/job.js";
import type { Part } from "../model/part.js";
import type { Shop } from "../model/shop.js";

/** Mass of the bare part by area, thickness and the stock's density, less pockets; undefined where no stock matches. */
export function massKg(part: Part, job: Job, shop: Shop): number | undefined {
  const stock = shop.boards[job.boards[part.board]?.stock ?? ""];
  if (stock === undefined) return undefined;
  // A pocket may reach over an opening, as a ring's recess does: only what is board there is taken.
  const pockets = part.features.reduce(
    (sum, { cut }) => (cut.kind === "pocket" ? sum + areaOf(intersection(part.profile, cut.region)) * cut.depth : sum),
    0,
  );
  return (areaOfRegion(part.profile) * part.thickness - pockets) * 1e-9 * stock.density;
}

function areaOf(regions: readonly Region[]): number {
  return regions.reduce((sum, region) => sum + areaOfRegion(region), 0);
}

/** "2.4 kg", to the nearest 0.1; in an inch job pounds, with kilograms in brackets. */
export function massWords(kg: number, show: Show): string {
  const metric = kg < 0.05 ? "under 0.1 kg" : showQuantity({ unit: "kg", value: kg }, { unit: "mm" });
  return show.unit === "mm" ? metric : `${showQuantity({ unit: "kg", value: kg }, show)} [${metric}]`;
}
