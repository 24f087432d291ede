import type { Around } from "../../../model/piece.js";
import { snap } from "../../common/method.js";
import type { Boards } from "../form/box.js";
import type { EnclosureSpec } from "../schema.js";
import { axisAcross, reachOf } from "./across.js";
import type { Wanted } from "./divide.js";

/** Places of dividers that are free, by their place in the list, mm. */
export type Places = ReadonlyMap<number, number>;

/** The dividers that the job asks for, free ones at the places given. `middle` is the middle of the whole box. */
export function wantedDividers(
  spec: EnclosureSpec,
  { inside, extrusion }: Boards,
  step: number | undefined,
  around: Around,
  places: Places,
): readonly Wanted[] {
  return (spec.dividers ?? []).map((divider, index) => {
    const board = around.board(divider.board ?? spec.board);
    const axis = axisAcross(divider.across, extrusion.view);
    const [from, to] = reachOf(inside, axis);
    const middle = snap((from + to - board.thickness) / 2, step);
    const at = typeof divider.at === "number" ? divider.at : (places.get(index) ?? middle);
    return { role: `divider.${index + 1}`, spec: divider, index, axis, at, board };
  });
}

/** Whether a box has a free divider. */
export const freeDividers = ({ dividers }: EnclosureSpec): readonly number[] =>
  (dividers ?? []).flatMap(({ at }, index) => (at === "free" ? [index] : []));
