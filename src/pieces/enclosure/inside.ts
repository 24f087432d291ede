import type { Frame } from "../../geometry/frame.js";
import type { Profile } from "../../geometry/profile.js";

/** Some of the air inside a box before anything stands in it: a section extruded. mm. */
export type Inside = {
  /** Counter-clockwise in the section plane; each edge's `by` is the name of the wall, or the divider, that it lies on. */
  readonly section: Profile;
  /** Extent along the section frame's z. */
  readonly from: number;
  readonly to: number;
  /** What shuts it at `from` and at `to`. */
  readonly ends: readonly [string, string];
  /** The section's frame in the piece's frame (z along the extrusion). */
  readonly frame: Frame;
};
