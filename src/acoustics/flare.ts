/** The widened end of a port, outside sizes in mm: the diameter at its mouth, and how much of the length widens. */
export type Flare = { readonly mouth: number; readonly length: number };

/**
 * What a flare takes by its outside: a quarter of an ellipse turned about the port's axis, along the tube where it begins
 * and square to it at the mouth. A quarter of a circle where it is as long as it widens.
 *
 * Units:   mm; result L. `tube`: outside diameter of the port, at most the mouth's.
 * Source:  own derivation. With mouth radius R, widening h and length f the radius at f u is R - h sqrt(1 - u2), and
 *          the integral of pi times its square is pi f (R2 - pi R h / 2 + 2 h2 / 3).
 */
export function flareL(tube: number, { mouth, length }: Flare): number {
  const R = mouth / 2;
  const h = R - tube / 2;
  return (Math.PI * length * (R * R - (Math.PI * R * h) / 2 + (2 * h * h) / 3)) / 1e6;
}
