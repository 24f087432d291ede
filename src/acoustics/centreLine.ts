/** An elbow: the radius of its centre line, mm, and how far it turns, rad. */
export type Elbow = { readonly radius: number; readonly turn: number };

/**
 * Length of a port along its middle: straight stretches and the arcs of its elbows. A tube takes its section times this
 * length, however it bends, as long as no elbow is tighter than half of the tube.
 *
 * Units:   mm.
 * Source:  the second theorem of Pappus and Guldin (Pappus, Collection, book VII; Guldin, Centrobaryca, 1641).
 */
export function centreLineLength(straights: readonly number[], elbows: readonly Elbow[]): number {
  const straight = straights.reduce((sum, length) => sum + length, 0);
  return elbows.reduce((sum, { radius, turn }) => sum + radius * Math.abs(turn), straight);
}
