import { all, type Finding, type FindingDef, list, type Origin, raise, text } from "../input/finding.js";
import { nearest } from "../input/nearest.js";
import { type PieceId, pieceId } from "../model/ids.js";
import type { Job } from "../model/job.js";
import type { PieceKind, Reference } from "../model/piece.js";
import type { Shop } from "../model/shop.js";

export const unknownName: FindingDef = {
  code: "unknown-name",
  severity: "error",
  words: "there is no {what} called {found}",
  next: "{hint}",
  explain:
    "Pieces, drivers, boards, coverings, lines, obstacles and sides are mentioned by the names that the job file gives them; stock, bolts and inserts by the names in the shop file.",
};

export const circle: FindingDef = {
  code: "pieces-in-a-circle",
  severity: "error",
  words: "these pieces lean on each other in a circle: {pieces}",
  next: "give one of them its place in numbers instead of by another piece",
  explain: "A piece is planned after the pieces it mentions. Where they mention each other there is no first one.",
};

export const leansOnWithheld: FindingDef = {
  code: "leans-on-withheld",
  severity: "error",
  words: "{piece} is withheld, because {other} is",
  next: "put {other} right first",
  explain:
    "A piece that has a mistake in it is withheld, and with it the pieces that take their place or size from it.",
};

export const referenceFindings: readonly FindingDef[] = [unknownName, circle, leansOnWithheld];

/** A piece of the job with its kind. */
export type Named = {
  readonly id: PieceId;
  readonly kind: PieceKind;
  readonly spec: { readonly kind: string };
  readonly origin: Origin;
  readonly refs: readonly Reference[];
};

/** Pieces in an order in which each comes after those it mentions, and those that must be left out. */
export type Order = {
  readonly pieces: readonly Named[];
  readonly withheld: readonly PieceId[];
  readonly findings: readonly Finding[];
};

/** Looks up every name that the pieces and boards mention, and puts the pieces in order. */
export function orderOf(job: Job, shop: Shop, kinds: readonly PieceKind[]): Order {
  const named = namedPieces(job, kinds);
  const boards = boardFindings(job, shop);
  const unknown = named.flatMap((piece) => piece.refs.flatMap((ref) => unknownFindings(ref, piece.id, job, shop)));
  const misled = new Set(unknown.flatMap((finding) => finding.on));
  const badBoards = new Set(boards.flatMap((finding) => finding.on));
  const good = named.filter(
    (piece) => !misled.has(piece.id) && !piece.refs.some((ref) => ref.kind === "board" && badBoards.has(ref.name)),
  );
  const sorted = sortByLeaning(good);
  const kept = new Set(sorted.pieces.map((piece) => piece.id));
  return {
    pieces: sorted.pieces,
    withheld: named.filter((piece) => !kept.has(piece.id)).map((piece) => piece.id),
    findings: [...boards, ...unknown, ...sorted.findings],
  };
}

function namedPieces(job: Job, kinds: readonly PieceKind[]): readonly Named[] {
  return Object.entries(job.pieces).flatMap(([name, spec]) => {
    const kind = kinds.find((candidate) => candidate.kind === spec.kind);
    if (kind === undefined) return [];
    const origin: Origin = { file: job.file, path: ["pieces", name] };
    return [{ id: pieceId(name), kind, spec, origin, refs: kind.refs(spec, origin) }];
  });
}

/** Names that a reference of this kind may use. A withheld piece is known: what leans on it is told why it is missing. */
function namesOf(kind: Reference["kind"], job: Job, shop: Shop): readonly string[] {
  const tables: Readonly<Record<Reference["kind"], readonly string[]>> = {
    piece: [...Object.keys(job.pieces), ...job.withheld],
    driver: Object.keys(job.drivers),
    board: Object.keys(job.boards),
    covering: Object.keys(job.coverings),
    line: Object.keys(job.space.lines),
    obstacle: Object.keys(job.space.obstacles),
    side: job.space.sides,
    bolt: Object.keys(shop.bolts),
    insert: Object.keys(shop.inserts),
  };
  return tables[kind];
}

/** Something named that was left out for a mistake of its own is known, but not there: that mistake is told already. */
function isUnread(ref: Reference, job: Job): boolean {
  return job.unread?.some(({ kind, name }) => kind === ref.kind && name === ref.name) ?? false;
}

function unknownFindings(ref: Reference, on: string, job: Job, shop: Shop): readonly Finding[] {
  if (isUnread(ref, job)) {
    return [
      raise(leansOnWithheld, {
        at: [ref.at],
        on: [on],
        facts: { piece: text(on), other: text(`${ref.kind} ${ref.name}`) },
      }),
    ];
  }
  const known = namesOf(ref.kind, job, shop);
  return known.includes(ref.name) ? [] : [raiseUnknown(ref.kind, ref.name, known, ref.at, on)];
}

function boardFindings(job: Job, shop: Shop): readonly Finding[] {
  const known = Object.keys(shop.boards);
  return Object.entries(job.boards).flatMap(([name, board]) => {
    if (known.includes(board.stock)) return [];
    const at: Origin = { file: job.file, path: ["boards", name, "stock"] };
    return [raiseUnknown("board in the shop file", board.stock, known, at, name)];
  });
}

function raiseUnknown(what: string, found: string, known: readonly string[], at: Origin, on: string): Finding {
  const close = nearest(found, known);
  const hint = close ? `did you mean ${close}?` : known.length > 0 ? "use one of those below" : `add one to the job`;
  return raise(unknownName, {
    at: [at],
    on: [on],
    facts: { what: text(what), found: text(found), hint: text(hint), allowed: list(known) },
  });
}

/** Kahn's way: take what leans on nothing that is left; the file's order decides among equals. */
function sortByLeaning(named: readonly Named[]): { pieces: readonly Named[]; findings: readonly Finding[] } {
  const pieces: Named[] = [];
  const findings: Finding[] = [];
  let left = [...named];
  for (;;) {
    const done = new Set<string>(pieces.map((piece) => piece.id));
    const ready = left.find((piece) => leanedOn(piece).every((name) => done.has(name)));
    if (ready === undefined) break;
    pieces.push(ready);
    left = left.filter((piece) => piece !== ready);
  }
  const stuck = new Set<string>(left.map((piece) => piece.id));
  const inCircle = left.filter((piece) => reaches(piece.id, piece.id, left));
  if (inCircle.length > 0) {
    findings.push(
      raise(circle, {
        at: inCircle.flatMap(
          (piece) => piece.refs.find((ref) => ref.kind === "piece" && stuck.has(ref.name))?.at ?? piece.origin,
        ),
        on: inCircle.map((piece) => piece.id),
        facts: { pieces: all(inCircle.map((piece) => piece.id)) },
      }),
    );
  }
  for (const piece of left.filter((candidate) => !inCircle.includes(candidate))) {
    const ref = piece.refs.find((candidate) => candidate.kind === "piece" && !isDone(candidate.name, pieces));
    findings.push(leaning(piece, ref?.name ?? "", ref?.at ?? piece.origin));
  }
  return { pieces, findings };
}

/** Says that a piece is withheld since another is. */
export function leaning(piece: Named, other: string, at: Origin): Finding {
  return raise(leansOnWithheld, { at: [at], on: [piece.id], facts: { piece: text(piece.id), other: text(other) } });
}

/** The pieces that a piece mentions. */
export function leanedOn(piece: Named): readonly string[] {
  return piece.refs.filter((ref) => ref.kind === "piece").map((ref) => ref.name);
}

function isDone(name: string, pieces: readonly Named[]): boolean {
  return pieces.some((piece) => piece.id === name);
}

function reaches(from: string, goal: string, among: readonly Named[], seen = new Set<string>()): boolean {
  const piece = among.find((candidate) => candidate.id === from);
  if (piece === undefined || seen.has(from)) return false;
  seen.add(from);
  return leanedOn(piece).some((name) => name === goal || reaches(name, goal, among, seen));
}
