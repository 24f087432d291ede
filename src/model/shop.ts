/** Where a value comes from: a published source, "from memory", or "common practice, no source". */
export type Sourced = { readonly source?: string };

/** How a part is cut. */
export const methods = ["saw", "hand", "cnc"] as const;
export type Method = (typeof methods)[number];

/** A sheet one can buy. mm; `trim` is left all round, never nested on. */
export type SheetSize = Sourced & {
  readonly length: number;
  readonly width: number;
  readonly trim: number;
  readonly price?: number;
  readonly "on hand"?: number;
};

/** A rectangular piece left over and kept. */
export type Offcut = { readonly name: string; readonly length: number; readonly width: number; readonly trim: number };

export type BoardStock = Sourced & {
  readonly material: string;
  readonly thickness: number;
  readonly measured?: number;
  /** kg/m3 */
  readonly density: number;
  /** The grain runs along the sheet's length. */
  readonly grain: boolean;
  readonly sheets: readonly SheetSize[];
  readonly offcuts: readonly Offcut[];
};

export type Bit = Sourced & {
  readonly kind: "straight" | "compression" | "flush trim" | "round-over" | "chamfer" | "v" | "drill";
  readonly d: number;
  readonly measured?: number;
  readonly flutes?: number;
  readonly "cutting length"?: number;
  readonly shank?: number;
};

export type Saw = Sourced & { readonly kerf: number; readonly step: number; readonly "longest rip"?: number };
export type Router = Sourced & { readonly step: number };
export type Cnc = Sourced & { readonly length: number; readonly width: number; readonly clearance: number };

export type ThreadedInsert = Sourced & { readonly thread: string; readonly hole: number; readonly length: number };

/** `lengths` in ascending order. `clearance` holes after ISO 273 or ASME B18.2.8. */
export type Bolt = Sourced & {
  readonly thread: string;
  readonly d: number;
  readonly pitch: number;
  readonly head: { readonly d: number; readonly height: number; readonly form: "cap" | "button" | "flat" };
  readonly clearance: { readonly fine: number; readonly medium: number; readonly coarse: number };
  readonly lengths: readonly number[];
};

export type Screw = Sourced & {
  readonly d: number;
  readonly root: number;
  readonly head: { readonly d: number; readonly angle: number };
  readonly pilot: number;
  readonly clearance: number;
  readonly lengths: readonly number[];
};

export type CoveringStock = Sourced & {
  readonly material: string;
  readonly thick: number;
  readonly clamped: number;
  readonly wrap: number;
  /** Between two finished edges where the job says nothing. */
  readonly reveal: number;
  readonly "roll width": number;
  /** For a running metre of the roll. */
  readonly price?: number;
};

/** The shop file, read: what the workshop has and how it works. Rows by name, as the job file calls them. */
export type Shop = {
  readonly version: 1;
  readonly file: string;
  readonly name?: string;
  readonly currency?: string;
  readonly "cut by": Method;
  readonly saw: Saw;
  readonly router: Router;
  readonly cnc?: Cnc;
  readonly boards: Readonly<Record<string, BoardStock>>;
  readonly bits: Readonly<Record<string, Bit>>;
  readonly inserts: Readonly<Record<string, ThreadedInsert>>;
  readonly bolts: Readonly<Record<string, Bolt>>;
  readonly screws: Readonly<Record<string, Screw>>;
  readonly coverings: Readonly<Record<string, CoveringStock>>;
};
