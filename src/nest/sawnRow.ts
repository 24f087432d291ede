import type { Profile } from "../geometry/profile.js";
import { rectangle } from "../geometry/shapes.js";
import type { StockRow } from "./stock.js";
import { type UsableRectangle, usableRectangle } from "./usableRectangle.js";

/**
 * A row of the stock as a saw has it: an odd offcut as the largest rectangle on its true edge, a rectangle with knots or
 * holes as the largest on one of its sides; clamps and pins of the machine are nothing to a saw. With grain the side must
 * run along it. What is plain stays as it is. Gives why not, where there is none.
 */
export function sawnRow(row: StockRow, grain: boolean): StockRow | string {
  const { outline, zones = [], "true edge": edge, ...plain } = row;
  const avoid = zones.filter(([first]) => first?.by === "knot" || first?.by === "hole");
  if (outline === undefined && avoid.length === 0) return plain;
  if (outline !== undefined && edge === undefined) return "none of its sides is named its true edge";
  const board = outline ?? rectangle(0, 0, row.length, row.width, sides);
  const found = (edge === undefined ? sides : [edge]).flatMap((side) => usableOn(board, side, avoid, grain));
  const [first, ...others] = found;
  if (first === undefined)
    return grain ? "no rectangle along the grain lies on its true edge" : "no rectangle is left of it";
  const { length, width, side, x, y, turn } = others.reduce((a, b) => (areaOf(b) > areaOf(a) ? b : a), first);
  return { ...plain, length, width, within: { side, x, y, turn } };
}

const sides = ["bottom", "right", "top", "left"] as const;

type Sided = UsableRectangle & { readonly side: string };

function usableOn(board: Profile, side: string, avoid: readonly Profile[], grain: boolean): readonly Sided[] {
  const found = usableRectangle(board, side, avoid);
  if (found === undefined || (grain && Math.abs(Math.sin(found.turn)) > alongGrain)) return [];
  return [{ ...found, side }];
}

/** A side that runs less than half a degree off the grain runs along it (common practice, no source). */
const alongGrain = Math.sin((0.5 * Math.PI) / 180);

const areaOf = ({ length, width }: UsableRectangle): number => length * width;
