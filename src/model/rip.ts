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

/**
 * A piece of board and what becomes of it: a part's blank (with what is left on to be routed off), cut in two, or left over.
 * `bevels`: sawn along its sides before it is cut in two.
 * `goesOn`: left whole by the saw, it goes to the machine as this sheet of the layout.
 */
export type SawnPiece<Id = PartId> = Board & {
  readonly part?: Id;
  readonly cut?: SawCut<Id>;
  readonly bevels?: readonly PieceBevel[];
  readonly goesOn?: string;
};

/** A side of a piece as it lay on its sheet. */
export type PieceSide = "lower" | "upper" | "left" | "right";

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

/**
 * A piece as the rip list names it: a sheet's name, or the number of the cut that made it and a: what came off, b: the rest.
 * `bevelled`: the sides that are bevelled already, which way, and by how much the smaller side is narrower there, mm.
 */
export type RipPiece = Board & {
  readonly name: string;
  readonly becomes: "part" | "cut" | "left";
  readonly part?: PartId;
  readonly bevelled?: readonly Pick<PieceBevel, "side" | "down" | "less">[];
  /** Of what is left: the sheet of the layout that it is from now on. */
  readonly goesOn?: string;
};

/** A cut of the rip list, in the order in which they are made. */
export type RipCut = Pick<SawCut, "saw" | "way" | "along" | "kerf" | "trouble" | "edge"> & {
  readonly number: number;
  readonly sheet: string;
  /** Fence to blade, stop block to blade, or edge to line, mm. */
  readonly setting: number;
  /** The fence or stop block has to be set anew, or a line measured. */
  readonly fresh: boolean;
  /** The blade leant for a bevel before, and is set upright again. */
  readonly upright?: true;
  readonly piece: RipPiece;
  readonly off?: RipPiece;
  readonly rest?: RipPiece;
};

/**
 * How a bevel is sawn along a side, the smaller side down. At the table saw the blade leans away from fence or stop block,
 * `setting` is from there to the blade at the table; at the track it is the line on the upper side. `run`: along the bevel,
 * `across`: the larger side across it, `less`: what the smaller one is narrower. `small`: too small to be held for it. mm, rad.
 */
export type Bevel = Pick<SawCut, "saw" | "way" | "trouble"> & {
  readonly tilt: number;
  readonly setting: number;
  readonly run: number;
  readonly across: number;
  readonly less: number;
  /** The sides of parts that it makes: one, or those of all parts that are still in one piece. */
  readonly edges: readonly { readonly part: PartId; readonly edge: string }[];
};

/** A bevel along a side of a piece. `down`: what lay up on the sheet, or what lay under. */
export type PieceBevel = Bevel & { readonly side: PieceSide; readonly down: "upper" | "under" };

/** A bevel of the rip list: of a part that is cut to its blank, or of a piece that parts are still to be cut from. */
export type BevelCut = Bevel & {
  readonly number: number;
  readonly fresh: boolean;
  /** The side at the fence is bevelled already, its thin edge at the table. */
  readonly thin?: true;
} & (
    | { readonly down: "face" | "back"; readonly piece?: never }
    | (PieceBevel & { readonly sheet: string; readonly piece: RipPiece })
  );

/** Everything that is sawn of a job; cuts and bevels are numbered together, in the order in which they are made. */
export type RipList = { readonly cuts: readonly RipCut[]; readonly bevels: readonly BevelCut[] };
