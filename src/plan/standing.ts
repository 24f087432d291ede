import { compose, type Frame, identity, inverse } from "../geometry/frame.js";
import { extentsOf } from "../geometry/measure.js";
import type { StandingBlock } from "../geometry/solids-apart.js";
import type { Plan } from "../model/build.js";
import type { PartId } from "../model/ids.js";
import { onceFor } from "../model/once.js";
import type { Part } from "../model/part.js";

/** A part where it stands in the vehicle, and the block round the bare board, in the part's own frame. */
export type Standing = StandingBlock & { readonly part: Part };

/** Every part that has a place in the vehicle. A part of a piece that is only cut has none. */
export const standingParts = onceFor((plan: Plan): readonly Standing[] => {
  const frames = new Map(plan.frames);
  return plan.built.parts.flatMap((part) => {
    const frame = frames.get(part.piece);
    return frame === undefined ? [] : [standingIn(frame, part)];
  });
});

/** The part seen in the frame that holds its piece's frame. */
export function standingIn(piece: Frame, part: Part): Standing {
  const { min, max } = extentsOf(part.profile.outer);
  return {
    part,
    at: piece === identity ? part.at : compose(piece, part.at),
    block: { min: [min.x, min.y, -part.thickness], max: [max.x, max.y, 0] },
  };
}

export function partOf(plan: Plan, id: PartId): Part | undefined {
  return plan.built.parts.find((part) => part.id === id);
}

/** A frame of the vehicle seen from a part. */
export function seenFrom(part: Standing, frame: Frame): Frame {
  return compose(inverse(part.at), frame);
}

/** A part as one says it: "box top"; the piece's name alone where the part has the same. */
export function nameOf(part: Part): string {
  return part.role === part.piece ? part.piece : `${part.piece} ${part.role}`;
}
