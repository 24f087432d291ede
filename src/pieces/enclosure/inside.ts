import type { Frame } from "../../geometry/frame.js";
import type { Profile } from "../../geometry/profile.js";

/** The air inside a box before anything stands in it: a section extruded. mm. */
export type Inside = {
  /** Counter-clockwise in the section plane; each edge's `by` is its wall's name. */
  readonly section: Profile;
  /** Extent along the section frame's z. */
  readonly from: number;
  readonly to: number;
  /** The section's frame in the piece's frame (z along the extrusion). */
  readonly frame: Frame;
};
