import { all, type Finding, type FindingDef, mm, type Origin, raise, text } from "../../input/finding.js";
import type { NestedSheet } from "../../model/build.js";
import type { Job } from "../../model/job.js";
import type { Part } from "../../model/part.js";
import type { BevelCut, RipList, SawnPiece } from "../../model/rip.js";
import type { Shop } from "../../model/shop.js";
import { nameOf } from "../../plan/standing.js";
import type { NestItem, NestStock } from "../engine.js";
import { excessOf, liesOf } from "../lies.js";
import { usableOf } from "../rectangles/ground.js";
import { blankAlong, impossibleSides, takenOf } from "./bevels.js";
import { blankSize } from "./blankSize.js";
import { fromRack } from "./cutDown.js";
import { type Sawing, sawingOf, widestKerf } from "./sawing.js";
import { splitsHeld } from "./splitsHeld.js";

export const partUnderKerf: FindingDef = {
  code: "part-under-kerf",
  severity: "error",
  words: "{part} is {width} wide, and the blade takes {kerf}: it cannot be sawn",
  next: "make it wider, plane it from a wider strip at the bench, or cut it by another method",
  explain:
    "A strip narrower than the blade has nothing to hold it: it is drawn into the gap beside the blade and thrown. The part " +
    "is left out of the nest; everything else is laid.",
};

export const pieceTooSmall: FindingDef = {
  code: "piece-too-small",
  severity: "error",
  words:
    "{parts} {fit} only what is too small to be held at the saw: a piece is at least {length} long and {width} wide until its last cut",
  next: "add a larger offcut or a sheet size to the shop file, or cut them by hand",
  explain:
    "Short and narrow parts are cut last, from a longer strip, so that hands stay away from the blade and the piece lies " +
    "firmly along the fence. Where the rack holds nothing large enough the part is left out.",
};

export const stripTooNarrow: FindingDef = {
  code: "strip-too-narrow",
  severity: "warning",
  words: "{parts} can only be cross-cut from a strip less than {width} wide, which is hard to hold",
  next: "clamp the strip to the sled and cut them last, or make them at least {width} one way",
  explain:
    "What is small both ways is ripped to a narrow strip first and cut to length from it. The strip stays long until the " +
    "last cut; fingers hold it by a clamp or a hold-down, never beside the blade.",
};

export const cutOverSaw: FindingDef = {
  code: "cut-over-saw",
  severity: "warning",
  words: "{count} of sheet {sheet} {are} beyond the reach of the saws, of pieces up to {length} x {width}",
  next: "have the sheet cut down where it is bought, or describe a track saw with a track long enough in the shop file",
  explain:
    "The fence reaches so far from the blade, the sled takes so long a cut, the track is so long. What is beyond all of " +
    "them, or larger than one person brings to the saw, needs another way; the layout itself is sound.",
};

export const bevelTooSmall: FindingDef = {
  code: "bevel-too-small",
  severity: "warning",
  words:
    "{parts} {are} less than {length} long or {width} wide when a bevel is cut, which is hard to hold at a tilted blade",
  next: "hold it as the rip list says, make it longer, or leave the bevel to the hand router or a plane",
  explain:
    "What parts share along a strip is bevelled before the strip is cut to length. A bevel across the strip, or one that the " +
    "strip's other parts do not have, is cut along the part alone. A small part tips at a tilted blade, and what holds it is " +
    "near: the rip list says how each is held.",
};

export const bevelOverSaw: FindingDef = {
  code: "bevel-over-saw",
  severity: "warning",
  words: "the bevel of {parts} is beyond the reach of the saws",
  next: "plane it, or describe a track saw with a track long enough in the shop file",
  explain:
    "A bevel is cut with the part against the fence, on the sled or along the track. What is beyond all of them, or larger " +
    "than one person brings to the table saw where there is no track, needs another way.",
};

export const bevelTakesAll: FindingDef = {
  code: "bevel-takes-all",
  severity: "error",
  words: "{part} is {width} across, and its bevels take {less} of its {side}: nothing of that side is left",
  next: "make it wider, or tilt its bevels less",
  explain:
    "A bevel makes one side of the board narrower by the thickness times the tangent of its tilt, two bevels twice that. Where " +
    "nothing is left of that side the part has no size to set a fence to, and no edge to lie on. Its bevels are left out of " +
    "the rip list; everything else is laid.",
};

export const sawFindings: readonly FindingDef[] = [
  partUnderKerf,
  pieceTooSmall,
  stripTooNarrow,
  cutOverSaw,
  bevelTooSmall,
  bevelOverSaw,
  bevelTakesAll,
];

/** Findings for bevels of parts that are hard to hold, beyond the saws, or beyond the part itself. */
export function bevelTroubles(shop: Shop, parts: readonly Part[], rips: RipList | undefined): readonly Finding[] {
  const { hold } = sawingOf(shop);
  const withTrouble = (trouble: BevelCut["trouble"]) =>
    parts.filter(({ id }) =>
      rips?.bevels.some((bevel) => bevel.trouble === trouble && bevel.edges.some(({ part }) => part === id)),
    );
  const about = (some: readonly Part[]) => ({ at: placesOf(some), on: some.map((part) => part.id) });
  const [small, far] = [withTrouble("small"), withTrouble("reach")];
  const held = { length: mm(hold.length), width: mm(hold.width), are: text(small.length === 1 ? "is" : "are") };
  return [
    ...parts.flatMap((part) => takesAll(part)),
    ...(small.length > 0
      ? [raise(bevelTooSmall, { ...about(small), facts: { parts: all(small.map(nameOf)), ...held } })]
      : []),
    ...(far.length > 0 ? [raise(bevelOverSaw, { ...about(far), facts: { parts: all(far.map(nameOf)) } })] : []),
  ];
}

/** The finding for a part that its bevels leave nothing of on one side. */
function takesAll(part: Part): readonly Finding[] {
  const [side] = impossibleSides(part);
  if (side === undefined) return [];
  const facts = {
    part: text(nameOf(part)),
    width: mm(blankAlong(side).across),
    less: mm(takenOf(side)),
    side: text(side.bevel > 0 ? "back" : "face"),
  };
  return [raise(bevelTakesAll, { at: part.from, on: [part.id], facts })];
}

/** The finding for a part that the blade is wider than. */
export function underKerf(shop: Shop, part: Part, item: NestItem): readonly Finding[] {
  const kerf = widestKerf(sawingOf(shop));
  const width = Math.min(...liesOf(item).flatMap(({ w, h }) => [w, h]));
  if (width > kerf) return [];
  const facts = { part: text(nameOf(part)), width: mm(width), kerf: mm(kerf) };
  return [raise(partUnderKerf, { at: part.from, on: [part.id], facts })];
}

/** Whether an item that found no place would have one, were it not for the hands that hold it. */
export function isTooSmallToHold(item: NestItem, stock: readonly NestStock[], sawing: Sawing): boolean {
  const lies = liesOf(item);
  const fits = stock.flatMap((row) => lies.filter((lie) => excessOf([lie], row) <= 0).map((lie) => ({ row, lie })));
  return fits.length > 0 && fits.every(({ row, lie }) => !canHold(row, blankSize(lie, item, sawing), sawing));
}

function canHold(row: NestStock, { w, h }: { readonly w: number; readonly h: number }, sawing: Sawing): boolean {
  const kerf = widestKerf(sawing);
  const whole = usableOf(row, kerf);
  const splits = splitsHeld(whole, row.trim, kerf, sawing);
  return splits(whole, Math.min(w + kerf, whole.w), Math.min(h + kerf, whole.h)).length > 0;
}

/** The finding for parts of a board that nothing large enough to hold is left for. */
export function tooSmallFor(shop: Shop, parts: readonly Part[]): Finding {
  const { hold } = sawingOf(shop);
  return raise(pieceTooSmall, {
    at: placesOf(parts),
    on: parts.map((part) => part.id),
    facts: {
      parts: all(parts.map(nameOf)),
      fit: text(parts.length === 1 ? "fits" : "fit"),
      length: mm(hold.length),
      width: mm(hold.width),
    },
  });
}

/** Findings for the cuts of sheets that are hard to hold, or beyond the saws. */
export function cutTroubles(job: Job, shop: Shop, sheets: readonly NestedSheet[], parts: readonly Part[]): Finding[] {
  const sawing = sawingOf(shop);
  const { hold } = sawing;
  return sheets.flatMap((each): Finding[] => {
    const { sheet, board } = each;
    const sawn = fromRack(each, sawing);
    if (!sawn) return [];
    const small = partsBelow(sawn, "small");
    const narrow = parts.filter(({ id }) => small.has(id));
    const far = cutsWith(sawn, "reach");
    const at = [{ file: job.file, path: ["boards", board] }];
    return [
      ...(narrow.length > 0
        ? [
            raise(stripTooNarrow, {
              at: placesOf(narrow),
              on: narrow.map((part) => part.id),
              facts: { parts: all(narrow.map(nameOf)), width: mm(hold.width) },
            }),
          ]
        : []),
      ...(far.length > 0
        ? [
            raise(cutOverSaw, {
              at,
              on: [sheet],
              facts: {
                sheet: text(sheet),
                count: text(far.length === 1 ? "a cut" : `${far.length} cuts`),
                are: text(far.length === 1 ? "is" : "are"),
                length: mm(Math.max(...far.map((piece) => Math.max(piece.length, piece.width)))),
                width: mm(Math.max(...far.map((piece) => Math.min(piece.length, piece.width)))),
              },
            }),
          ]
        : []),
    ];
  });
}

/** Where the job speaks of them, each place once. */
function placesOf(parts: readonly Part[]): readonly Origin[] {
  const places = parts.flatMap((part) => part.from);
  return places.filter((at, i) => places.findIndex((other) => sameOrigin(at, other)) === i);
}

const sameOrigin = (a: Origin, b: Origin) => a.file === b.file && a.path.join("\n") === b.path.join("\n");

/** Pieces whose own cut has such a trouble. */
function cutsWith(piece: SawnPiece, trouble: "small" | "reach"): readonly SawnPiece[] {
  const { cut } = piece;
  if (!cut) return [];
  const below = [cut.off, cut.rest].flatMap((each) => (each ? cutsWith(each, trouble) : []));
  return cut.trouble === trouble ? [piece, ...below] : below;
}

/** The parts that come out of pieces whose cut has such a trouble. */
function partsBelow(piece: SawnPiece, trouble: "small" | "reach"): ReadonlySet<string> {
  const leaves = ({ part, cut }: SawnPiece): readonly string[] => [
    ...(part === undefined ? [] : [part]),
    ...[cut?.off, cut?.rest].flatMap((each) => (each ? leaves(each) : [])),
  ];
  return new Set(cutsWith(piece, trouble).flatMap(leaves));
}
