import { place, type Vector } from "../../../geometry/frame.js";
import { outlineAt } from "../chambers/innerSheet.js";
import type { Sheet } from "../form/face.js";

/** The corners of a board, of its face and of its back, in the frame that holds it. */
export function cornersOf(sheet: Sheet): readonly Vector[] {
  const { outline, thickness, frame } = sheet;
  const back = outlineAt(sheet, thickness);
  return [
    ...outline.map(({ x, y }) => place(frame, [x, y, 0])),
    ...back.map(({ x, y }) => place(frame, [x, y, -thickness])),
  ];
}
