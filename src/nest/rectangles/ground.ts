import type { NestStock } from "../engine.js";
import type { Sawing } from "../saw/sawing.js";
import { splitsHeld } from "../saw/splitsHeld.js";
import type { Rest, Split } from "./rest.js";

/** The whole usable area of a sheet, and the ways in which a hand can part a rest of it; without saws any will do. */
export type Ground = { readonly whole: Rest; readonly splits: (rest: Rest, w: number, h: number) => readonly Split[] };

export function groundOf(row: NestStock, kerf: number, sawing: Sawing | undefined): Ground {
  const whole = usableOf(row, kerf);
  return { whole, splits: sawing ? splitsHeld(whole, row.trim, kerf, sawing) : anySplit };
}

/** The part of a sheet inside its trim, with one kerf added. */
export function usableOf(row: NestStock, kerf: number): Rest {
  return { x: 0, y: 0, w: row.length - 2 * row.trim + kerf, h: row.width - 2 * row.trim + kerf };
}

const bothSplits: readonly Split[] = ["along", "across"];
const anySplit = () => bothSplits;
