import { fillet, relieve } from "../../../geometry/corners.js";
import type { Point, Profile } from "../../../geometry/profile.js";
import { circle, rectangle } from "../../../geometry/shapes.js";
import { below } from "../../../input/finding.js";
import type { Around } from "../../../model/piece.js";
import { rules } from "../../../shop/rules.js";
import { snap, stepOf } from "../../common/method.js";
import type { Draft } from "../../common/part.js";
import { type Face, onSheet, type Sheet } from "../form/face.js";
import type { EnclosureSpec } from "../schema.js";
import { pointOn } from "../shape.js";

/** The terminal's cut-out in a sheet of its face: a round hole, or a rectangle with corners that a bit can cut. */
export function terminalDrafts(spec: EnclosureSpec, face: Face, sheet: Sheet, around: Around): readonly Draft[] {
  const { terminal } = spec;
  if (terminal === undefined || terminal.in !== face.name) return [];
  const { hole, corners } = terminal;
  const centre = onSheet(face, sheet, pointOn(face, terminal.at));
  const step = stepOf(spec, around);
  const outer =
    typeof hole === "number"
      ? circle(centre, snap(hole, step) / 2, "opening.terminal")
      : terminalRectangle(centre, snap(hole[0], step), snap(hole[1], step), corners ?? "round");
  return [
    {
      name: "opening.terminal",
      from: [below(around.origin, "terminal")],
      filledBy: "terminal",
      cut: { kind: "opening", corner: corners === "relieved" ? "relief" : "bit", region: { outer, holes: [] } },
    },
  ];
}

function terminalRectangle(centre: Point, width: number, height: number, corners: "round" | "relieved"): Profile {
  const sharp = rectangle(
    centre.x - width / 2,
    centre.y - height / 2,
    centre.x + width / 2,
    centre.y + height / 2,
    "opening.terminal",
  );
  const radius = Math.min(rules.openingCorner.value, width / 4, height / 4);
  return corners === "relieved" ? relieve(sharp, radius, "diagonal", "outside").profile : fillet(sharp, radius).profile;
}
