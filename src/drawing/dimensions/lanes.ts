import type { Extents, Point } from "../../geometry/profile.js";
import type { Show } from "../../input/show.js";
import type { Item } from "../page.js";
import { lineThrough } from "../shapes.js";
import { runningSize } from "../sizes.js";
import { textWidth, write } from "../textBox.js";
import { toPaper, type View } from "../view.js";
import { distinct, type Mark } from "./marks.js";

// Running dimensions: all from one datum, each written at the end of its extension line in a lane beside the view.
// ISO 129-1 knows them as superimposed running dimensions (from memory). They take one lane however many there are.

export type LaneSide = "below" | "above" | "left" | "right";
export type Lane = { readonly side: LaneSide; readonly marks: readonly Mark[] };

const height = 2.5;
/** From one number to the next, mm of paper. */
const pitch = 4.4;
/** From the view to where an extension line may bend, and from there to its number. */
const straight = 3;
const bend = 4;
const toNumber = 1;

const sides = { x: ["below", "above"], y: ["left", "right"] } as const;

/**
 * Each mark goes to the side of the datum unless the other is less than half as far, so that most numbers stand together
 * and no line crosses the part for nothing; each value once.
 */
export function lanesOf(
  marks: readonly Mark[],
  extents: Extents,
  view: { readonly from: View["from"] },
): readonly Lane[] {
  return (["x", "y"] as const).flatMap((along) => {
    const across = along === "x" ? "y" : "x";
    const near = (mark: Mark) => mark.at[across] - extents.min[across];
    const far = (mark: Mark) => 2 * (extents.max[across] - mark.at[across]);
    const once = distinct(
      marks.filter((mark) => mark.along === along),
      (mark) => Math.min(near(mark), far(mark)),
    );
    const [low, high] = along === "y" && view.from === "back" ? [sides.y[1], sides.y[0]] : sides[along];
    return [
      { side: low, marks: once.filter((mark) => near(mark) <= far(mark) + 1e-6) },
      { side: high, marks: once.filter((mark) => near(mark) > far(mark) + 1e-6) },
    ];
  });
}

/** How far a lane reaches out from the view, mm of paper; 0 where it is empty. */
export function laneDepth(lane: Lane | undefined, show: Show): number {
  if (!lane || lane.marks.length === 0) return 0;
  const widest = Math.max(...lane.marks.map(({ value }) => textWidth(runningSize(value, show), height)));
  return straight + bend + toNumber + widest + 1;
}

/** The least length of paper a lane's numbers need, from the middle of the first to that of the last. */
export function laneLength(lane: Lane): number {
  return Math.max(0, lane.marks.length - 1) * pitch;
}

/** A lane's extension lines and numbers around the view's box on paper. */
export function drawLane(lane: Lane, view: View, box: Extents, show: Show): readonly Item[] {
  const along = lane.side === "below" || lane.side === "above" ? "x" : "y";
  const starts = lane.marks
    .map((mark) => ({ mark, at: toPaper(view, mark.at) }))
    .sort((a, b) => a.at[along] - b.at[along]);
  const places = spread(
    starts.map(({ at }) => at[along]),
    pitch,
    box.min[along],
    box.max[along],
  );
  return starts.flatMap(({ mark, at }, i) => drawMark(lane.side, at, places[i]!, mark, view, box, show));
}

function drawMark(
  side: LaneSide,
  at: Point,
  place: number,
  mark: Mark,
  view: View,
  box: Extents,
  show: Show,
): readonly Item[] {
  const out = side === "below" || side === "left" ? -1 : 1;
  const upright = side === "below" || side === "above";
  const edge = { below: box.min.y, above: box.max.y, left: box.min.x, right: box.max.x }[side];
  const point = (along: number, across: number): Point => (upright ? { x: along, y: across } : { x: across, y: along });
  const from = upright ? at : { x: at.y, y: at.x };
  const gap = mark.clear * view.scale + (mark.clear > 0 ? 1.8 : 0.8);
  const line = [
    point(from.x, from.y + out * gap),
    point(from.x, edge + out * straight),
    point(place, edge + out * (straight + bend)),
  ];
  const text = runningSize(mark.value, show);
  const end = point(place + (upright ? height / 2 : -height / 2), edge + out * (straight + bend + toNumber));
  const anchor = out < 0 ? "end" : "start";
  return [lineThrough(line, "narrow"), write(end, text, { height, anchor, turn: upright ? Math.PI / 2 : 0 })];
}

/**
 * Places for numbers in order along a line: at least `step` apart, within `low` to `high` where they fit, and as near
 * as that allows to where they want to be. Neighbours that push each other settle about their common middle.
 */
export function spread(wanted: readonly number[], step: number, low: number, high: number): readonly number[] {
  type Block = { readonly sum: number; readonly count: number };
  const start = ({ sum, count }: Block) => {
    const first = sum / count - ((count - 1) * step) / 2;
    return Math.max(low, Math.min(first, high - (count - 1) * step));
  };
  const blocks: Block[] = [];
  for (const place of wanted) {
    let block: Block = { sum: place, count: 1 };
    for (let last = blocks.at(-1); last && start(last) + last.count * step > start(block); last = blocks.at(-1)) {
      blocks.pop();
      block = { sum: last.sum + block.sum, count: last.count + block.count };
    }
    blocks.push(block);
  }
  return blocks.flatMap((block) => Array.from({ length: block.count }, (_, i) => start(block) + i * step));
}
