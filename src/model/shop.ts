import type { Profile } from "../geometry/profile.js";

/** Where a value comes from: a published source, "from memory", or "common practice, no source". */
export type Sourced = { readonly source?: string };

/** The forms of DXF that can be written: the oldest, which every reader takes, or that of the year 2000. */
export const dxfFormats = ["R12", "2000"] as const;
export type DxfFormat = (typeof dxfFormats)[number];

/** How a part is cut. */
export const methods = ["saw", "hand", "cnc"] as const;
export type Method = (typeof methods)[number];

/** What parts keep clear of, by what it is; outlines from the lower left corner, mm. */
export type KeptClear = {
  /** Where something holds the board down. */
  readonly clamps?: readonly Profile[];
  /** Where the board itself is no good. */
  readonly knots?: readonly Profile[];
  /** Where something stands up through the board or beside it. */
  readonly pins?: readonly Profile[];
  /** Where there is no board any more. */
  readonly holes?: readonly Profile[];
};

/** A sheet one can buy. mm; `trim` is left all round, never nested on. */
export type SheetSize = Sourced &
  KeptClear & {
    readonly length: number;
    readonly width: number;
    readonly trim: number;
    readonly price?: number;
    readonly "on hand"?: number;
    /** Thickness of these sheets, where it differs from the board's own. */
    readonly measured?: number;
  };

/** A piece left over and kept. `measured`: its thickness, where it differs from the board's own. mm. */
export type Offcut = KeptClear & {
  readonly name: string;
  readonly length: number;
  readonly width: number;
  readonly trim: number;
  readonly measured?: number;
  /** What there is of the rectangle, where that is not all of it; the trim is left all along it. */
  readonly outline?: Profile;
  /** The side of the outline that is straight enough to lie at a saw's fence. Without one a saw leaves an odd offcut alone. */
  readonly "true edge"?: string;
};

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
  /** The whole angle of the cone, rad: of chamfer and V bits. */
  readonly angle?: number;
  /** Of a compression bit: the part from the tip that cuts upward, mm. */
  readonly "up-cut"?: number;
  /** Of a bit that follows a template or an edge: its bearing's diameter, mm. */
  readonly bearing?: number;
  /** The limit marked on the bit, 1/min. */
  readonly "most rpm"?: number;
};

/** How a controller wants its programs: its habits as data, whoever made it. */
export type Controller = Sourced & {
  readonly units: "mm" | "inch";
  /** Digits after the point of X, Y, Z, I, J. */
  readonly decimals: number;
  /** `change`: the machine changes tools itself. `pause`: it stops, and a person changes the bit. `file`: a file a tool. */
  readonly tools: "change" | "pause" | "file";
  readonly circles: "whole" | "halves";
  /** `lines`: the controller takes no arcs; they are sent as short lines within `chord`, mm. */
  readonly arcs: "centre" | "lines";
  readonly chord: number;
  readonly dwell: "seconds" | "milliseconds";
  /** What is sent to stop the program for good. */
  readonly end: "M30" | "M2";
  /** The word that starts dust extraction, where it is wired to the controller. */
  readonly extraction?: "M7" | "M8";
};

/** The table saw. mm. */
export type Saw = Sourced & {
  readonly kerf: number;
  /** What its fence and stop blocks can be set to. */
  readonly step: number;
  /** As far as the fence reaches from the blade. */
  readonly "longest rip"?: number;
  /** The longest cut on its sled or against its mitre gauge. */
  readonly "longest cross-cut"?: number;
  /** The largest piece that one person brings to the fence. */
  readonly "one person"?: { readonly length: number; readonly width: number };
  /** The share of a sheet that is worth one setting less of fence or stop block, 0 to 1. */
  readonly setting?: number;
};
/** A saw that runs along a track on the board: for cuts that are too large for the table saw. mm. */
export type TrackSaw = Sourced & { readonly kerf: number; readonly "longest cut": number };
export type Router = Sourced & { readonly step: number };

/** A CNC router. mm, mm/min, 1/min. What is kept clear stands on its bed, from where it is zeroed. */
export type Cnc = Sourced &
  KeptClear & {
    readonly length: number;
    readonly width: number;
    /** Left between parts beside the bit's own width. */
    readonly clearance: number;
    /** How far the spindle moves up and down. */
    readonly travel: number;
    /** Above the sheet's top; nothing stands in the way up there. */
    readonly "safe height": number;
    /** Where the machine's z is zeroed. */
    readonly zero: "bed" | "sheet top";
    readonly feed: { readonly least: number; readonly most: number };
    /** Fastest straight down into the board. */
    readonly plunge: number;
    /** Between cuts; for the estimate of time. */
    readonly rapid: number;
    readonly rpm: { readonly least: number; readonly most: number };
    /** A light machine bears this share of the chip that a rigid one takes. */
    readonly "chip share": number;
    /** Bits by their place in the machine's own table; others are numbered in the order of use. */
    readonly tools: Readonly<Record<string, number>>;
    readonly direction: "climb" | "conventional";
    /** What holds a part until it is cut out of the sheet: tabs, or a skin left below and trimmed by hand. */
    readonly hold: "tabs" | "skin";
    /** Whether work on a part's second side is a second setup, in register by pins, or left to the hand router. */
    readonly "second side": "pins" | "hand";
    /** Whether each part's number is engraved into the side that lies up, as it leaves the machine among others like it. */
    readonly numbers: "none" | "engraved";
    readonly controller: Controller;
  };

/** A guide bush for the hand router. mm. */
export type Bush = Sourced & {
  /** Outside diameter of the barrel: what runs along the template. */
  readonly d: number;
  /** Inside diameter: the bit goes through it. */
  readonly bore: number;
  /** How far the barrel stands below the router's base: a template is at least this thick. */
  readonly stands: number;
};

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
  readonly dxf: DxfFormat;
  readonly saw: Saw;
  readonly "track saw"?: TrackSaw;
  readonly router: Router;
  readonly cnc?: Cnc;
  /** What is left over goes to the rack from this size on; absent: as the rules say. mm. */
  readonly "least offcut"?: { readonly length: number; readonly width: number };
  readonly boards: Readonly<Record<string, BoardStock>>;
  readonly bits: Readonly<Record<string, Bit>>;
  readonly bushes: Readonly<Record<string, Bush>>;
  readonly inserts: Readonly<Record<string, ThreadedInsert>>;
  readonly bolts: Readonly<Record<string, Bolt>>;
  readonly screws: Readonly<Record<string, Screw>>;
  readonly coverings: Readonly<Record<string, CoveringStock>>;
};
