import type { Show } from "../input/show.js";
import type { Build } from "../model/build.js";
import type { Part } from "../model/part.js";
import type { Method, Shop } from "../model/shop.js";

/**
 * How the sizes of what is cut this way are read. What is set by hand at a saw or router is shown in the unit of that
 * tool's step, whatever the job shows, for it was snapped to that step; what a machine cuts, as the job shows.
 */
export function showFor(method: Method | undefined, { job, shop }: Pick<Build, "job" | "shop">): Show {
  return showOfStep(stepOf(method, shop)) ?? job.show;
}

/** The same for one part. */
export function showForPart(part: Part, build: Build): Show {
  return showFor(build.process.parts.find((each) => each.part === part.id)?.method, build);
}

/** The step of the tool that sizes are set at by hand, mm; none for a machine. */
export function stepOf(method: Method | undefined, shop: Shop): number | undefined {
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
