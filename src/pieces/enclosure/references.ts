import { extentsOf } from "../../geometry/measure.js";
import { below, type Origin } from "../../input/finding.js";
import type { Around, Free, Reference } from "../../model/piece.js";
import { rules } from "../../shop/rules.js";
import { askedOf } from "./form/asked.js";
import { endNames } from "./form/extrusion.js";
import { depthOf } from "./form/face.js";
import { wayOf } from "./form/profile.js";
import { entriesOf } from "./mounting/seats.js";
import { type EnclosureSpec, sizeNames } from "./schema.js";

/** Every name that an enclosure mentions. */
export function referencesOf(spec: EnclosureSpec, at: Origin): readonly Reference[] {
  const line = spec.stands?.["line up"]?.driver;
  const boards = Object.entries(spec.panels ?? {}).flatMap(([face, own]) =>
    (["board", "double"] as const).flatMap((key): Reference[] => {
      const name = own[key];
      return name === undefined ? [] : [{ kind: "board", name, at: below(at, "panels", face, key) }];
    }),
  );
  return [
    { kind: "board", name: spec.board, at: below(at, "board") },
    ...boards,
    ...innerBoardNames(spec, at),
    ...boltNames(spec, at),
    ...entriesOf(spec).map(({ spec: { is }, path }) => {
      return { kind: "driver" as const, name: is, at: below(at, ...path, "is") };
    }),
    ...(spec.covered ? [{ kind: "covering" as const, name: spec.covered.with, at: below(at, "covered", "with") }] : []),
    ...(line ? [{ kind: "line" as const, name: line, at: below(at, "stands", "line up", "driver") }] : []),
  ];
}

/** The bolts and inserts of what comes off again, and the board of a hatch. */
function boltNames({ panels, hatch }: EnclosureSpec, at: Origin): readonly Reference[] {
  const bolted = Object.entries(panels ?? {}).map(([face, own]) => ({
    from: below(at, "panels", face, "bolted"),
    spec: own.bolted,
  }));
  const names = [...bolted, { from: below(at, "hatch"), spec: hatch }].flatMap(({ from, spec }): Reference[] => {
    if (spec === undefined) return [];
    const insert: Reference[] =
      spec.insert === undefined ? [] : [{ kind: "insert", name: spec.insert, at: below(from, "insert") }];
    return [{ kind: "bolt", name: spec.with, at: below(from, "with") }, ...insert];
  });
  return hatch?.board === undefined
    ? names
    : [...names, { kind: "board", name: hatch.board, at: below(at, "hatch", "board") }];
}

function innerBoardNames(spec: EnclosureSpec, at: Origin): readonly Reference[] {
  return (["dividers", "braces", "slot ports", "battens"] as const).flatMap((key) =>
    (spec[key] ?? []).flatMap(({ board }, i): Reference[] =>
      board === undefined ? [] : [{ kind: "board", name: board, at: below(at, key, i, "board") }],
    ),
  );
}

/**
 * The size that moves until the volume is right, or as far as the space allows: in the saw's steps, from room to work in up
 * to the space's own.
 */
export function freeSize(spec: EnclosureSpec, around: Around): Free | undefined {
  const index = sizeNames.findIndex((key) => typeof spec.outside[key] === "string");
  if (index < 0) return undefined;
  const aim = spec.outside[sizeNames[index]!] === "largest" ? "largest" : "volume";
  if (aim === "volume" && spec.net === undefined && spec.chambers === undefined) return undefined;
  const { step } = around.shop.saw;
  const least = boardsAlong(index, spec, around) + rules.leastInside.value;
  return {
    from: below(around.origin, "outside", sizeNames[index]!),
    min: Math.ceil(least / step) * step,
    max: Math.floor(mostOf(index, around, aim === "largest" ? step : 0) / step) * step,
    step,
    aim,
  };
}

/** What the boards at both ends of a size take of it, mm. */
function boardsAlong(index: number, spec: EnclosureSpec, around: Around): number {
  const { extrusion, skins } = askedOf(spec, 0, around);
  const ends =
    wayOf(spec) === "square"
      ? (
          [
            ["left", "right"],
            ["rear", "front"],
            ["bottom", "top"],
          ] as const
        )[index]!
      : endNames[extrusion.view];
  return ends.reduce((sum, end) => sum + depthOf(skins(end)), 0);
}

/** As large as the space, and `more`: a sawn size may come out half a step less than it is asked to be. */
function mostOf(index: number, { job }: Around, more: number): number {
  const { min, max } = extentsOf(job.space.outline);
  const own = [max.x - min.x, max.y - min.y, job.space.height][index];
  return own === undefined ? rules.mostHeight.value : own + more;
}
