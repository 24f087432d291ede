import type { Point, Region } from "../geometry/profile.js";
import type { BoardId, FeatureId, PartId } from "./ids.js";

/** What a move is for, so that a drawing of it and a list of times can tell work from way. */
export type MoveRole = "way" | "plunge" | "entry" | "lead" | "cut" | "tab";

/**
 * One move of the cutter from where it stands, in the setup's frame: x and y as the sheet lies on the bed, zero at its
 * lower left corner; z = 0 is the sheet's top, down is negative. mm.
 */
export type Move = {
  readonly to: readonly [number, number, number];
  /** Of the arc in plan, as in a profile; 0 is straight. z changes evenly along it. */
  readonly bulge: number;
  /** mm/min, or as fast as the machine travels. */
  readonly feed: number | "rapid";
  readonly role: MoveRole;
};

/** In the order in which a sheet is worked: what needs a firm sheet first, what lets parts go last. */
export const workKinds = [
  "pin",
  "drill",
  "sink",
  "pocket",
  "groove",
  "rebate",
  "chamfer",
  "engrave",
  "inside",
  "outside",
] as const;
export type WorkKind = (typeof workKinds)[number];

/** One feature cut by one tool: from safe height back to safe height. */
export type Operation = {
  readonly kind: WorkKind;
  /** Absent on what belongs to the sheet, such as holes for pins. */
  readonly part?: PartId;
  readonly feature?: FeatureId;
  readonly moves: readonly Move[];
  /** z of the floor it leaves, mm; below the sheet where it goes through. */
  readonly floor: number;
};

/** What one tool does before it is changed. `number`: its place in the machine's table. `d`: as measured, mm. */
export type Run = {
  readonly tool: string;
  readonly number: number;
  readonly d: number;
  readonly rpm: number;
  /** mm/min, for the list of tools. */
  readonly feed: number;
  readonly plunge: number;
  readonly operations: readonly Operation[];
};

/** A place where a dowel keeps the sheet in register when it is turned over, setup frame. */
export type Pin = { readonly at: Point; readonly d: number; readonly depth: number };

/** A part as it lies in a setup, setup frame: what must be left of it, seen from above. */
export type SetupPart = {
  readonly part: PartId;
  /** The side that lies up in this setup. */
  readonly up: "face" | "back";
  readonly profile: Region;
  readonly blank: Region;
};

/** One clamping of one sheet on the machine. */
export type Setup = {
  /** "box 1", and where the sheet is turned over "box 1 turned". Unique; used in file names. */
  readonly name: string;
  readonly sheet: string;
  readonly board: BoardId;
  /** The sheet lies turned over about its long side: x stays, y is measured from the other edge. */
  readonly turnedOver: boolean;
  readonly length: number;
  readonly width: number;
  /** Thickest sheet measured: what the depths are reckoned from, mm. */
  readonly thickness: number;
  /** Height above the sheet's top at which the cutter travels, mm. */
  readonly safe: number;
  readonly parts: readonly SetupPart[];
  readonly pins: readonly Pin[];
  readonly runs: readonly Run[];
  /** Features that are not cut here though they were meant to be, each with a finding. */
  readonly withheld: readonly FeatureId[];
  /** An estimate, s. */
  readonly seconds: number;
};

/**
 * What the machine does, sheet by sheet. `withheld`: names of setups that cannot be run, each with a finding.
 *
 * The bit's centre may run beside the sheet by half the bit and a lead's swing (x or y below 0, or over length or width)
 * where a part lies at the sheet's edge: sheet and paths together fit the bed, so the sheet is laid that far in from it.
 */
export type Program = { readonly setups: readonly Setup[]; readonly withheld?: readonly string[] };
