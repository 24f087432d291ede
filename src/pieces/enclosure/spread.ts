import { causesOf, type Spread, spreadOf, type Walls } from "../../acoustics/spread.js";
import { areaOf, eachEdge, edgeLength, lengthOf } from "../../geometry/measure.js";
import { tolerance } from "../../geometry/tolerance.js";
import type { Around } from "../../model/piece.js";
import type { Method } from "../../model/shop.js";
import { rules } from "../../shop/rules.js";
import { axisAcross, reachOf } from "./chambers/across.js";
import type { Chamber } from "./chambers/divide.js";
import { faceOf } from "./form/box.js";
import type { EnclosureSpec } from "./schema.js";
import type { Shape } from "./shape.js";

/**
 * How far the net volume of a chamber may be off by its boards' thickness and by what is cut, to first order, L. The
 * outside and the places of dividers are held. What stands inside is taken as it is: a board that is a fiftieth too thick
 * makes a brace a fiftieth larger, which is nothing beside the walls.
 */
export function spreadOfAir(chamber: Chamber, spec: EnclosureSpec, shape: Shape, around: Around): Spread {
  const { section, from, to } = chamber.air;
  const inside = { area: areaOf(section), perimeter: lengthOf(section), length: to - from };
  const cutting = Math.max(...shape.faces.map(({ skin }) => cutOff(skin.method, around)));
  return spreadOf(causesOf(inside, wallsOf(chamber, spec, shape, around), cutting));
}

/** The walls of a chamber by the board that they are made of; a double wall counts for both of its boards. */
function wallsOf({ air }: Chamber, spec: EnclosureSpec, shape: Shape, around: Around): readonly Walls[] {
  const { section, from, to, ends } = air;
  const areas = new Map<string, number>();
  const count = (wall: string, area: number) => {
    for (const { board, share } of boardsIn(wall, air, spec, shape)) {
      areas.set(board, (areas.get(board) ?? 0) + area * share);
    }
  };
  eachEdge(section, (a, b) => count(a.by, edgeLength(a, b) * (to - from)));
  for (const end of ends) count(end, areaOf(section));
  return [...areas].map(([board, area]) => ({ board, area, tolerance: thicknessOff(board, around) }));
}

/** Which boards make a wall, and how much of a change of their thickness comes to this side of it. */
function boardsIn(
  wall: string,
  air: Chamber["air"],
  spec: EnclosureSpec,
  shape: Shape,
): readonly { readonly board: string; readonly share: number }[] {
  const face = faceOf(shape, wall);
  if (face !== undefined) {
    const double = spec.panels?.[wall]?.double;
    return [{ board: face.skin.board.id, share: 1 }, ...(double === undefined ? [] : [{ board: double, share: 1 }])];
  }
  const index = shape.fitOut.dividers.findIndex(({ role }) => role === wall);
  const divider = shape.fitOut.dividers[index];
  if (divider === undefined || !("across" in divider.marked)) return [];
  const { across, at } = divider.marked;
  const [, to] = reachOf(air, axisAcross(across, shape.extrusion.view));
  return [{ board: divider.board.id, share: shareOf(spec, wall, to <= at + tolerance.samePoint) }];
}

/** A divider grows away from the side that its place is measured to; one in the middle grows to both. */
function shareOf({ dividers }: EnclosureSpec, role: string, isNear: boolean): number {
  const wanted = dividers?.find((_, i) => `divider.${i + 1}` === role);
  if (wanted?.at === "middle") return 0.5;
  return isNear ? 0 : 1;
}

/** How far off a board's thickness may be, mm: by the reading of who measured it, else by what it may be sold as. */
export function thicknessOff(name: string, { job, shop }: Pick<Around, "job" | "shop">): number {
  const choice = job.boards[name];
  const stock = choice && shop.boards[choice.stock];
  if (stock === undefined || choice?.measured !== undefined || stock.measured !== undefined) {
    return rules.readingOff.value;
  }
  if (/ply/i.test(stock.material)) {
    return rules.plywoodThickness.value + rules.plywoodThicknessShare.value * stock.thickness;
  }
  return (stock.thickness > rules.mdfThick.value ? rules.thickMdfThickness : rules.mdfThickness).value;
}

/** How far off a size may be that is cut this way, mm. */
function cutOff(method: Method, { shop }: Pick<Around, "shop">): number {
  if (method === "cnc") return rules.cncOff.value;
  return rules.stepOff.value * (method === "saw" ? shop.saw : shop.router).step;
}
