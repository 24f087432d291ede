/**
 * Where cuts across one side of a sheet need be looked for, and what they leave.
 *
 * A cut can always be moved back until it meets the end of blanks that lie side by side: lengths that are sums of sizes
 * are enough (normal positions). Of these only such as leave one of these are enough (raster points): what lies beyond
 * the cut is pushed to the far end.
 *
 * Source: J. C. Herz, "Recursive computational procedure for two-dimensional stock cutting", IBM Journal of Research and
 *         Development 16, 1972 (normal positions); G. Scheithauer and J. Terno, "The G4-heuristic for the pallet loading
 *         problem", J. Operational Research Society 47, 1996 (raster points). Both from memory; tested against every way to
 *         cut.
 */
export type Side = {
  /** Lengths of pieces, ascending, in whole units; the last is as much of the side as can be used. */
  readonly lengths: readonly number[];
  /** Of the piece at i: the pairs from `from[i]` on, before `from[i + 1]`. */
  readonly from: Int32Array;
  /** The places of the two lengths that a cut makes of it, both below i. */
  readonly one: Int32Array;
  readonly other: Int32Array;
};

/**
 * What a side is to be sure of. `cuttable`: the two pieces of a cut are never longer together than the piece they are of;
 * `over`: no cut that could be made leaves more than they are. The same where every length is looked at by itself.
 */
export type Sure = "cuttable" | "over";

/** Every length that is a sum of sizes, up to the side's own: for each the largest of them that is no longer. */
export function sumsUpTo(length: number, sizes: readonly number[]): Int32Array {
  const below = new Int32Array(length + 1);
  const few = [...new Set(sizes)];
  for (let at = 1; at <= length; at++)
    below[at] = few.some((size) => size <= at && below[at - size] === at - size) ? at : below[at - 1]!;
  return below;
}

/** Of the sums those that leave one of the sums. Ascending, without 0. */
export function rasterOf(below: Int32Array): readonly number[] {
  const length = below.length - 1;
  const kept = new Set<number>();
  for (let at = 0; at <= length; at++) if (below[at] === at) kept.add(below[length - at]!);
  return [...kept].filter((at) => at > 0).sort((a, b) => a - b);
}

/** Lengths that lie within `reach` of one another are one group. */
export function groupsWithin(lengths: readonly number[], reach: number): readonly (readonly number[])[] {
  const groups: number[][] = [];
  for (const length of lengths) {
    const last = groups.at(-1);
    if (last && length - last[0]! <= reach) last.push(length);
    else groups.push([length]);
  }
  return groups;
}

/**
 * A side on which every group of lengths counts as its longest.
 *
 * Needs: groups shorter than the shortest size, so that both pieces of a cut are shorter than what they are cut from.
 */
export function sideOf(groups: readonly (readonly number[])[], below: Int32Array, sure: Sure): Side {
  const lengths = groups.map((group) => group.at(-1)!);
  const from = new Int32Array(lengths.length + 1);
  const one: number[] = [];
  const other: number[] = [];
  for (const [i, length] of lengths.entries()) {
    from[i] = one.length;
    let rest = i;
    for (let k = 0; k < i; k++) {
      const cut = sure === "over" ? groups[k]![0]! : lengths[k]!;
      if (2 * cut > length) break;
      const room = sure === "over" ? below[length - cut]! : length - cut;
      rest = placeOf(lengths, room, rest, sure);
      if (rest < 0) break;
      // of cuts that leave the same, the one that takes most
      if (one.length > from[i]! && other.at(-1) === rest) one[one.length - 1] = k;
      else {
        one.push(k);
        other.push(rest);
      }
    }
  }
  from[lengths.length] = one.length;
  return { lengths, from, one: Int32Array.from(one), other: Int32Array.from(other) };
}

/** The longest length within `room`, or the shortest that is not below it; looked for from a place above it downwards. */
function placeOf(lengths: readonly number[], room: number, above: number, sure: Sure): number {
  let place = above;
  while (place >= 0 && lengths[place]! > room) place--;
  if (sure === "cuttable" || room === 0) return place;
  return place >= 0 && lengths[place] === room ? place : place + 1;
}
