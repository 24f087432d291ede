import type { Job } from "../../../model/job.js";
import { onceForThree } from "../../../model/once.js";
import type { Around } from "../../../model/piece.js";
import type { Shop } from "../../../model/shop.js";
import type { EnclosureSpec } from "../schema.js";
import { askedOf } from "./asked.js";
import { type Asked, type Boards, boardsOf } from "./box.js";

export type WorkedOut = { readonly asked: Asked; readonly boards: Boards };

/** A box's boards at a free size: worked out once, however often the solver, the checks and the building ask. */
export function workedOut(spec: EnclosureSpec, size: number, around: Around): WorkedOut {
  const known = sizesKnown(spec, around.job, around.shop);
  const found = known.get(size);
  if (found !== undefined) return found;
  const asked = askedOf(spec, size, around);
  const made = { asked, boards: boardsOf(asked) };
  known.set(size, made);
  return made;
}

const sizesKnown = onceForThree((_spec: EnclosureSpec, _job: Job, _shop: Shop) => new Map<number, WorkedOut>());
