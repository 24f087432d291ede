import { fillet, relieve } from "../../../geometry/corners.js";
import type { Point, Profile } from "../../../geometry/profile.js";
import { circle, rectangle } from "../../../geometry/shapes.js";
import { below } from "../../../input/finding.js";
import type { Around } from "../../../model/piece.js";
import { rules } from "../../../shop/rules.js";
import { snap, stepOf } from "../../common/method.js";
import type { Draft } from "../../common/part.js";
import { type Face, onSheet, type Sheet } from "../form/face.js";
import type { EnclosureSpec, TerminalSpec } from "../schema.js";
import { pointOn } from "../shape.js";

type Entry = { readonly name: string; readonly spec: TerminalSpec; readonly path: readonly (string | number)[] };

/** The terminals of a box: "terminal" where the job names the one under `terminal`, "terminal.1" and so on of a list. */
export function terminalsOf({ terminal, terminals }: EnclosureSpec): readonly Entry[] {
  return [
    ...(terminal ? [{ name: "terminal", spec: terminal, path: ["terminal"] }] : []),
    ...(terminals ?? []).map((spec, i) => ({ name: `terminal.${i + 1}`, spec, path: ["terminals", i] })),
  ];
}

/** The cut-outs of a face's terminals in a sheet of it: round holes, or rectangles with corners that a bit can cut. */
export function terminalDrafts(spec: EnclosureSpec, face: Face, sheet: Sheet, around: Around): readonly Draft[] {
  const step = stepOf(spec, around);
  return terminalsOf(spec)
    .filter((entry) => entry.spec.in === face.name)
    .map(({ name, spec: { hole, at, corners = "round" }, path }): Draft => {
      const by = `opening.${name}`;
      const centre = onSheet(face, sheet, pointOn(face, at));
      const outer =
        typeof hole === "number"
          ? circle(centre, snap(hole, step) / 2, by)
          : terminalRectangle(centre, snap(hole[0], step), snap(hole[1], step), corners, by);
      const corner = corners === "relieved" ? "relief" : "bit";
      const cut = { kind: "opening", corner, region: { outer, holes: [] } } as const;
      return { name: by, from: [below(around.origin, ...path)], filledBy: "terminal", cut };
    });
}

function terminalRectangle(
  centre: Point,
  width: number,
  height: number,
  corners: "round" | "relieved",
  by: string,
): Profile {
  const sharp = rectangle(centre.x - width / 2, centre.y - height / 2, centre.x + width / 2, centre.y + height / 2, by);
  const radius = Math.min(rules.openingCorner.value, width / 4, height / 4);
  return corners === "relieved" ? relieve(sharp, radius, "diagonal", "outside").profile : fillet(sharp, radius).profile;
}
