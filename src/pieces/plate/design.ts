import { difference, intersection } from "../../geometry/boolean.js";
import { edgeDistance } from "../../geometry/distance.js";
import { type Frame, shifted } from "../../geometry/frame.js";
import { pointInRegion } from "../../geometry/inside.js";
import { areaOfRegion, eachEdge } from "../../geometry/measure.js";
import type { Point, Region } from "../../geometry/profile.js";
import { circle } from "../../geometry/shapes.js";
import type { Doubt } from "../../geometry/sure.js";
import type { Job } from "../../model/job.js";
import { onceForThree } from "../../model/once.js";
import type { Around } from "../../model/piece.js";
import type { Bolt, Shop, ThreadedInsert } from "../../model/shop.js";
import { insertsFor } from "../../shop/lookups.js";
import { rules } from "../../shop/rules.js";
import { type Bearing, bearingOf } from "./bearing.js";
import { boltPlaces } from "./boltPlaces.js";
import { coveringOf, type PlateCovering } from "./covering.js";
import { notchRegion } from "./notch.js";
import { type Opening, openingName, openingOf } from "./opening.js";
import { plateOutline } from "./outline.js";
import { bearerOf, type NotchSpec, notchesOf, type PlateSpec } from "./schema.js";

export type Notch = { readonly spec: NotchSpec; readonly region: Region };

/** A plate worked out as far as others must know it: its shape as cut, and how high it lies. */
export type Design = {
  readonly thickness: number;
  readonly covering: PlateCovering | undefined;
  /** How many pieces the outline falls into; the plate is made where it is one. */
  readonly pieces: number;
  readonly outline: Region;
  readonly notches: readonly Notch[];
  /** Shapes of it that are not to be trusted. */
  readonly doubts: readonly { readonly what: string; readonly doubt: Doubt }[];
  readonly opening: Opening | undefined;
  /** Outline less notches and opening, without bolt holes. */
  readonly body: readonly Region[];
  /** How far the covering wrapped under it lifts the plate off its bearer, mm. */
  readonly lift: number;
  /** The plate's frame in the vehicle: x and y are the vehicle's, z = 0 is its face on the bare board. */
  readonly stands: Frame;
};

/** A plate with its bolts: only what asks for threads, and what builds it, needs them. */
export type Bolted = Design & { readonly bolts: Bolts | undefined };

export type Bolts = {
  readonly to: string;
  readonly name: string;
  readonly row: Bolt;
  readonly insertName: string | undefined;
  readonly insert: ThreadedInsert | undefined;
  readonly bearing: Bearing;
  readonly places: readonly Point[];
};

/**
 * Works a plate out. Its offers, asks and parts are all taken from this one answer, so that they cannot disagree. What is
 * moved is guarded; what is cut out is not, here where the solver asks again and again: the part made of it is
 * (`makePart`), and where bolts stand is checked in the plan.
 */
export function designOf(spec: PlateSpec, around: Around): Design {
  const { thickness } = around.board(spec.board);
  const { covering, outlines, notches, notched, doubts } = groundworkOf(spec, around.job, around.shop);
  const outline: Region = { outer: outlines[0] ?? [], holes: [] };
  const opening = openingOf(spec, covering, around);
  const body = notched.flatMap((region) => (opening ? difference(region, [opening.region]) : [region]));
  const bearer = bearerOf(spec);
  const bearing = bearer === undefined ? undefined : bearingOf(bearer, around);
  const lift = covering && bearing ? liftOver(bearing, body, covering) : 0;
  const bottom = typeof spec.height === "number" ? spec.height : (bearing?.z ?? 0);
  return {
    thickness,
    covering,
    pieces: outlines.length,
    outline,
    notches,
    doubts,
    opening,
    body,
    lift,
    stands: shifted(0, 0, bottom + lift + thickness),
  };
}

/** The part of a plate that leans on no other piece: worked out once, however often the solver asks. */
const groundworkOf = onceForThree((spec: PlateSpec, job: Job, shop: Shop) => {
  const covering = coveringOf(spec, job, shop);
  const made = plateOutline(spec, covering, job);
  const outlines = made.value?.map(({ outer }) => outer) ?? [];
  const cutOuts = notchesOf(spec).map((notch) => ({ spec: notch, made: notchRegion(notch, covering, job) }));
  const notches = cutOuts.flatMap(({ spec: notch, made: cut }) =>
    (cut?.value ?? []).map((region): Notch => ({ spec: notch, region })),
  );
  const doubts = [
    ...(made.doubt ? [{ what: "the outline", doubt: made.doubt }] : []),
    ...cutOuts.flatMap(({ spec: notch, made: cut }) =>
      cut?.doubt ? [{ what: `the notch round ${notch.around}`, doubt: cut.doubt }] : [],
    ),
  ];
  const [outer, ...others] = outlines;
  const notched =
    outer === undefined || others.length > 0
      ? []
      : difference(
          { outer, holes: [] },
          notches.map((notch) => notch.region),
        );
  return { covering, outlines, notches, notched, doubts };
});

export function boltedOf(spec: PlateSpec, around: Around): Bolted {
  const design = designOf(spec, around);
  return { ...design, bolts: boltsOf(spec, design, around) };
}

/** The covering wrapped to the back lifts the plate by its clamped thickness, where that band lies on the bearer. */
function liftOver({ outline }: Bearing, body: readonly Region[], covering: PlateCovering): number {
  if (covering.back === "rebate" || covering.wrap === 0) return 0;
  let bears = false;
  for (const loop of body.flatMap((region) => [region.outer, ...region.holes])) {
    eachEdge(loop, (a, b) => {
      if (bears || !covering.over(a.by)) return;
      bears = pointInRegion(outline, a);
      eachEdge(outline.outer, (c, d) => {
        bears ||= edgeDistance(a, b, c, d) < covering.wrap;
      });
    });
  }
  return bears ? covering.clamped : 0;
}

/**
 * The plate's bolts: places along the overlap with what it is bolted to, clear of the opening by what a block needs.
 * Nothing where the plate is not bolted, or a name is not known (the references say so).
 */
function boltsOf(spec: PlateSpec, { body, opening }: Design, around: Around): Bolts | undefined {
  const bolted = spec.bolted;
  const row = bolted && around.shop.bolts[bolted.with];
  const bearing = bolted && bearingOf(bolted.to, around);
  if (bolted === undefined || row === undefined || bearing === undefined) return undefined;
  const [insertName, insert] = chooseInsert(bolted.insert, row, around);
  const overlap = body.flatMap((region) => intersection(bearing.outline, { outer: region.outer, holes: [] }));
  const [area] = [...overlap].sort((a, b) => areaOfRegion(b) - areaOfRegion(a));
  const room = rules.blockSide.value / 2;
  const keepOut = opening ? [{ outer: circle(opening.centre, opening.radius + room, openingName), holes: [] }] : [];
  const places = area ? boltPlaces(area, bolted["set in"], bolted.count, keepOut) : [];
  return { to: bolted.to, name: bolted.with, row, insertName, insert, bearing, places };
}

/** The insert that the job names, or the longest on hand for the bolt's thread: the more thread the better in MDF. */
function chooseInsert(
  named: string | undefined,
  bolt: Bolt,
  { shop }: Around,
): readonly [string | undefined, ThreadedInsert | undefined] {
  if (named !== undefined) return [named, shop.inserts[named]];
  const longest = insertsFor(shop, bolt.thread).at(-1);
  return [longest?.name, longest?.insert];
}
