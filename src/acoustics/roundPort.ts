import { type Flare, flareL } from "./flare.js";
import { frustumL } from "./frustum.js";

/**
 * A round port by what one can measure on its outside, mm. `length`: of what lies inside the box, along the centre line
 * (`centreLineLength` where it bends), flares included.
 */
export type RoundPort = {
  readonly outside: number;
  readonly length: number;
  /** The ends that are widened, as far as inside the box: none, one or both; together no longer than the port. */
  readonly flares: readonly Flare[];
};

/**
 * What a round port takes from the air of a box: its outside, tube and air together, since the air in a port moves with
 * the port and is no part of the box's spring.
 *
 * Units:   mm; result L.
 * Source:  outside volume, common practice, no source; cylinder by `frustumL`, flares by `flareL`.
 */
export function roundPortL({ outside, length, flares }: RoundPort): number {
  const straight = flares.reduce((left, flare) => left - Math.max(0, flare.length - (flare.hidden ?? 0)), length);
  return flares.reduce((sum, flare) => sum + flareL(outside, flare), frustumL(outside, outside, straight));
}
