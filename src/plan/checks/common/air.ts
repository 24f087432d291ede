import { deepPlace } from "../../../geometry/deepPlace.js";
import { compose, place, shifted, type Vector } from "../../../geometry/frame.js";
import { offsetProfile } from "../../../geometry/offset.js";
import type { Profile } from "../../../geometry/profile.js";
import { loadSolids, type SolidKernel, type SolidRef } from "../../../geometry/solids.js";
import { tolerance } from "../../../geometry/tolerance.js";
import type { Plan } from "../../../model/build.js";
import { onceFor } from "../../../model/once.js";
import type { Feature, Part } from "../../../model/part.js";
import type { Air, Gasket } from "../../../model/piece.js";
import { boardOf, isFilled, makersOf, wallOf } from "../../solids.js";
import { type Standing, standingParts } from "../../standing.js";

/** A chamber of air as the parts make it: its piece's parts, which of them are walls, and the holes nothing closes. */
export type Chamber = {
  readonly air: Air;
  /** A point of the air, vehicle frame. */
  readonly inside: Vector;
  readonly walls: readonly Standing[];
  /** The piece's other parts: blocks, braces. */
  readonly others: readonly Standing[];
  readonly leaks: readonly Leak[];
  /** Vehicle frame. */
  readonly gaskets: readonly Gasket[];
};

/** A hole through a wall with nothing in it. */
export type Leak = { readonly part: Part; readonly hole: Profile; readonly features: readonly Feature[] };

type Closing = { readonly open?: readonly Leak[]; readonly margin?: (wall: Standing) => number };

/** Every chamber whose walls are there and stand in the vehicle. */
export const chambersOf = onceFor((plan: Plan): readonly Chamber[] => {
  const standing = standingParts(plan);
  return plan.built.air.flatMap((air) => {
    const walls = standing.filter(({ part }) => air.walls.includes(part.id));
    const piece = walls[0]?.part.piece;
    const frame = plan.frames.find(([id]) => id === piece)?.[1];
    if (frame === undefined) return [];
    const others = standing.filter(({ part }) => part.piece === piece && !air.walls.includes(part.id));
    const gaskets = (air.gaskets ?? []).map((gasket) => ({ ...gasket, at: compose(frame, gasket.at) }));
    return [{ air, inside: place(frame, air.inside), walls, others, leaks: walls.flatMap(leaksOf), gaskets }];
  });
});

function leaksOf({ part }: Standing): readonly Leak[] {
  return part.profile.holes.flatMap((hole) => {
    const features = makersOf(part, hole);
    return features.length > 0 && features.every(isFilled) ? [] : [{ part, hole, features }];
  });
}

/**
 * The air that the parts close in, mm3; none where it is not closed. `open`: holes left as they are, every other is
 * taken as closed. `margin`: how far each wall is grown into its neighbours, mm.
 */
export function airIn(
  kernel: SolidKernel,
  chamber: Chamber,
  { open = [], margin = () => tolerance.seam }: Closing = {},
): number | undefined {
  return kernel.within(() => {
    const walls = chamber.walls.map((wall) => {
      const holes = open.filter(({ part }) => part === wall.part).map(({ hole }) => hole);
      return wallOf(kernel, wall, margin(wall), holes);
    });
    const gaskets = chamber.gaskets.map((gasket) => gasketOf(kernel, gasket));
    const shell = kernel.union([...walls, ...gaskets]);
    const room = hollowRound(kernel, kernel.components(shell), chamber.inside);
    // a hatch's cover lies outside, and what stands in another chamber is none of this one's
    const own = chamber.others.filter(
      (other) => room === undefined || placesIn(other).some((point) => kernel.contains(room, point)),
    );
    const boards = own.map((other) => boardOf(kernel, plugged(other)));
    return hollowIn(kernel, kernel.union([shell, ...boards]), chamber.inside);
  });
}

/**
 * Places in a board, or in one of its windows: one so little below its face that no bevel has taken it off, and one in
 * the middle of its thickness, for a board whose face is let into a wall.
 */
function placesIn({ part, at }: Standing): readonly Vector[] {
  const { x, y } = deepPlace(part.profile.outer);
  return [0.1, 0.5].map((share) => place(at, [x, y, -part.thickness * share]));
}

/** A board in the air with what is filled in it taken as board: a bolt's insert lets no air in, a brace's window does. */
function plugged(standing: Standing): Standing {
  const { part } = standing;
  const holes = part.profile.holes.filter((hole) => !makersOf(part, hole).every(isFilled));
  return { ...standing, part: { ...part, profile: { ...part.profile, holes } } };
}

/** A gasket grown a little into what clamps it and what stands round it. */
function gasketOf(kernel: SolidKernel, { region, thickness, at }: Gasket): SolidRef {
  const outer = offsetProfile(region.outer, tolerance.seam, { corners: "sharp" })[0] ?? region.outer;
  return kernel.extrude(
    { ...region, outer },
    thickness + 2 * tolerance.seam,
    compose(at, shifted(0, 0, tolerance.seam)),
  );
}

/** The air with every hole taken as closed. */
export const closedAirOf = onceFor(async (chamber: Chamber) => airIn(await loadSolids(), chamber));

/**
 * The hollow round a point. What stands free in it (a block in exact contact may count as free or as part of the wall)
 * is taken from it, so the measure is the same either way.
 */
function hollowIn(kernel: SolidKernel, shell: SolidRef, inside: Vector): number | undefined {
  const skins = kernel.components(shell);
  const hollow = hollowRound(kernel, skins, inside);
  if (hollow === undefined) return undefined;
  const around = kernel.extentsOf(hollow)!;
  const free = skins.filter((skin) => {
    const { min, max } = kernel.extentsOf(skin)!;
    if (kernel.volumeOf(skin) < 0) return false;
    return [0, 1, 2].every((i) => min[i]! >= around.min[i]! && max[i]! <= around.max[i]!);
  });
  return free.reduce((air, skin) => air - kernel.volumeOf(skin), -kernel.volumeOf(hollow));
}

/** The skin of the air that a point is in, inside out. */
const hollowRound = (kernel: SolidKernel, skins: readonly SolidRef[], inside: Vector): SolidRef | undefined =>
  skins.find((skin) => kernel.volumeOf(skin) < 0 && kernel.contains(skin, inside));
