import type { NestItem } from "../engine.js";
import { narrowestKerf, type Sawing } from "./sawing.js";

type Size = { readonly w: number; readonly h: number };

/**
 * What is sawn for an item that lies so: its extents, up to the fence's next step, as what is a hair too large can be
 * made smaller. What is routed to its line afterwards asks for more than a kerf between it and its neighbours, and has
 * half of that left on all round. mm.
 */
export function blankSize({ w, h }: Size, { gap }: Pick<NestItem, "gap">, sawing: Sawing): Size {
  const left = allowanceOf(gap, sawing);
  return { w: stepUp(w + 2 * left, sawing.step), h: stepUp(h + 2 * left, sawing.step) };
}

/** What is left on round an item, mm. */
export const allowanceOf = (gap: number, sawing: Sawing): number => Math.max(0, (gap - narrowestKerf(sawing)) / 2);

const stepUp = (size: number, step: number) => Math.ceil(size / step - 1e-6) * step;
