import type { ZodType } from "zod";
import type { Frame } from "../geometry/frame.js";
import type { Prism } from "../geometry/prism.js";
import type { Region } from "../geometry/profile.js";
import type { Door } from "../input/door.js";
import type { FindingDef, Origin, Outcome, Quantity } from "../input/finding.js";
import type { AxisId, BoardId, PartId, PieceId } from "./ids.js";
import type { Job } from "./job.js";
import type { Axis, Joint } from "./joint.js";
import type { Part } from "./part.js";
import type { Shop } from "./shop.js";

/**
 * What others may lean on, known before any part exists. `stands` is the piece's frame in the vehicle, absent
 * for a piece that is only cut and has no place there; everything else is in the piece's frame. `outlines` lie in the plane of the same name.
 */
export type Offer = {
  readonly stands?: Frame;
  readonly planes: Readonly<Record<string, Frame>>;
  readonly outlines: Readonly<Record<string, Region>>;
  /** Drivers, by the name the piece gives them ("driver"): where they sit and which one it is. */
  readonly drivers: Readonly<Record<string, { readonly is: string; readonly plane: string; readonly at: Frame }>>;
};

/** What one piece asks of another. The host makes what is needed (hole, insert, block) and counts it in its volume. */
export type Ask = {
  readonly of: PieceId;
  readonly by: PieceId;
  readonly from: readonly Origin[];
} & (
  | {
      /** A threaded insert here, set from the outside. `ray` in the vehicle frame, origin on the host's face. */
      readonly kind: "thread";
      readonly axis: AxisId;
      readonly ray: Frame;
      /** The shop's name of the insert. */
      readonly insert: string;
    }
  | {
      /** The driver stands on the asker, this far above the host's face, and its screws go through it. mm. */
      readonly kind: "lift driver";
      readonly driver: string;
      /** The asker's step after which the driver can be put on it. */
      readonly seated: string;
      readonly lift: number;
    }
);

/** Where a driver sits, vehicle frame: origin on its axis in the plane under its frame, z out of the box. */
export type Mount = {
  readonly driver: string;
  readonly piece: PieceId;
  readonly at: Frame;
  readonly from: readonly Origin[];
  /** The name of the air behind it. */
  readonly air?: string;
};

/** Something round about the z axis of its frame, vehicle frame: `d` wide at z = 0, `dTo` wide at z = `length`. mm. */
export type Stretch = { readonly at: Frame; readonly length: number; readonly d: number; readonly dTo: number };

/** Something round that stands in a box and is no part of a board: the tube of a port, a dowel. */
export type Tube = {
  readonly name: string;
  readonly piece: PieceId;
  readonly from: readonly Origin[];
  /** One after the other, from the inside of the wall it begins at. */
  readonly stretches: readonly Stretch[];
  /** Parts that are holed for it and glued round it. */
  readonly through?: readonly PartId[];
  /** Of a port, where its air comes out: z away from the tube. `run`: how far it has run straight, `long`: in all. mm. */
  readonly end?: { readonly at: Frame; readonly d: number; readonly run: number; readonly long: number };
};

/** The air in a port made of panels, which nothing else may enter: its upper side lies at z = 0 of its frame. mm */
export type Channel = {
  readonly name: string;
  readonly piece: PieceId;
  readonly from: readonly Origin[];
  readonly at: Frame;
  readonly region: Region;
  readonly thickness: number;
};

/** A soft ring that is clamped between boards: its upper side lies at z = 0 of its frame. mm, as clamped. */
export type Gasket = { readonly at: Frame; readonly region: Region; readonly thickness: number };

/** One thing to do at the bench, after others. */
export type Step = {
  readonly id: string;
  readonly after: readonly string[];
  readonly parts: readonly PartId[];
  readonly words: string;
  readonly facts: Readonly<Record<string, Quantity>>;
  /** Ids of cautions (lists/cautions). */
  readonly cautions: readonly string[];
};

/**
 * One chamber of air and how its net volume comes about. Terms are signed: gross +, what is taken -. Litres.
 * `shaped`: the term is there in the parts themselves (gross inside, blocks), so solids can measure it; a driver's
 * displacement is a figure from its sheet and is not.
 */
export type Air = {
  readonly name: string;
  readonly wantedL?: number;
  readonly terms: readonly { readonly what: string; readonly litres: number; readonly shaped: boolean }[];
  /** How far the net volume may be off, to either side, L: all causes at their limits, and the root of the sum of squares. */
  readonly spread?: { readonly worst: number; readonly likely: number };
  readonly from: readonly Origin[];
  /** A point inside the air, in the piece's frame. */
  readonly inside: readonly [number, number, number];
  /** The parts around it. */
  readonly walls: readonly PartId[];
  /** Gaskets round it, piece's frame. */
  readonly gaskets?: readonly Gasket[];
  /** Whether a port opens it. */
  readonly ported?: boolean;
};

export type Built = {
  readonly parts: readonly Part[];
  readonly joints: readonly Joint[];
  readonly axes: readonly Axis[];
  readonly mounts: readonly Mount[];
  readonly tubes?: readonly Tube[];
  readonly channels?: readonly Channel[];
  readonly air: readonly Air[];
  readonly steps: readonly Step[];
  readonly buys: readonly { readonly item: string; readonly count: number; readonly unit?: string }[];
};

/** What a piece kind may look at. `offers` and `asks` hold those of the pieces before it and those made of it. */
export type Around = {
  readonly job: Job;
  readonly shop: Shop;
  readonly id: PieceId;
  readonly origin: Origin;
  readonly board: (name: string) => { readonly id: BoardId; readonly thickness: number };
  readonly offers: ReadonlyMap<PieceId, Offer>;
  readonly asks: readonly Ask[];
};

/**
 * One free number. `step` is what a fence can be set to; min and max in mm. `aim`: it is moved until the wanted volume is
 * reached, or as far as the space allows; that asks the piece for its bulk.
 */
export type Free = {
  readonly from: Origin;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly aim: "volume" | "largest";
};

export type Reference = {
  readonly kind: "piece" | "driver" | "board" | "covering" | "line" | "obstacle" | "side" | "bolt" | "insert";
  readonly name: string;
  readonly at: Origin;
};

/**
 * A piece kind is one folder and one line in pieces/kinds.ts. The solver in plan/ repeats offer, ask and miss over the
 * owner of a free size and all that lean on it, and builds once. `size` is the free number, or 0 where there is none.
 */
export type PieceKind<Spec = unknown> = {
  readonly kind: string;
  readonly schema: (door: Door) => ZodType<Spec>;
  readonly findings: readonly FindingDef[];
  /** Every name the piece mentions. Those of kind "piece" set the order in which pieces are planned. */
  refs(spec: Spec, at: Origin): readonly Reference[];
  free(spec: Spec, around: Around): Free | undefined;
  offer(spec: Spec, size: number, around: Around): Outcome<Offer>;
  ask(spec: Spec, size: number, around: Around): Outcome<readonly Ask[]>;
  /** Wanted minus reached, litres, by formula and never by solids. It may jump. */
  miss(spec: Spec, size: number, around: Around): number;
  /** What it takes of the space where it stands, coverings on: vehicle frame. Absent: a piece that others decide the room of. */
  bulk?(spec: Spec, size: number, around: Around): readonly Prism[];
  build(spec: Spec, size: number, around: Around): Outcome<Built>;
};
