/**
 * A round body that narrows evenly from one end to the other; a cylinder where both ends are the same.
 *
 * Units:   diameters and length mm; result L.
 * Source:  V = pi h / 3 (R2 + R r + r2), Heron of Alexandria, Metrica, book II; any handbook of mensuration.
 */
export function frustumL(oneEnd: number, otherEnd: number, length: number): number {
  const [R, r] = [oneEnd / 2, otherEnd / 2];
  return (Math.PI * length * (R * R + R * r + r * r)) / 3 / 1e6;
}
