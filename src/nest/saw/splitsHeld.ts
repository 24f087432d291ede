import { noise, type Rest, type Split } from "../rectangles/rest.js";
import { isLargeEnough, type Size } from "./handling.js";
import { narrowestKerf, type Sawing } from "./sawing.js";

/** By which first cut what lies in a rest's lower left corner can be cut free of it; none where it cannot be held. */
export type SplitsHeld = (rest: Rest, w: number, h: number) => readonly Split[];

const both: readonly Split[] = ["along", "across"];

/**
 * Every piece must be large enough to be held until its last cut: the rest itself, and the strip that a first cut makes
 * of it where a second has to follow.
 *
 * Units:  mm, one kerf added as to every rest. At the far edges of the sheet the trim hangs on to every piece and is cut
 *         off with the rest. What is itself too narrow both ways comes from a strip as narrow, as there is no other way.
 *         With two kerfs pieces turn out a hair larger than planned, and no cut is spared.
 */
export function splitsHeld(whole: Rest, trim: number, kerf: number, sawing: Sawing): SplitsHeld {
  const { hold } = sawing;
  const alwaysCut = kerf - narrowestKerf(sawing) > noise;
  return (rest, w, h) => {
    const right = rest.x + rest.w > whole.w - noise ? trim : 0;
    const top = rest.y + rest.h > whole.h - noise ? trim : 0;
    const piece = { length: rest.w - kerf + right, width: rest.h - kerf + top };
    const across = alwaysCut || right > 0 || rest.w - w > noise;
    const up = alwaysCut || top > 0 || rest.h - h > noise;
    if (!across && !up) return both;
    const isHeld = (each: Size) => isLargeEnough(each, { ...hold, width: Math.min(hold.width, Math.max(w, h) - kerf) });
    if (!isHeld(piece)) return [];
    if (!across || !up) return both;
    return both.filter((split) =>
      isHeld(split === "along" ? { length: piece.length, width: h - kerf } : { length: w - kerf, width: piece.width }),
    );
  };
}
