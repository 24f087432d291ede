import type { Profile } from "../geometry/profile.js";
import type { LengthUnit } from "../input/length.js";
import type { Show } from "../input/show.js";
import type { Method } from "./shop.js";

// The job file, read: every length in mm, every angle in rad, keys as they stand in the file.

export type { LengthUnit };

/** A board of the job: which stock, and what its thickness measured. */
export type BoardChoice = { readonly stock: string; readonly measured?: number };

/** Something that stays in the vehicle: a plan outline between two heights, vehicle frame, and how far to keep away. */
export type Obstacle = {
  /** Counter-clockwise; edges named "side.1" and so on. */
  readonly outline: Profile;
  readonly bottom: number;
  readonly top: number;
  readonly clear: number;
  readonly is?: string;
};

/** A reference line across the vehicle: one of its two coordinates. */
export type ReferenceLine = { readonly x: number } | { readonly y: number };

export type Space = {
  readonly datum?: string;
  /** Seen from above, counter-clockwise. Each edge's `by` is its side's name ("rear"), a rounded corner's is "a|b". */
  readonly outline: Profile;
  /** Names of the sides in order, as given or "side.1", "side.2" ... */
  readonly sides: readonly string[];
  readonly height?: number;
  readonly obstacles: Readonly<Record<string, Obstacle>>;
  readonly lines: Readonly<Record<string, ReferenceLine>>;
  readonly opening?: { readonly side?: string; readonly width: number; readonly height: number };
  /** Plan outlines under which no fastener may go into the floor. */
  readonly "no screws": Readonly<Record<string, { readonly outline: Profile }>>;
};

/** A driver's data sheet. Only the cut-out must be known; a check that needs what is missing says so. */
export type Driver = {
  readonly name?: string;
  readonly "cut-out": number;
  readonly frame?: number;
  readonly bolts?: {
    readonly circle: number;
    readonly holes: number;
    readonly screw?: string;
    readonly start?: number;
  };
  /** Height of the frame's edge above what it stands on, gasket included. */
  readonly flange?: number;
  /** From under the frame to the back of the magnet. */
  readonly depth?: number;
  readonly magnet?: number;
  readonly vented?: boolean;
  /** How far the surround stands above the front of the flange at rest. */
  readonly "stands proud"?: number;
  /** How far it moves outward from rest. */
  readonly travel?: number;
  /** L */
  readonly displaces?: number;
  readonly massKg?: number;
  /** Net volumes the maker asks for, L. */
  readonly wants?: { readonly closed?: readonly [number, number]; readonly ported?: readonly [number, number] };
  /** fs Hz, qts, qes, vas L, xmax mm, sd mm2, power W, ohm. */
  readonly data?: {
    readonly fs?: number;
    readonly qts?: number;
    readonly qes?: number;
    readonly vas?: number;
    readonly xmax?: number;
    readonly sd?: number;
    readonly power?: number;
    readonly ohm?: number;
  };
};

/** A covering of the job; what it does not say (`assumed`) comes from the shop's row. */
export type Covering = {
  readonly stock: string;
  readonly thick: number;
  readonly clamped: number;
  readonly assumed?: readonly ("thick" | "clamped")[];
};

/** An entry of the job that was left out because of a mistake of its own, so that nobody is told that it is unknown. */
export type Unread = { readonly kind: "board" | "driver" | "covering" | "obstacle"; readonly name: string };

export type PieceSpec = { readonly kind: string };

export type Job = {
  readonly version: 1;
  readonly file: string;
  readonly title: string;
  readonly reference?: string;
  readonly customer?: string;
  /** ISO 8601 day. The drawings' date: never from a clock. */
  readonly date?: string;
  readonly units: LengthUnit;
  readonly show: Show;
  readonly shop?: string;
  readonly "cut by"?: Method;
  readonly boards: Readonly<Record<string, BoardChoice>>;
  readonly space: Space;
  readonly drivers: Readonly<Record<string, Driver>>;
  readonly coverings: Readonly<Record<string, Covering>>;
  /** Each parsed by its kind's own schema. A piece with a mistake in it is not here: it is withheld. */
  readonly pieces: Readonly<Record<string, PieceSpec>>;
  /** Names of the pieces that were withheld, so that what leans on them can say why it is missing. */
  readonly withheld: readonly string[];
  readonly unread?: readonly Unread[];
};
