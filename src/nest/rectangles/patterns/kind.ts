import { noise } from "../rest.js";

/** A size that is wanted so many times, in the ways in which it may lie. */
export type Kind = { readonly lies: readonly Lying[]; readonly wanted: number };

/** mm, one kerf added as to every rest. `least`: what will do where a sheet is no longer. */
export type Lying = Size & { readonly least: Size };
export type Size = { readonly w: number; readonly h: number };

/** Sheets of one kind. `count`: no more than these; absent, as many as are needed. mm, one kerf added. */
export type Blank = Size & { readonly cost: number; readonly count?: number };

/** What is taken of a sheet. */
export function sizeOn({ w, h, least }: Lying, sheet: Size): Size {
  return { w: sideOn(w, least.w, sheet.w), h: sideOn(h, least.h, sheet.h) };
}

/** Whether a sheet takes it; lengths that differ by the noise of adding up are alike. */
export function fitsOn(lying: Lying, sheet: Size): boolean {
  const { w, h } = sizeOn(lying, sheet);
  return w <= sheet.w + noise && h <= sheet.h + noise;
}

/** The turn of the one of these that takes so much of a sheet, or comes nearest to it. rad */
export function turnFor(lies: readonly Turned[], size: Size, sheet: Size): number {
  const off = (lie: Lying) => {
    const { w, h } = sizeOn(lie, sheet);
    return Math.abs(w - size.w) + Math.abs(h - size.h);
  };
  return lies.reduce((best, lie) => (off(lie) < off(best) - noise ? lie : best)).turn;
}

type Turned = Lying & { readonly turn: number };

const sideOn = (size: number, least: number, whole: number) => (size > whole && least <= whole + noise ? whole : size);

/** Puts together what may lie in the same sizes, in whatever order these are told. */
export function kindsOf<T extends { readonly lies: readonly Lying[] }>(all: readonly T[]): readonly KindOf<T>[] {
  const groups = new Map<string, T[]>();
  for (const one of all) {
    const key = one.lies.map(keyOf).sort().join(";");
    const group = groups.get(key);
    if (group) group.push(one);
    else groups.set(key, [one]);
  }
  return [...groups.values()].map((of) => ({ lies: of[0]!.lies, wanted: of.length, of }));
}

export type KindOf<T> = Kind & { readonly of: readonly T[] };

const keyOf = ({ w, h, least }: Lying) => [w, h, least.w, least.h].map((side) => side.toFixed(6)).join();
