import type { Sawing } from "./sawing.js";

export type Size = { readonly length: number; readonly width: number };

/** Sizes that differ by less are the same to a saw: no cut is made between them. mm. */
export const sameSize = 1e-3;

/** Whether a piece is large enough to be held for a cut. */
export function isLargeEnough({ length, width }: Size, hold: Size): boolean {
  const long = Math.max(length, width);
  const short = Math.min(length, width);
  return long >= hold.length - sameSize && short >= hold.width - sameSize;
}

/** How a cut is made: at which saw, guided by what, and what is wrong with it if none does. */
export type Way = {
  readonly saw: "track" | "table";
  readonly way: "rip" | "cross-cut";
  readonly kerf: number;
  /** It is a rip, and the sled with its stop block serves as well. */
  readonly sledToo?: true;
  readonly trouble?: "small" | "reach";
};

/**
 * The saw for a cut, from the piece and from where the cut runs. mm.
 *
 * 1. A piece that one person does not bring to the table saw is cut where it lies, along the track.
 * 2. The longer side runs along the fence, never the shorter: a piece wider than it is long turns, and kicks back. So a
 *    cut along the longer side is a rip, if the fence reaches; one across it a cross-cut, if the sled does.
 * 3. Across a piece too wide for the sled the fence serves, as long as more lies along it than between it and the blade.
 * 4. What is left is for the track.
 * 5. What is too short for the fence goes on the sled, where it can be clamped, whichever way it lies.
 * 6. A rip of a piece that lies well along the sled's fence may be made there too, where the stop block stands right.
 *
 * `run`: along the cut. `across`: the piece's other side. `size`: from the reference edge to the blade.
 * Source: common practice, no source.
 */
export function wayFor(run: number, across: number, size: number, sawing: Sawing): Way {
  const { table, track } = sawing;
  const isRip = run >= across - sameSize;
  const small = isLargeEnough({ length: run, width: across }, sawing.hold) ? {} : ({ trouble: "small" } as const);
  const isShort = run < sawing.hold.length - sameSize;
  const ways: readonly ["rip" | "cross-cut", boolean][] = [
    ["rip", isRip && !isShort && size <= table.reach],
    ["cross-cut", (!isRip || isShort) && run <= table.crossCut],
    ["rip", !isRip && !isShort && size <= table.reach && run >= size],
  ];
  const [byTable] = ways.find(([, serves]) => serves) ?? [];
  const onTrack = track !== undefined && run <= track.longest;
  const way = isRip ? "rip" : "cross-cut";
  if (onTrack && (isLarge(run, across, sawing) || byTable === undefined))
    return { saw: "track", way, kerf: track.kerf, ...small };
  const sledToo = byTable === "rip" && run <= table.crossCut && across >= sawing.hold.length;
  if (byTable) return { saw: "table", way: byTable, kerf: table.kerf, ...(sledToo && { sledToo }), ...small };
  return { saw: "table", way, kerf: table.kerf, trouble: "reach" };
}

/** Whether one person cannot bring a piece to the table saw. */
export function isLarge(a: number, b: number, { table }: Sawing): boolean {
  return Math.max(a, b) > table.length || Math.min(a, b) > table.width;
}
