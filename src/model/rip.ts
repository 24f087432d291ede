import type { Profile, Region } from "../geometry/profile.js";
import type { PartId } from "./ids.js";

/** A rectangle of a sheet, from its lower left corner. Sheet frame, mm. */
export type Board = {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
  /** Of what is no rectangle: what there is of it, in one piece or several. */
  readonly shape?: readonly Region[];
  /** Of that: knots in it. */
  readonly knots?: readonly Profile[];
};

/** Which saw: along a track that lies on the board, or the table saw with its fence and its sled. */
export type SawKind = "track" | "table";

/** A first cut for a true edge; a rip against the fence; a cross-cut against a stop block. At the track: to a line. */
export type SawWay = "true edge" | "rip" | "cross-cut";

/** A piece of board and what becomes of it: a part's blank (with what is left on to be routed off), cut in two, or left over. */
export type SawnPiece<Id = PartId> = Board & { readonly part?: Id; readonly cut?: SawCut<Id> };

/** One cut from edge to edge. `off` lies at the reference edge, to the left of the cut or below it; `rest` on its other side. */
export type SawCut<Id = PartId> = {
  readonly saw: SawKind;
  readonly way: SawWay;
  /** Runs along the sheet's length; else across it. */
  readonly along: boolean;
  /** From the reference edge to the blade; across an odd piece from the left end of its true edge, mm. */
  readonly size: number;
  /** What the blade takes, mm: less than its kerf where it runs partly beside the board. */
  readonly kerf: number;
  /** It is a rip, and the sled with its stop block serves as well. */
  readonly sledToo?: true;
  /** Absent: nothing but dust. */
  readonly off?: SawnPiece<Id>;
  readonly rest?: SawnPiece<Id>;
  /** The piece is too small to be held for this cut, or the cut is beyond what the saws reach. */
  readonly trouble?: "small" | "reach";
  /** The true edge of an odd piece by its name: it lies below, and the cut runs along it or square to it. */
  readonly edge?: string;
};

/** A piece as the rip list names it: a sheet's name, or the number of the cut that made it and a: what came off, b: the rest. */
export type RipPiece = Board & {
  readonly name: string;
  readonly becomes: "part" | "cut" | "left";
  readonly part?: PartId;
};

/** A cut of the rip list, in the order in which they are made. */
export type RipCut = Pick<SawCut, "saw" | "way" | "along" | "kerf" | "trouble" | "edge"> & {
  readonly number: number;
  readonly sheet: string;
  /** Fence to blade, stop block to blade, or edge to line, mm. */
  readonly setting: number;
  /** The fence or stop block has to be set anew, or a line measured. */
  readonly fresh: boolean;
  readonly piece: RipPiece;
  readonly off?: RipPiece;
  readonly rest?: RipPiece;
};

/**
 * A bevel sawn along a side of a part that is cut to its blank, the smaller side down. At the table saw the blade leans
 * away from fence or stop block, `setting` is from there to the blade at the table; at the track it is the line on the
 * upper side. `small`: the part is too small to be held for it. mm, rad.
 */
export type BevelCut = Pick<SawCut, "saw" | "way" | "trouble"> & {
  readonly number: number;
  readonly part: PartId;
  readonly edge: string;
  readonly tilt: number;
  readonly down: "face" | "back";
  readonly setting: number;
  readonly fresh: boolean;
  /** Of the part's blank: along the bevel, and across it. */
  readonly run: number;
  readonly across: number;
};

/** Everything that is sawn of a job. */
export type RipList = { readonly cuts: readonly RipCut[]; readonly bevels: readonly BevelCut[] };
