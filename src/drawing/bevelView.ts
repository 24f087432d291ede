import type { Extents, Point } from "../geometry/profile.js";
import type { BevelCut, PieceSide, RipPiece } from "../model/rip.js";
import type { Bend, Item } from "./page.js";
import { boxAt, filledBox, lineThrough, rectangle } from "./shapes.js";
import { degrees } from "./sizes.js";
import { write } from "./textBox.js";

/** On paper, mm: the board's thickness, what lies between it and the ends of its room, and how far the blade stands out. */
const thick = 9;
const beside = 18;
const over = 5;
const bar = { thick: 2, high: 14 };

/**
 * A bevel as one sees it at the end of what is bevelled, not to scale but for its angle: the smaller side down, the piece
 * white, what falls off grey. At the table saw the fence or stop block stands on its other side; at the track the track lies
 * on it. Beside that a strip as it lay on its sheet, with the side that is bevelled.
 */
export function bevelPicture(bevel: BevelCut, room: Extents): readonly Item[] {
  if (!bevel.piece) return endPicture(bevel, room);
  const middle = room.min.x + (room.max.x - room.min.x) * ofStrip;
  return [
    ...stripPicture(bevel.piece, bevel.side, { min: room.min, max: { x: middle - 3, y: room.max.y } }),
    ...endPicture(bevel, { min: { x: middle, y: room.min.y }, max: room.max }),
  ];
}

/** What of the room is for the strip from above. */
const ofStrip = 0.4;

/** A strip from above, what is bevelled of it in grey and what is bevelled now darker. */
function stripPicture(piece: RipPiece, side: PieceSide, { min, max }: Extents): readonly Item[] {
  const scale = Math.min((max.x - min.x) / piece.length, (max.y - min.y) / piece.width);
  const [length, width] = [piece.length * scale, piece.width * scale];
  const box = boxAt(min.x, min.y + (max.y - min.y - width) / 2, length, width);
  const before = (piece.bevelled ?? []).map((each) => filledBox(alongSide(box, each.side), 0.8));
  return [...before, filledBox(alongSide(box, side), 0.4), rectangle(box, "visible")];
}

/** The slope along a side of a box on paper, as wide as can be seen. */
export function alongSide({ min, max }: Extents, side: PieceSide): Extents {
  const wide = Math.min(1.4, (max.x - min.x) / 3, (max.y - min.y) / 3);
  if (side === "lower") return { min, max: { x: max.x, y: min.y + wide } };
  if (side === "upper") return { min: { x: min.x, y: max.y - wide }, max };
  if (side === "left") return { min, max: { x: min.x + wide, y: max.y } };
  return { min: { x: max.x - wide, y: min.y }, max };
}

function endPicture({ saw, tilt, down }: BevelCut, { min, max }: Extents): readonly Item[] {
  const slope = Math.tan(tilt);
  const y = min.y + Math.max(3, (max.y - min.y - thick) / 2 - 3);
  const x = min.x + bar.thick + 1;
  const edge = max.x - beside;
  const part = [at(x, y), at(edge - slope * thick, y), at(edge, y + thick), at(x, y + thick)];
  const waste = [at(edge - slope * thick, y), at(edge, y), at(edge, y + thick)];
  const blade = [at(edge - slope * (thick + 1), y - 1), at(edge + slope * over, y + thick + over)];
  const words = sideWords[down];
  const middle = (x + edge) / 2;
  const guide =
    saw === "track"
      ? [filledBox(boxAt(edge - 24, y + thick, 24, bar.thick), 0.25)]
      : [filledBox(boxAt(min.x, y, bar.thick, bar.high), 0.25)];
  return [
    { kind: "fill", paths: [waste.map(straight)], grey: 0.88 },
    lineThrough(waste, "narrow", true),
    lineThrough(part, "visible", true),
    lineThrough(blade, "centre"),
    lineThrough([at(min.x, y), at(max.x, y)], "narrow"),
    ...guide,
    write(at(middle, y + thick - 3.4), words.up, { height: 2.5, anchor: "middle" }),
    write(at(middle, y + 0.9), words.down, { height: 2.5, anchor: "middle", bold: true }),
    write(at(edge + slope * over + 1, y + thick + 1), degrees(tilt), { height: 2.5 }),
  ];
}

/** The sides of what is bevelled as it lies; a strip has its name on the side that lay up on the sheet. */
const sideWords: Readonly<Record<BevelCut["down"], { readonly up: string; readonly down: string }>> = {
  face: { up: "back", down: "face down" },
  back: { up: "face", down: "back down" },
  upper: { up: "", down: "name down" },
  under: { up: "name up", down: "" },
};

const at = (x: number, y: number): Point => ({ x, y });
const straight = ({ x, y }: Point): Bend => ({ x, y, bulge: 0 });
