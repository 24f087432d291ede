/**
 * The candidate that a slip of the finger would turn into `name`: the fewest letters added, dropped, changed or
 * swapped, capitals aside; the first of equals. Undefined where none is close: over a third of the letters differ.
 */
export function nearest(name: string, candidates: readonly string[]): string | undefined {
  let best: { readonly candidate: string; readonly distance: number } | undefined;
  for (const candidate of candidates) {
    const distance = editDistance(name.toLowerCase(), candidate.toLowerCase());
    const allowed = Math.max(1, Math.floor(Math.max(name.length, candidate.length) / 3));
    // One letter for another says nothing about names that are one letter long.
    const close = distance <= allowed && distance < Math.min(name.length, candidate.length);
    if ((close || distance === 0) && (best === undefined || distance < best.distance)) best = { candidate, distance };
  }
  return best?.candidate;
}

/**
 * Letters added, dropped, changed or swapped with their neighbour. Source: optimal string alignment, the restricted
 * form of F. J. Damerau, Communications of the ACM 7(3), 1964; from memory.
 */
export function editDistance(a: string, b: string): number {
  // Long texts are never a slip of one name for another, and the table grows with both lengths.
  if (Math.max(a.length, b.length) > 64) return a === b ? 0 : Math.max(a.length, b.length);
  let before: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = above[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      const swap = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1] ? before[j - 2]! + 1 : change;
      row.push(Math.min(change, swap, above[j]! + 1, row[j - 1]! + 1));
    }
    before = above;
    above = row;
  }
  return above[b.length]!;
}
