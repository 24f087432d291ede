import type { SawnPiece } from "../../model/rip.js";
import { sameSize } from "./handling.js";

/**
 * How often a fence or stop block is set or a line measured at least, and how often a sheet is turned on the trestles,
 * with the cuts of all pieces in the best order: every size once at the table saw; along the track each new size on each
 * sheet, and each change from along to across.
 */
export function leastSettings(pieces: readonly SawnPiece<number>[]): number {
  const atTable = new Set<string>();
  let onTrack = 0;
  for (const piece of pieces) {
    const lines = new Set<string>();
    onTrack += walk(piece, undefined, lines) + lines.size;
  }
  return atTable.size + onTrack;

  /** Turns of the sheet below a piece. */
  function walk(piece: SawnPiece<number>, before: boolean | undefined, lines: Set<string>): number {
    const { cut } = piece;
    if (!cut) return 0;
    const size = Math.round(cut.size / sameSize);
    if (cut.saw === "table") atTable.add(`${cut.way} ${size}`);
    else lines.add(`${cut.along} ${size}`);
    const lies = cut.saw === "track" ? cut.along : before;
    const turned = before !== undefined && lies !== before ? 1 : 0;
    const below = [cut.off, cut.rest].reduce((sum, each) => sum + (each ? walk(each, lies, lines) : 0), 0);
    return turned + below;
  }
}
