import { fillet } from "../../../geometry/corners.js";
import { inverse, place } from "../../../geometry/frame.js";
import { extentsOf } from "../../../geometry/measure.js";
import type { Extents, Profile } from "../../../geometry/profile.js";
import { rectangle } from "../../../geometry/shapes.js";
import type { Origin } from "../../../input/finding.js";
import { rules } from "../../../shop/rules.js";
import type { Draft } from "../../common/part.js";
import { type Face, onSheet, type Sheet } from "../form/face.js";
import type { Inside } from "../inside.js";

/** Where a slot port opens through its wall, in the axes of that face. */
export function mouthOn(face: Face, mouth: Profile, { frame, from, to }: Inside): Extents {
  const seen = inverse(face.frame);
  const corners = mouth.flatMap(({ x, y }) =>
    [from, to].map((up) => {
      const [px, py] = place(seen, place(frame, [x, y, up]));
      return { x: px, y: py, bulge: 0, by: "mouth" };
    }),
  );
  return extentsOf(corners);
}

/** The opening of a slot port in a sheet of its face: flush with the walls it shares, its corners as a bit leaves them. */
export function mouthDraft(role: string, face: Face, sheet: Sheet, { min, max }: Extents, from: Origin): Draft {
  const by = `opening.${role}`;
  const [a, b] = [onSheet(face, sheet, min), onSheet(face, sheet, max)];
  const radius = Math.min(rules.openingCorner.value, (b.x - a.x) / 4, (b.y - a.y) / 4);
  const outer = fillet(rectangle(a.x, a.y, b.x, b.y, by), radius).profile;
  return {
    name: by,
    from: [from],
    filledBy: "port",
    cut: { kind: "opening", corner: "bit", region: { outer, holes: [] } },
  };
}
