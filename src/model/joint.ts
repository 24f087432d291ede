import type { Frame } from "../geometry/frame.js";
import type { Origin } from "../input/finding.js";
import type { AxisId, FeatureId, PartId } from "./ids.js";

/** Two parts that meet: `laps` covers the edge of `into`. */
export type Joint = {
  readonly id: string;
  readonly form: "butt" | "rebate" | "groove" | "mitre" | "lap";
  readonly laps: PartId;
  readonly into: PartId;
  /** Edges of `into` that meet the other part's face. */
  readonly edges: readonly string[];
  readonly axes: readonly AxisId[];
  readonly glue: boolean;
};

/**
 * Holes that share an axis are one thing, defined once, in the vehicle frame. `ray`: origin on the face where the
 * fastener's head lies, z pointing out of the work, against the way the fastener goes. Several pieces may add to one
 * axis's stack; ray and fastener are those of the piece that the id names.
 */
export type Axis = {
  readonly id: AxisId;
  readonly from: readonly Origin[];
  readonly ray: Frame;
  /** As it is bought: "M6 x 20 button black", "4.0 x 50 screw". */
  readonly fastener: string;
  readonly stack: readonly {
    readonly part: PartId;
    readonly feature: FeatureId;
    readonly role: "clearance" | "thread" | "pilot";
  }[];
};
