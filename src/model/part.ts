import type { Frame } from "../geometry/frame.js";
import type { Path, Point, Region } from "../geometry/profile.js";
import type { Origin } from "../input/finding.js";
import type { AxisId, BoardId, FeatureId, PartId, PieceId } from "./ids.js";
import type { Method } from "./shop.js";

/**
 * Where a cut is made. All 2D data is in the part's frame SEEN FROM THE FACE (face z = 0, back z = -thickness), back
 * and edge work too; only a setup mirrors. `edge` names the edge of the outline whose narrow side is drilled.
 */
export type Side = "face" | "back" | { readonly edge: string };

/** What becomes of an inside corner: left sharp (a hand finishes it), given the bit's radius, or relieved. */
export type Corner = "sharp" | "bit" | "relief";

/** A countersink (angle > 0, rad, the whole angle of the cone) or a counterbore (angle 0) at a hole's mouth, mm. */
export type Sink = { readonly d: number; readonly depth: number; readonly angle: number };

export type Cut =
  | { readonly kind: "outline" | "notch" | "opening"; readonly region: Region; readonly corner: Corner }
  | { readonly kind: "pocket"; readonly region: Region; readonly depth: number; readonly corner: Corner }
  | {
      readonly kind: "groove";
      /** The middle of the groove. Closed: as a profile, its last edge returns to the first vertex. */
      readonly path: Path;
      readonly closed: boolean;
      readonly width: number;
      readonly depth: number;
    }
  | {
      readonly kind: "hole";
      /** On an edge side: the point of the outline where the hole enters; it runs square to that edge. */
      readonly at: Point;
      /** On an edge side: how far below the face the hole's axis lies, mm. */
      readonly below?: number;
      readonly d: number;
      readonly depth: number | "through";
      readonly sink?: Sink;
    }
  | {
      readonly kind: "edge";
      readonly form: "rebate" | "chamfer" | "roundOver";
      /** The names (`by`) of the edges it runs along. */
      readonly along: readonly string[];
      readonly width: number;
      readonly depth: number;
      readonly angle: number;
    }
  | { readonly kind: "mark"; readonly text: string; readonly at: Point };

/** Intent kept whole: dimensions, findings and machining name the id; each edge of the profile says `by` which feature. */
export type Feature = {
  readonly id: FeatureId;
  readonly from: readonly Origin[];
  readonly side: Side;
  readonly cut: Cut;
  readonly axis?: AxisId;
  /** What goes into it and closes it: "driver ten", "terminal". A through hole with neither this nor an axis is a leak. */
  readonly filledBy?: string;
  /** sheet: at the machine; bench: on the loose part; assembled: after glue-up, never on the CNC. */
  readonly stage: "sheet" | "bench" | "assembled";
};

export type EdgeFinish =
  | { readonly kind: "bare" }
  /** `loose` and `clamped`: the covering's thickness as laid and as pressed; `wrap`: how far it goes round to the back. */
  | {
      readonly kind: "wrapped";
      readonly covering: string;
      readonly loose: number;
      readonly clamped: number;
      readonly wrap: number;
    }
  | { readonly kind: "joint"; readonly joint: string };

export type Edge = {
  /** 0 square; > 0: back smaller than face. rad. */
  readonly bevel: number;
  readonly finish: EdgeFinish;
  /** What it stands beside: gap as cut = reveal + this edge's covering + the neighbour's. */
  readonly against?: { readonly what: string; readonly reveal: number };
  /** Left on the blank, trimmed when assembled. mm. */
  readonly flush: number;
};

export type Part = {
  readonly id: PartId;
  /** Short number shown on drawings and labels: "B3". Unique in the job. */
  readonly number: string;
  readonly piece: PieceId;
  /** "top", "ring", "block.2". */
  readonly role: string;
  readonly from: readonly Origin[];
  readonly board: BoardId;
  readonly thickness: number;
  /** Direction the board's grain must run in, rad from the part's x axis; absent where it does not matter. */
  readonly grain?: number;
  /** The recipe, outline first. */
  readonly features: readonly Feature[];
  /** Derived once: what one measures on the bare board at the face, with every opening and every hole that goes through. */
  readonly profile: Region;
  /** Derived: face and back outline together, plus flush allowance; the nest sees only this. */
  readonly blank: Region;
  /** By the names (`by`) of the profile's edges. A name absent here is a square, bare edge. */
  readonly edges: Readonly<Record<string, Edge>>;
  readonly coverings: { readonly face?: string; readonly back?: string };
  /** How it is cut, where that differs from the rest of its piece. */
  readonly cutBy?: Method;
  /** In the piece's frame; the piece's own frame is in Plan.frames. */
  readonly at: Frame;
};
