import { type Show, showQuantity } from "../input/show.js";
import type { Build } from "../model/build.js";
import type { Method, Shop } from "../model/shop.js";

/**
 * A size of a part as it is read at the bench, with its unit. What is set by hand at a saw or router is shown in the unit of that
 * tool's step, whatever the job shows, for it was snapped to that step; what a machine cuts, as the job shows.
 */
export function sizeShown(mm: number, method: Method | undefined, { job, shop }: Build): string {
  return showQuantity({ unit: "mm", value: mm }, showOfStep(stepOf(method, shop)) ?? job.show);
}

function stepOf(method: Method | undefined, shop: Shop): number | undefined {
  return method === "saw" ? shop.saw.step : method === "hand" ? shop.router.step : undefined;
}

const denominators = [8, 16, 32, 64] as const;

/** How sizes set in such steps are read: in the coarsest fraction of an inch that holds the step, else in mm. */
function showOfStep(step: number | undefined): Show | undefined {
  if (step === undefined || step === 0) return undefined;
  const denominator = denominators.find((parts) => isWhole((step / 25.4) * parts));
  return denominator === undefined ? { unit: "mm" } : { unit: "in", denominator };
}

function isWhole(value: number): boolean {
  return Math.round(value) > 0 && Math.abs(value - Math.round(value)) < 1e-6;
}
