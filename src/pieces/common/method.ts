import type { Around } from "../../model/piece.js";
import type { Method } from "../../model/shop.js";

/** How a piece is cut: as it says itself, else the job, else the shop. */
export function methodOf(spec: { readonly "cut by"?: Method | undefined }, { job, shop }: Around): Method {
  return spec["cut by"] ?? job["cut by"] ?? shop["cut by"];
}

/** The step to which sizes set by hand snap, mm; none for the CNC, whose sizes stay exact. */
export function stepOf(spec: { readonly "cut by"?: Method | undefined }, around: Around): number | undefined {
  const method = methodOf(spec, around);
  if (method === "cnc") return undefined;
  return method === "saw" ? around.shop.saw.step : around.shop.router.step;
}

/** The nearest whole step; the size itself where there is none. */
export function snap(size: number, step: number | undefined): number {
  return step === undefined ? size : Math.round(size / step) * step;
}

/** Up to the next whole step; a hair over a step, from the arithmetic, is that step. The size itself where there is none. */
export function upToStep(size: number, step: number | undefined): number {
  return step === undefined ? size : Math.ceil(size / step - 1e-6) * step;
}

/** Down to the whole step before it; a hair under a step, from the arithmetic, is that step. The size itself where there is none. */
export function downToStep(size: number, step: number | undefined): number {
  return step === undefined ? size : Math.floor(size / step + 1e-6) * step;
}
