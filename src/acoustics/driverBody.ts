import { frustumL } from "./frustum.js";

/** What a data sheet tells of the part of a driver that hangs in the box, mm. `depth`: from under the frame to the back. */
export type DriverBody = {
  readonly cutOut: number;
  readonly depth: number;
  /** Diameter of the magnet. */
  readonly magnet: number;
  /** How much of the depth the magnet takes; without it the basket narrows all the way to the back. */
  readonly magnetDepth?: number;
};

/**
 * What a driver takes from the air of a box, for a data sheet that does not say: the basket as a frustum from cut-out to
 * magnet, the magnet as a cylinder behind it. The air before the cone belongs to the room, so the basket counts as full.
 *
 * Units:   mm; result L. `inBoard`: how deep the driver stands in its cut-out before the box's air begins.
 * Returns: a little more than a real basket takes, whose windows are open; none where all of it is in the board.
 * Source:  two frustums, common practice, no source; the volume of each as in `frustumL`.
 */
export function driverBodyL({ cutOut, depth, magnet, magnetDepth = 0 }: DriverBody, inBoard = 0): number {
  const basket = Math.max(depth - magnetDepth, 0);
  const hidden = Math.min(inBoard, basket);
  const widest = basket === 0 ? magnet : cutOut + ((magnet - cutOut) * hidden) / basket;
  const cylinder = Math.max(depth - Math.max(basket, inBoard), 0);
  return frustumL(widest, magnet, basket - hidden) + frustumL(magnet, magnet, cylinder);
}
