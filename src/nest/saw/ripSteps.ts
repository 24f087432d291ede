import type { RipCut, RipPiece } from "../../model/rip.js";

/** Cuts that are made one after another from one piece with one setting: what one does at one go. */
export type RipStep = Pick<
  RipCut,
  "sheet" | "saw" | "way" | "along" | "setting" | "kerf" | "fresh" | "upright" | "piece" | "edge"
> & {
  readonly cuts: readonly RipCut[];
  readonly off: readonly RipPiece[];
  readonly rest?: RipPiece;
};

/** The steps of a list, in its order. */
export function ripSteps(cuts: readonly RipCut[]): readonly RipStep[] {
  const runs: RipCut[][] = [];
  for (const cut of cuts) {
    const run = runs.at(-1);
    const before = run?.at(-1);
    if (run && before && goesOn(before, cut)) run.push(cut);
    else runs.push([cut]);
  }
  return runs.map(stepOf);
}

/** To a line along the track it is the same at either side of the piece: which one is longer may change on the way. */
const goesOn = (before: RipCut, { number, fresh, saw, way, piece }: RipCut): boolean =>
  !fresh &&
  number === before.number + 1 &&
  saw === before.saw &&
  (saw === "track" || way === before.way) &&
  piece.name === before.rest?.name;

function stepOf(cuts: readonly RipCut[]): RipStep {
  const first = cuts[0]!;
  const { sheet, saw, way, along, setting, kerf, fresh, upright, piece, edge } = first;
  const rest = cuts.at(-1)?.rest;
  const off = cuts.flatMap((cut) => cut.off ?? []);
  const odd = { ...(upright && { upright }), ...(edge !== undefined && { edge }) };
  return { sheet, saw, way, along, setting, kerf, fresh, piece, cuts, off, ...(rest && { rest }), ...odd };
}
