import { below, type Finding, mm, type Origin, type Outcome, raise, text } from "../../../input/finding.js";
import { formatNumber } from "../../../input/number.js";
import type { Around, Built } from "../../../model/piece.js";
import type { Bolt } from "../../../model/shop.js";
import { boltName } from "../../../shop/boltName.js";
import { noBoltLength, noInsertForThread } from "../../common/boltFindings.js";
import { boltLengths, type Grip, stockLength } from "../../common/boltLength.js";
import type { EnclosureSpec } from "../schema.js";
import { coveringOn } from "../shape.js";
import type { Hatch } from "./hatch/hatch.js";
import { clampedOf, type GasketSpec, looseOf } from "./keys.js";
import { battensOf, gasketLength, type Removable } from "./removable.js";
import type { Seated } from "./seated.js";

/** What is bolted on a gasket: with which bolt, into which insert. */
type OnGasket = {
  readonly bolt: Bolt | undefined;
  readonly insert: Seated | undefined;
  readonly from: Origin;
  readonly spec: { readonly with: string; readonly insert?: string | undefined; readonly gasket: GasketSpec };
};

/** The bolt of a panel as it is bought, or why there is none: it starts with the gasket loose and does not bottom. */
export function boltToBuy(removable: Removable, spec: EnclosureSpec, around: Around): Outcome<string> {
  const { face } = removable;
  const covering = spec.covered && around.job.coverings[spec.covered.with];
  const isCovered = coveringOn(spec, face, around) > 0;
  const { thickness } = face.panel;
  return boltThrough(removable, around, {
    loose: thickness + (isCovered ? (covering?.thick ?? 0) : 0),
    tight: thickness + (isCovered ? (covering?.clamped ?? 0) : 0),
  });
}

/** The same for a hatch's cover, which is bare. */
export function hatchBolt(hatch: Hatch, around: Around): Outcome<string> {
  const { thickness } = hatch.board;
  return boltThrough(hatch, around, { loose: thickness, tight: thickness });
}

function boltThrough({ bolt, insert, from, spec }: OnGasket, { id }: Around, board: Grip): Outcome<string> {
  // a name that is not known is told already
  if (bolt === undefined) return { value: undefined, findings: [] };
  if (insert === undefined) {
    const at = [below(from, spec.insert === undefined ? "with" : "insert")];
    return refused(raise(noInsertForThread, { at, on: [id], facts: { thread: text(bolt.thread) } }));
  }
  const range = boltLengths(bolt, insert.row, {
    loose: board.loose + looseOf(spec.gasket),
    tight: board.tight + clampedOf(spec.gasket),
  });
  const length = stockLength(bolt, range);
  if (length !== undefined) return { value: boltName(spec.with, bolt.thread, length), findings: [] };
  const facts = { bolt: text(spec.with), least: mm(range.least), most: mm(range.most) };
  return refused(raise(noBoltLength, { at: [below(from, "with")], on: [id], facts }));
}

const refused = (finding: Finding): Outcome<string> => ({ value: undefined, findings: [finding] });

/** Bolts, inserts and gasket of a panel. */
export function boltedBuys(removable: Removable, fastener: string | undefined): Built["buys"] {
  const { insert, spec } = removable;
  const count = battensOf(removable).reduce((sum, { bolts }) => sum + bolts.length, 0);
  return [
    ...counted(fastener, count),
    ...counted(insert && `${insert.name} threaded insert`, count),
    ...gasketOfLength(spec.gasket, gasketLength(removable)),
  ];
}

/** Bolts and gasket of a hatch; its inserts are the box's own. */
export function hatchBuys({ bolts, spec, overlap }: Hatch, fastener: string | undefined): Built["buys"] {
  const around = 2 * (spec.size[0] + spec.size[1] + 2 * overlap);
  return [...counted(fastener, bolts.length), ...gasketOfLength(spec.gasket, around)];
}

const counted = (item: string | undefined, count: number): Built["buys"] =>
  item === undefined || count === 0 ? [] : [{ item, count }];

function gasketOfLength(gasket: GasketSpec, length: number): Built["buys"] {
  const [clamped, loose] = [clampedOf(gasket), looseOf(gasket)].map((size) => formatNumber(size, 1));
  const item = `gasket, closed-cell, ${loose} mm loose, ${clamped} mm clamped`;
  return length === 0 ? [] : [{ item, count: Math.ceil(length / 100) / 10, unit: "m" }];
}
