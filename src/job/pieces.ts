import { z } from "zod";
import type { Door } from "../input/door.js";
import { below, type FindingDef, list, type Origin, type Outcome, raise, text } from "../input/finding.js";
import { readWith } from "../input/issues.js";
import { nearest } from "../input/nearest.js";
import { asWritten } from "../input/refusal.js";
import type { PieceSpec } from "../model/job.js";
import type { PieceKind } from "../model/piece.js";

export const unknownKind: FindingDef = {
  code: "unknown-kind",
  severity: "error",
  words: "there is no kind of piece called {found}[; did you mean {nearest}?]",
  next: "use {allowed}; a panel is the way out where no other kind fits",
  explain: "The kind of a piece says which keys it takes and how its parts are made.",
};

export const noPieces: FindingDef = {
  code: "no-pieces",
  severity: "warning",
  words: "the job has no pieces, so there is nothing to make",
  next: "add a piece below pieces:",
  explain: "The space can be checked by itself, but parts come from the pieces.",
};

const anyPiece = z.looseObject({ kind: z.string() });

/** Reads one piece with its own kind's schema. */
export function readPiece(entry: unknown, at: Origin, kinds: readonly PieceKind[], door: Door): Outcome<PieceSpec> {
  const piece = readWith(anyPiece, entry, at);
  if (piece.value === undefined) return { value: undefined, findings: piece.findings };
  const found = piece.value.kind;
  const kind = kinds.find((known) => known.kind === found);
  if (kind === undefined) {
    const known = kinds.map((each) => each.kind);
    const close = nearest(found, known);
    const facts = { found: text(asWritten(found)), allowed: list(known), ...(close && { nearest: text(close) }) };
    return { value: undefined, findings: [raise(unknownKind, { at: [below(at, "kind")], facts })] };
  }
  const { value, findings } = readWith(kind.schema(door), entry, at);
  return { value: isSpec(value) ? value : undefined, findings };
}

function isSpec(value: unknown): value is PieceSpec {
  return typeof value === "object" && value !== null && "kind" in value && typeof value.kind === "string";
}
