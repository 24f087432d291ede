import { below, mm, type Outcome, raise, text } from "../../../input/finding.js";
import { formatNumber } from "../../../input/number.js";
import type { Around, Built } from "../../../model/piece.js";
import { boltName } from "../../../shop/boltName.js";
import { noBoltLength, noInsertForThread } from "../../common/boltFindings.js";
import { boltLengths, stockLength } from "../../common/boltLength.js";
import type { EnclosureSpec } from "../schema.js";
import { coveringOn } from "../shape.js";
import { clampedOf, looseOf } from "./keys.js";
import { battensOf, gasketLength, type Removable } from "./removable.js";

/** The bolt of a panel as it is bought, or why there is none: it starts with the gasket loose and does not bottom. */
export function boltToBuy(removable: Removable, spec: EnclosureSpec, around: Around): Outcome<string> {
  const { bolt, insert, face, from } = removable;
  const { with: name, gasket } = removable.spec;
  // a name that is not known is told already
  if (bolt === undefined) return { value: undefined, findings: [] };
  if (insert === undefined) {
    const at = [below(from, removable.spec.insert === undefined ? "with" : "insert")];
    const facts = { thread: text(bolt.thread) };
    return { value: undefined, findings: [raise(noInsertForThread, { at, on: [around.id], facts })] };
  }
  const covering = spec.covered && around.job.coverings[spec.covered.with];
  const isCovered = coveringOn(spec, face, around) > 0;
  const { thickness } = face.panel;
  const range = boltLengths(bolt, insert.row, {
    loose: thickness + looseOf(gasket) + (isCovered ? (covering?.thick ?? 0) : 0),
    tight: thickness + clampedOf(gasket) + (isCovered ? (covering?.clamped ?? 0) : 0),
  });
  const length = stockLength(bolt, range);
  if (length !== undefined) return { value: boltName(name, bolt.thread, length), findings: [] };
  const facts = { bolt: text(name), least: mm(range.least), most: mm(range.most) };
  return {
    value: undefined,
    findings: [raise(noBoltLength, { at: [below(from, "with")], on: [around.id], facts })],
  };
}

/** Bolts, inserts and gasket of a panel. */
export function boltedBuys(removable: Removable, fastener: string | undefined): Built["buys"] {
  const { insert, spec } = removable;
  const count = battensOf(removable).reduce((sum, { bolts }) => sum + bolts.length, 0);
  const metres = Math.ceil(gasketLength(removable) / 100) / 10;
  const [clamped, loose] = [clampedOf(spec.gasket), looseOf(spec.gasket)].map((size) => formatNumber(size, 1));
  return [
    ...(fastener === undefined || count === 0 ? [] : [{ item: fastener, count }]),
    ...(insert === undefined || count === 0 ? [] : [{ item: `${insert.name} threaded insert`, count }]),
    ...(metres > 0
      ? [{ item: `gasket, closed-cell, ${loose} mm loose, ${clamped} mm clamped`, count: metres, unit: "m" }]
      : []),
  ];
}
