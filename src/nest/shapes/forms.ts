import { coarseLoop } from "./coarse.js";
import { boxOfLoops, type Loop } from "./loops.js";
import type { Fields } from "./overlap.js";
import { type Shape, shapeOf } from "./shape.js";

/** All turns of all forms, and the fields of their pairs, which are made when first asked for. */
export function shapesOf(
  forms: readonly { readonly loops: readonly Loop[]; readonly turns: readonly number[] }[],
  hair: number,
): { readonly turns: readonly (readonly Shape[])[]; readonly fields: Fields } {
  let number = 0;
  const turns = forms.map(({ loops, turns }, form) => turns.map((turn) => shapeOf(form, number++, loops, turn, hair)));
  const coarse = forms.map(({ loops }) => loops.map((loop) => coarseLoop(loop, fieldChord * sizeOf(loops))));
  const shapeAt = (form: number, turn: number) => shapeOf(form, -1, coarse[form]!, turn, hair);
  return { turns, fields: { made: new Map(), shapeAt, steps: fieldSteps } };
}

/** Points of a field along its side: finer fields guide better, but cost more to make and to keep near the processor. */
const fieldSteps = 48;

/** What arcs may lose in a field, as a share of the shape's size: far less than a field's step. */
const fieldChord = 0.002;

function sizeOf(loops: readonly Loop[]): number {
  const { x0, x1, y0, y1 } = boxOfLoops(loops);
  return Math.min(x1 - x0, y1 - y0);
}
