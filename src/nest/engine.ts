import type { Profile, Region } from "../geometry/profile.js";
import type { SawnPiece } from "../model/rip.js";
import type { Sawing } from "./saw/sawing.js";

/** A blank to lay on a sheet: its outline and holes, mirrored already where its back is up. mm, rad. */
export type NestItem = {
  readonly id: string;
  readonly shape: Region;
  /** Least distance to its neighbours; two of them keep the larger of their gaps. At saws half of each, beside one cut. */
  readonly gap: number;
  /** About the shape's own origin, counter-clockwise. */
  readonly turns: readonly number[];
  /** How many of its sides are bevelled, of those along its length before it is turned, and of those across. */
  readonly bevels?: { readonly lengthwise: number; readonly across: number };
};

/** Sheets of one kind. `cost`: of one more of them, in any unit that is the same for all; 0 for what is in the rack. */
export type NestStock = {
  readonly name: string;
  readonly length: number;
  readonly width: number;
  /** Left free all round, mm. */
  readonly trim: number;
  /** Absent: as many as are needed. */
  readonly count?: number;
  readonly cost: number;
  /** Of an odd offcut: what there is of the rectangle, from its lower left corner; the trim is left free along it. */
  readonly outline?: Profile;
  /** Kept clear by the parts' gap: clamps, pins, knots. From the sheet's corner. */
  readonly zones?: readonly Profile[];
};

/** What an engine is asked: one board, one way of cutting. Plain data, so that it may cross to a worker thread. */
export type NestOrder = {
  readonly items: readonly NestItem[];
  /** In the order in which the workshop would rather use them. */
  readonly stock: readonly NestStock[];
  /** Every cut runs from one edge to the other of the piece in hand, as at a saw, as wide as the smallest gap. */
  readonly edgeToEdge: boolean;
  /** Where a person cuts them at saws: what these and hands can do. The sheets of the result then say how they are cut up. */
  readonly sawing?: Sawing;
  readonly seed: number;
  /** Layouts to try. The same order and seed give the same result on every machine. */
  readonly iterations: number;
};

/** One sheet in use: its row in the order's stock, and where the items lie: turned, their extents' corner at x, y. */
export type NestResultSheet = {
  readonly stock: number;
  readonly placed: readonly { readonly item: number; readonly x: number; readonly y: number; readonly turn: number }[];
  /** How it is cut up, with the items by their places in the order. */
  readonly sawn?: SawnPiece<number>;
};

export type NestResult = {
  readonly sheets: readonly NestResultSheet[];
  /** Items that found no place. */
  readonly left: readonly number[];
};

/** A whole run: as many iterations as the order asks for. */
export type NestEngine = (order: NestOrder) => NestResult;

/** A layout and what it is worth: compared place by place the first that differs decides, and less is better. */
export type NestFound = { readonly result: NestResult; readonly worth: readonly number[] };

/**
 * A run that can be stopped and gone on with. What it finds depends on the order, its seed and the iterations done, not
 * on how they were parted, and not on the order's own count of them.
 */
export type NestSearch = {
  /** Does so many more iterations and gives the best so far; the first iteration always gives a layout. */
  readonly advance: (iterations: number) => NestFound;
  /** Takes over what another search of the same order found, if it is better. */
  readonly adopt: (found: NestFound) => void;
};

/** Worth that differs by less than one part in a thousand million is alike. */
export function isBetter(a: readonly number[], b: readonly number[]): boolean {
  const i = a.findIndex((value, place) => Math.abs(value - b[place]!) > 1e-9 * Math.abs(value));
  return i >= 0 && a[i]! < b[i]!;
}
