import { areaOf } from "../../geometry/measure.js";
import type { Air, Around } from "../../model/piece.js";
import { blocksOf, blockVolumeL, threadsOf } from "./backing/blocks.js";
import { entriesOf } from "./mounting/seats.js";
import type { EnclosureSpec } from "./schema.js";
import { type Shape, shapeOf } from "./shape.js";

type Term = Air["terms"][number];

/**
 * How the net volume of the box comes about, term by term, L: gross inside, less the blocks behind inserts, the
 * drivers by their makers' figures, and the terminal. The air in the cut-out is not counted (common practice, no source).
 */
export function volumeTerms(spec: EnclosureSpec, shape: Shape, around: Around): readonly Term[] {
  const { section, from, to } = shape.inside;
  const gross = (areaOf(section) * (to - from)) / 1e6;
  const board = around.board(spec.board).thickness;
  const blocks = blocksOf(threadsOf(around.asks, shape, around.shop), board, shape).map((block, index) => ({
    what: `block ${index + 1}`,
    litres: -blockVolumeL(block),
    shaped: true,
  }));
  const taken = (what: string, litres: number | undefined): readonly Term[] =>
    litres === undefined ? [] : [{ what, litres: -litres, shaped: false }];
  return [
    { what: "gross inside", litres: gross, shaped: true },
    ...blocks,
    ...entriesOf(spec).flatMap(({ name, spec: { is } }) => taken(name, around.job.drivers[is]?.displaces)),
    ...taken("terminal", spec.terminal?.displaces),
  ];
}

/** Wanted net volume minus the one this size reaches, L. */
export function missingVolume(spec: EnclosureSpec, size: number, around: Around): number {
  const reached = volumeTerms(spec, shapeOf(spec, size, around), around).reduce((sum, term) => sum + term.litres, 0);
  return (spec.net ?? reached) - reached;
}
