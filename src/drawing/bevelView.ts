import type { Extents, Point } from "../geometry/profile.js";
import type { BevelCut } from "../model/rip.js";
import type { Bend, Item } from "./page.js";
import { boxAt, filledBox, lineThrough } from "./shapes.js";
import { degrees } from "./sizes.js";
import { write } from "./textBox.js";

/** On paper, mm: the board's thickness, what lies between it and the ends of its room, and how far the blade stands out. */
const thick = 9;
const beside = 18;
const over = 5;
const bar = { thick: 2, high: 14 };

/**
 * A bevel as one sees it at the end of the part, not to scale but for its angle: the smaller side down, the part white, what
 * falls off grey. At the table saw the fence or stop block stands on its other side; at the track the track lies on it.
 */
export function bevelPicture({ saw, tilt, down }: BevelCut, { min, max }: Extents): readonly Item[] {
  const slope = Math.tan(tilt);
  const y = min.y + Math.max(3, (max.y - min.y - thick) / 2 - 3);
  const x = min.x + bar.thick + 1;
  const edge = max.x - beside;
  const part = [at(x, y), at(edge - slope * thick, y), at(edge, y + thick), at(x, y + thick)];
  const waste = [at(edge - slope * thick, y), at(edge, y), at(edge, y + thick)];
  const blade = [at(edge - slope * (thick + 1), y - 1), at(edge + slope * over, y + thick + over)];
  const up = down === "back" ? "face" : "back";
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
    write(at(middle, y + thick - 3.4), up, { height: 2.5, anchor: "middle" }),
    write(at(middle, y + 0.9), `${down} down`, { height: 2.5, anchor: "middle", bold: true }),
    write(at(edge + slope * over + 1, y + thick + 1), degrees(tilt), { height: 2.5 }),
  ];
}

const at = (x: number, y: number): Point => ({ x, y });
const straight = ({ x, y }: Point): Bend => ({ x, y, bulge: 0 });
