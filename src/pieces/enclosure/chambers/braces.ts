import { intersection } from "../../../geometry/boolean.js";
import { fillet } from "../../../geometry/corners.js";
import { areaOf, extentsOf } from "../../../geometry/measure.js";
import { offsetProfile } from "../../../geometry/offset.js";
import type { Profile } from "../../../geometry/profile.js";
import { rectangle } from "../../../geometry/shapes.js";
import type { Sheet } from "../form/face.js";
import { throughAll } from "./innerSheet.js";
import type { BraceSpec } from "./keys.js";

/** What a brace has where the job does not say, mm. */
export const usualBrace = { border: 50, round: 25, windows: 1 } as const;

/**
 * The openings of a brace: its outline less a border all round, parted by bars as wide as the border where there are to be
 * several, with rounded corners.
 *
 * Returns: none where the border leaves no room for them, or their corners are too tight for the radius.
 */
export function windowsOf(sheet: Sheet, spec: BraceSpec): readonly Profile[] {
  const { border = usualBrace.border, round = usualBrace.round, windows = usualBrace.windows } = spec;
  const open = offsetProfile(throughAll(sheet), -border, { corners: "sharp" });
  const cut = open.flatMap((each) => strips(each, windows, border));
  const rounded = cut.map((each) => fillet(each, round));
  const tight = rounded.some(({ refused, profile }) => refused.length > 0 || areaOf(profile) <= 0);
  return tight || (windows > 1 && rounded.length < windows) ? [] : rounded.map(({ profile }) => profile);
}

/** So many strips across the longer way of an opening, bars between them; one that goes round a corner comes in pieces. */
function strips(open: Profile, count: number, bar: number): readonly Profile[] {
  if (count === 1) return [open];
  const { min, max } = extentsOf(open);
  const [wide, high] = [max.x - min.x, max.y - min.y];
  const length = (Math.max(wide, high) - (count - 1) * bar) / count;
  if (length <= 0) return [];
  return Array.from({ length: count }, (_, i) => i * (length + bar)).flatMap((from) => {
    const strip =
      wide >= high
        ? rectangle(min.x + from, min.y, min.x + from + length, max.y, "window")
        : rectangle(min.x, min.y + from, max.x, min.y + from + length, "window");
    return intersection({ outer: open, holes: [] }, { outer: strip, holes: [] }).map(({ outer }) => outer);
  });
}
