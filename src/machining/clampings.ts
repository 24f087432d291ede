import type { Path, Point, Region } from "../geometry/profile.js";
import { mirroredPath, mirrorRegion, moved, moveRegion, turned, turnRegion } from "../geometry/transform.js";
import type { Layout, NestedSheet, Placed, Plan, Process } from "../model/build.js";
import type { PartId } from "../model/ids.js";
import type { Part } from "../model/part.js";
import { type ToSheet, toSheet } from "../nest/placed.js";
import type { Lying } from "./bench.js";

/** One clamping of a sheet, with the parts as they lie in it. */
export type Clamping = {
  readonly name: string;
  readonly sheet: NestedSheet;
  readonly turnedOver: boolean;
  readonly lying: readonly Lying[];
};

/** The clampings of each sheet that has work for the machine: as it is laid, then turned over where a second side is cut. */
export function clampingsOf(plan: Plan, process: Process, layout: Layout): readonly Clamping[] {
  const parts = new Map(plan.built.parts.map((part) => [part.id, part]));
  const work = new Map(process.parts.map((each) => [each.part, each.work.filter(({ by }) => by === "cnc")]));
  return layout.sheets.flatMap((sheet) => {
    const own = sheet.placed.filter(({ part }) => parts.has(part) && (work.get(part)?.length ?? 0) > 0);
    return ([1, 2] as const).flatMap((setup): readonly Clamping[] => {
      const lying = own.map((placed) =>
        lieIn(parts.get(placed.part)!, placed, sheet, setup, workIn(placed.part, setup)),
      );
      if (lying.every(({ work: here }) => here.length === 0)) return [];
      return [{ name: setup === 1 ? sheet.sheet : `${sheet.sheet} turned`, sheet, turnedOver: setup === 2, lying }];
    });
  });

  function workIn(part: PartId, setup: 1 | 2) {
    return work.get(part)!.filter((each) => (each.setup ?? 1) === setup);
  }
}

function lieIn(part: Part, placed: Placed, sheet: NestedSheet, setup: 1 | 2, work: Lying["work"]): Lying {
  const laid = toSheet(part, placed);
  const to = setup === 1 ? laid : turnedOver(laid, sheet.width);
  const faceUp = placed.backUp === (setup === 2);
  return {
    part,
    up: faceUp ? "face" : "back",
    to,
    profile: to.region(part.profile),
    blank: to.region(part.blank),
    work,
  };
}

/** The same way to the sheet when it is turned over about its long side: x stays, y is measured from the other edge. */
function turnedOver(laid: ToSheet, width: number): ToSheet {
  // a mirror of x, then half a turn, is a mirror of y; then up by the width
  const path = (chain: Path) => moved(turned(mirroredPath(laid.path(chain)), Math.PI), 0, width);
  const point = (p: Point) => {
    const at = laid.point(p);
    return { x: at.x, y: width - at.y };
  };
  const region = (shape: Region) => moveRegion(turnRegion(mirrorRegion(laid.region(shape)), Math.PI), 0, width);
  return { path, point, region };
}
