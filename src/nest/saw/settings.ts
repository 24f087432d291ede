import type { SawnPiece } from "../../model/rip.js";
import { sameSize } from "./handling.js";

/**
 * How often a fence or stop block is set or a line measured at least, and how often a sheet is turned on the trestles,
 * with the cuts of all pieces in the best order: every size once at the table saw; along the track each new size on each
 * sheet, and each change from along to across.
 */
export function leastSettings(pieces: readonly SawnPiece<number>[]): number {
  const atTable = new Map<number, Set<string>>();
  let onTrack = 0;
  for (const piece of pieces) {
    const lines = new Set<string>();
    onTrack += walk(piece, undefined, lines) + lines.size;
  }
  return onTrack + [...atTable.values()].reduce((sum, guides) => sum + Math.max(1, guides.size), 0);

  /** Turns of the sheet below a piece. */
  function walk(piece: SawnPiece<number>, before: boolean | undefined, lines: Set<string>): number {
    const { cut } = piece;
    if (!cut) return 0;
    const size = Math.round(cut.size / sameSize);
    if (cut.saw === "table") {
      const guides = atTable.get(size) ?? new Set();
      // where either will do it goes with the others of its size
      if (!cut.sledToo) guides.add(cut.way);
      atTable.set(size, guides);
    } else lines.add(`${cut.along} ${size}`);
    const lies = cut.saw === "track" ? cut.along : before;
    const turned = before !== undefined && lies !== before ? 1 : 0;
    const below = [cut.off, cut.rest].reduce((sum, each) => sum + (each ? walk(each, lies, lines) : 0), 0);
    return turned + below;
  }
}
