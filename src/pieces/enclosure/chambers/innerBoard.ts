import type { Profile } from "../../../geometry/profile.js";
import type { Origin } from "../../../input/finding.js";
import type { BoardId } from "../../../model/ids.js";
import type { Sheet } from "../form/face.js";
import type { SizeName } from "../schema.js";

/** A board that stands inside the box: a divider, a brace, a panel of a port. */
export type InnerBoard = {
  readonly role: string;
  readonly from: Origin;
  readonly board: { readonly id: BoardId; readonly thickness: number };
  /** Each edge's `by` is the face or the inner board that it is glued to; one that ends free is called "free". */
  readonly sheet: Sheet;
  /** Where one marks it on the walls: across which size of the box, and how far its nearer side is from the outside, or from which wall. */
  readonly marked:
    | { readonly across: SizeName; readonly at: number }
    | { readonly beside: string; readonly gap: number };
  /** Openings through it, in the sheet's axes. */
  readonly windows: readonly Profile[];
};

/** The name of an edge that meets nothing. */
export const freeEdge = "free";
