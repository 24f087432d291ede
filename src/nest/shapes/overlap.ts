import { collide } from "./collide.js";
import { type Field, fieldAt, fieldOf } from "./field.js";
import type { Shape } from "./shape.js";

/** Fields of every pair of forms at every turn against each other, made when first asked for. */
export type Fields = {
  readonly made: Map<string, Field>;
  /** The shape of a form at any turn, for the making. */
  readonly shapeAt: (form: number, turn: number) => Shape;
  readonly steps: number;
};

/** The field that tells of two shapes, and in whose frame it is. */
export type Pair = { readonly field: Field; readonly swapped: boolean };

export function pairOf(fields: Fields, a: Shape, b: Shape): Pair {
  const swapped = a.form > b.form;
  const [first, second] = swapped ? [b, a] : [a, b];
  const turn = second.turn - first.turn;
  const key = `${first.form} ${second.form} ${(((turn / (2 * Math.PI)) % 1) + 1).toFixed(9).slice(1)}`;
  let field = fields.made.get(key);
  if (field === undefined) {
    field = fieldOf(fields.shapeAt(first.form, 0), fields.shapeAt(second.form, turn), fields.steps);
    fields.made.set(key, field);
  }
  return { field, swapped };
}

/**
 * How badly two shapes lie over each other: 0 where they do not collide, and falling smoothly as they are pulled apart.
 * The second lies `dx, dy` away from the first.
 *
 * Measure:  how far one must move to be clear of the other (penetration depth: Imamichi, Yagiura & Nagamochi 2009,
 *           Umetani et al. 2009). Large shapes weigh more.
 */
export function overlapOf(pair: Pair, a: Shape, b: Shape, dx: number, dy: number): number {
  const { field, swapped } = pair;
  const base = swapped ? b : a;
  const ex = swapped ? -dx : dx;
  const ey = swapped ? -dy : dy;
  const depth = fieldAt(field, base.cos * ex + base.sin * ey, base.cos * ey - base.sin * ex);
  const { doubt } = field;
  if (depth < -doubt) return 0;
  if (depth < doubt && !collide(a, b, dx, dy)) return 0;
  // below a tenth of the grid's step the field no longer knows; it must still fall
  const fade = 0.1 * doubt;
  return (depth >= fade ? depth : (fade * fade) / (2 * fade - depth)) * a.bulk * b.bulk;
}
