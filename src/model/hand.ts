import type { Point, Profile } from "../geometry/profile.js";
import type { FeatureId, PartId } from "./ids.js";

/** On which side of its line the cutter runs: round a part, round an opening, or over a recess up to its wall. */
export type HandSide = "outside" | "inside" | "recess";

/** One way to lead a bit along a template. mm. */
export type Template = {
  /** The shop's name of the bush; absent where the bit's own bearing follows the template. */
  readonly bush?: string;
  readonly bit: string;
  /** From the template's edge to the cut: (bush - bit) / 2. The template is smaller by it all round for outside work, larger for inside work. */
  readonly offset: number;
  /** Length and width of the template, or of the hole in it; absent where there is none: what is left of it closes. */
  readonly size?: readonly [number, number];
  /** The tightest inside corner of the template; absent where it has none. */
  readonly corner?: number;
  /** Outside corners of the work that come out rounder than drawn, with the radius of `offset`. */
  readonly rounded: number;
  /** A bush stands so far below the router's base: the template is at least so thick. */
  readonly thick: number;
  /** The true outline, of the first way only. Part's frame. */
  readonly outline?: Profile;
};

/** A line that the hand router follows. */
export type HandProfile = {
  readonly part: PartId;
  readonly feature: FeatureId;
  readonly side: HandSide;
  /** Length and width of the cut itself. */
  readonly size: readonly [number, number];
  readonly depth: number;
  readonly through: boolean;
  /** A plain rectangle's outside: a straight edge does what a template would. */
  readonly straight: boolean;
  /** Depths below the board's face, pass by pass, for the first bit that runs in a bush; one on a bearing takes what was left on in one pass. */
  readonly passes: readonly number[];
  readonly feed: "clockwise" | "counter-clockwise";
  /** Board left on beside the line when it is sawn free roughly, to be taken off by the router. */
  readonly allowance: number;
  /** What bushes and bits on hand can do, the best first. */
  readonly templates: readonly Template[];
};

/** One circle at the jig. `pivots`: from the pivot to the middle of the bit, in the order of the cuts; the last leaves the wall. */
export type JigCut = {
  readonly feature: FeatureId;
  readonly side: HandSide;
  readonly radius: number;
  readonly pivots: readonly number[];
  readonly passes: readonly number[];
  readonly through: boolean;
  readonly feed: "clockwise" | "counter-clockwise";
};

/** Circles about one pivot, in the order recess, outside, inside: the inside takes the pivot with it. */
export type CircleJig = {
  readonly part: PartId;
  /** Part's frame. */
  readonly pivot: Point;
  readonly bit: string;
  readonly cuts: readonly JigCut[];
  /** Nothing is cut out round the pivot: its hole stays in the part. */
  readonly pivotStays: boolean;
};

/** What one needs at the bench to route by hand. */
export type Hand = { readonly profiles: readonly HandProfile[]; readonly jigs: readonly CircleJig[] };
