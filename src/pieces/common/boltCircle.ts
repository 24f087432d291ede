import makerjs from "makerjs";
import type { Point } from "../../geometry/profile.js";

/** Centres of holes evenly round a circle about the origin, the first at `start`, rad from the x axis, mm. */
export function boltCircle(diameter: number, holes: number, start: number): readonly Point[] {
  // makerjs takes the angle in degrees.
  const model = new makerjs.models.BoltCircle(diameter / 2, 1, holes, (start * 180) / Math.PI);
  return Object.values(model.paths ?? {}).map(({ origin }) => ({ x: origin![0]!, y: origin![1]! }));
}
