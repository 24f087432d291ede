import type { Around } from "../../model/piece.js";
import { rules } from "../../shop/rules.js";
import { axisAcross, reachOf } from "./chambers/across.js";
import { chamberNames } from "./chambers/check.js";
import { namesOf } from "./chambers/divide.js";
import { freeDividers, type Places } from "./chambers/wanted.js";
import { workedOut } from "./form/workedOut.js";
import type { EnclosureSpec } from "./schema.js";
import { type Shape, shapeAt } from "./shape.js";
import { missingOf } from "./volume.js";

/**
 * The box at this size with its free dividers where they belong: each in turn is moved, in the saw's steps, until the
 * chamber on its left, rear or lower side has the volume wanted of it; what is left over goes to the last chamber.
 */
export function settledShape(spec: EnclosureSpec, size: number, around: Around): Shape {
  const places = freeDividers(spec).reduce<Places>(
    (so, index) => new Map(so).set(index, placeOf(index, so, spec, size, around)),
    new Map(),
  );
  return shapeAt(spec, size, around, places);
}

/** The whole step from the chamber's beginning at which it misses least, the smaller of equals. */
function placeOf(index: number, so: Places, spec: EnclosureSpec, size: number, around: Around): number {
  const divider = spec.dividers![index]!;
  const { boards } = workedOut(spec, size, around);
  const axis = axisAcross(divider.across, boards.extrusion.view);
  const { step } = around.shop.saw;
  const [from, to] = reachOf(boards.inside, axis);
  const board = around.board(divider.board ?? spec.board).thickness;
  const first = Math.ceil((from + rules.leastInside.value) / step);
  const last = Math.max(first, Math.floor((to - board - rules.leastInside.value) / step));
  const miss = (at: number): number => {
    const shape = shapeAt(spec, size, around, new Map(so).set(index, at * step));
    const chamber = shape.fitOut.chambers.find(({ name }) => name === namesOf(divider)[0]);
    // refused there: the chambers before it already reach further
    return chamber === undefined ? Number.POSITIVE_INFINITY : missingOf(chamber, spec, shape, around);
  };
  let [low, high] = [first, last];
  while (high - low > 1) {
    const half = Math.floor((low + high) / 2);
    if (miss(half) > 0) low = half;
    else high = half;
  }
  return (Math.abs(miss(low)) <= Math.abs(miss(high)) ? low : high) * step;
}

/** Wanted net volumes minus those that this size reaches, L: of all chambers, a chamber that has no room yet being empty. */
export function missingVolume(spec: EnclosureSpec, size: number, around: Around): number {
  const shape = settledShape(spec, size, around);
  const { chambers } = shape.fitOut;
  const missing = chambers.reduce((sum, chamber) => sum + missingOf(chamber, spec, shape, around), 0);
  const absent = chamberNames(spec).filter((name) => !chambers.some((chamber) => chamber.name === name));
  return absent.reduce((sum, name) => sum + (spec.chambers?.[name]?.net ?? 0), missing);
}
