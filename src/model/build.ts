import type { Frame } from "../geometry/frame.js";
import type { Profile, Region } from "../geometry/profile.js";
import type { Finding, FindingDef } from "../input/finding.js";
import type { Hand } from "./hand.js";
import type { BoardId, FeatureId, PartId, PieceId } from "./ids.js";
import type { Job } from "./job.js";
import type { Built } from "./piece.js";
import type { Program } from "./program.js";
import type { RipList, SawnPiece } from "./rip.js";
import type { Method, Shop } from "./shop.js";

/** All parts of the job and where each piece stands; a piece that is only cut has no frame. `sizes`: the free number each owner settled on, mm. */
export type Plan = {
  readonly frames: readonly (readonly [PieceId, Frame])[];
  readonly sizes: readonly (readonly [PieceId, number])[];
  readonly built: Built;
  /** Pieces the plan could not make, each with a finding that says why. */
  readonly withheld: readonly PieceId[];
};

/** A check over a plan, with the words of every finding it can raise. */
export type Check = {
  readonly name: string;
  readonly findings: readonly FindingDef[];
  run(job: Job, shop: Shop, plan: Plan): readonly Finding[] | Promise<readonly Finding[]>;
};

/** What the nest must know of a part: how it is cut decides gap, turns and side. */
export type PartProcess = {
  readonly part: PartId;
  readonly method: Method;
  /** Why this method, in a few words: shown in the cut list. */
  readonly why: string;
  /** The sides that lie up at the machine, in the order of its setups: one, or two where the sheet is turned over. */
  readonly sides: readonly ("face" | "back")[];
  /** Least distance to a neighbour on the sheet, mm. */
  readonly gap: number;
  /** Turns the nest may use, rad. */
  readonly turns: readonly number[];
  /** Where each feature is cut, and why there. What is done to it later, such as a bevel at the saw, is an entry more. */
  readonly work: readonly FeatureWork[];
};

/** Who cuts a feature: a setup at the machine (1: as the sheet is laid, 2: turned over), the saw, the hand router, the bench. */
export type FeatureWork = {
  readonly feature: FeatureId;
  readonly by: "cnc" | "saw" | "hand" | "bench";
  readonly setup?: 1 | 2;
  /** The bit's name in the shop; absent for the saw and where nothing on hand will do. */
  readonly tool?: string;
  /** In a few words, for the lists. */
  readonly why: string;
};

/**
 * Dowels that keep the sheets of a board in register when they are turned over about their long side. They stand on the
 * long middle line, where turning changes no place, so that a sheet's true width does not matter; not equally far from
 * its two ends, so that a sheet turned the wrong way does not go on them. For places on a sheet: `pinsOn`. mm.
 */
export type Registration = {
  readonly board: BoardId;
  readonly d: number;
  /** The bit that makes the holes; absent where nothing on hand will do. */
  readonly tool?: string;
  /** How far the holes go on into the spoilboard. */
  readonly into: number;
  /** From the sheet's left and right end to the middle of a dowel. */
  readonly fromEnds: readonly [number, number];
  /** Round each dowel's middle a disc of this radius stays whole: to a nest it is a part like others, with their gap. */
  readonly keepOff: number;
};

export type Process = {
  readonly parts: readonly PartProcess[];
  /** One for each board that has a part with two setups. */
  readonly registration: readonly Registration[];
  readonly hand: Hand;
};

/** One part on a sheet: its blank, turned by `turn`, then its extents' lower left corner shifted to x, y. */
export type Placed = {
  readonly part: PartId;
  readonly x: number;
  readonly y: number;
  readonly turn: number;
  /** The part lies with its back up, mirrored. */
  readonly backUp: boolean;
};

/** A rectangle of an offcut: its corner at x, y, its length along a side of it, turned by `turn`. mm, rad. */
export type Within = {
  readonly side: string;
  readonly x: number;
  readonly y: number;
  readonly turn: number;
  /** All of the offcut as it lies on that side, knots and all: from the rectangle's lower left corner. */
  readonly whole?: Region;
  /** Where that is no good, seen the same way. */
  readonly knots?: readonly Profile[];
};

/** Of a piece that a sawn sheet leaves: that sheet, and where on it the piece's lower left corner lay. mm. */
export type RestOf = { readonly sheet: string; readonly x: number; readonly y: number };

/** One sheet or offcut in use, or what another one leaves. Sheet frame: x along the length, origin at the corner the machine is zeroed on. */
export type NestedSheet = {
  /** "box 1", "box offcut A", "box 1 rest". Unique in the layout; used in file names. */
  readonly sheet: string;
  readonly board: BoardId;
  readonly length: number;
  readonly width: number;
  readonly trim: number;
  /** The rack's name of an offcut; absent: a whole sheet. */
  readonly offcut?: string;
  /** In the rack already: nothing to buy. Absent on a sheet to be bought. */
  readonly onHand?: true;
  readonly price?: number;
  /** It is sawn off another sheet of the layout first, and lies as it lay there: nothing to buy, and no board of its own. */
  readonly restOf?: RestOf;
  /** Its thickness, where it was measured apart from its board's. */
  readonly measured?: number;
  /** Of an odd offcut: what there is of the rectangle; the trim is left free all along it. */
  readonly outline?: Profile;
  /** What parts keep clear of: each outline says by the name of its edges what it is, such as "clamp" or "dowel". */
  readonly zones?: readonly Profile[];
  /** Of what a saw has of an odd offcut, or of one with knots: where in it this rectangle lies. */
  readonly within?: Within;
  readonly placed: readonly Placed[];
  /** Of a sheet that is sawn: how it is cut up. */
  readonly sawn?: SawnPiece;
};

export type Layout = {
  /** Hash of the blanks and stock it was made for. */
  readonly of: string;
  readonly sheets: readonly NestedSheet[];
  /** Parts that no sheet takes, with a finding each. */
  readonly left: readonly PartId[];
  /** Per board: a count of sheets to buy that no layout can go below, and why. */
  readonly bounds: readonly { readonly board: BoardId; readonly count: number; readonly why: string }[];
  /** How the sawn sheets are cut up, cut by cut; absent where nothing is sawn. */
  readonly rips?: RipList;
};

/** Everything the writers need. `hash` is short and covers all of it. */
export type Build = {
  readonly job: Job;
  readonly shop: Shop;
  readonly hash: string;
  readonly plan: Plan;
  readonly process: Process;
  readonly layout: Layout;
  readonly program: Program;
  readonly findings: readonly Finding[];
};

/** A file for the output folder: a path with forward slashes, safe on every system, and its bytes. */
export type OutputFile = { readonly path: string; readonly bytes: Uint8Array };

export type Exporter = {
  readonly format: string;
  write(build: Build): Iterable<OutputFile> | Promise<Iterable<OutputFile>>;
};
