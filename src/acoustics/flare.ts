/**
 * The widened end of a port, outside sizes in mm: the diameter at its mouth, and how much of the length widens. `hidden`:
 * how much of that, from the mouth, stands in a wall and takes nothing of the air.
 */
export type Flare = { readonly mouth: number; readonly length: number; readonly hidden?: number };

/**
 * What a flare takes by its outside: a quarter of an ellipse turned about the port's axis, along the tube where it begins
 * and square to it at the mouth. A quarter of a circle where it is as long as it widens.
 *
 * Units:   mm; result L. `tube`: outside diameter of the port, at most the mouth's.
 * Source:  own derivation. With mouth radius R, widening h and length f the radius at f u is R - h sqrt(1 - u2). Pi times
 *          its square, from the tube to f v, is pi f (R2 v - R h (v sqrt(1 - v2) + asin v) + h2 (v - v3 / 3)); for all of
 *          the flare, v = 1, that is pi f (R2 - pi R h / 2 + 2 h2 / 3).
 */
export function flareL(tube: number, { mouth, length, hidden = 0 }: Flare): number {
  const R = mouth / 2;
  const h = R - tube / 2;
  const v = Math.max(0, length - hidden) / length;
  const root = v * Math.sqrt(1 - v * v) + Math.asin(v);
  return (Math.PI * length * (R * R * v - R * h * root + h * h * (v - v ** 3 / 3))) / 1e6;
}

/** How wide a flare is where this share of it, from the tube, lies behind, mm. */
export function flareAcross(tube: number, mouth: number, share: number): number {
  return mouth - (mouth - tube) * Math.sqrt(Math.max(0, 1 - share * share));
}
