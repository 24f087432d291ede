import type { Extents, Point } from "../geometry/profile.js";
import type { Show } from "../input/show.js";
import type { Part } from "../model/part.js";
import type { Callout } from "./callouts.js";
import { datumOf } from "./datum.js";
import { type Lane, type LaneSide, laneDepth, laneLength, lanesOf } from "./dimensions/lanes.js";
import { marksOf } from "./dimensions/marks.js";
import { overallHeightDepth, overallWidthDepth } from "./dimensions/overall.js";
import { factorOf, largestScale, type Scale } from "./scale.js";
import { overallSize } from "./sizes.js";
import { boxToPaper, partExtents, type SeenFrom, type View, viewAt } from "./view.js";

/** How a part's view, lanes and overall sizes share a room. `tabled`: hole positions stand in a table instead. */
export type PartLayout = {
  readonly view: View;
  readonly box: Extents;
  readonly scale: Scale;
  readonly lanes: readonly Lane[];
  readonly depths: Readonly<Record<LaneSide, number>>;
  readonly tabled: boolean;
};

/** Height kept for the words over a view, mm of paper. */
const headingHeight = 8;
/** Left free where neither numbers nor overall sizes stand, mm of paper. */
const spare = 3;

/** The largest scale at which everything has its place. Holes go to a table when their numbers find no room. */
export function layOutPart(
  part: Part,
  from: SeenFrom,
  callouts: readonly Callout[],
  room: Extents,
  show: Show,
): PartLayout {
  const marks = marksOf(part, callouts, datumOf(part), from);
  const full = layOut(part, from, lanesOf(marks, partExtents(part), { from }), room, show);
  if (full.lanes.every((lane) => laneLength(lane) <= paperLength(lane.side, full.box)))
    return { ...full, tabled: false };
  const fewer = marks.filter((mark) => !mark.hole);
  return { ...layOut(part, from, lanesOf(fewer, partExtents(part), { from }), room, show), tabled: true };
}

function layOut(
  part: Part,
  from: SeenFrom,
  lanes: readonly Lane[],
  room: Extents,
  show: Show,
): Omit<PartLayout, "tabled"> {
  const depthOf = (side: LaneSide) =>
    laneDepth(
      lanes.find((lane) => lane.side === side),
      show,
    );
  const depths = { below: depthOf("below"), above: depthOf("above"), left: depthOf("left"), right: depthOf("right") };
  const { min, max } = partExtents(part);
  const words = overallSize(max.y - min.y, show);
  // How much the height's words take depends on the scale, and the scale on what they leave: twice is enough, as a
  // smaller view never needs less.
  const first = scaleBeside(overallHeightDepth(words, Number.POSITIVE_INFINITY));
  const beside = overallHeightDepth(words, (max.y - min.y) * factorOf(first.scale));
  const { scale, middle } = scaleBeside(beside);
  const view = viewAt(part, from, factorOf(scale), middle);
  return { view, box: boxToPaper(view, partExtents(part)), scale, lanes, depths };

  function scaleBeside(height: number): { readonly scale: Scale; readonly middle: Point } {
    const [left, right] = from === "face" ? [spare, height] : [height, spare];
    const low = { x: room.min.x + depths.left + left, y: room.min.y + depths.below + spare };
    const high = {
      x: room.max.x - depths.right - right,
      y: room.max.y - depths.above - overallWidthDepth - headingHeight,
    };
    return {
      scale: largestScale(max.x - min.x, max.y - min.y, { width: high.x - low.x, height: high.y - low.y }),
      middle: { x: (low.x + high.x) / 2, y: (low.y + high.y) / 2 },
    };
  }
}

function paperLength(side: LaneSide, box: Extents): number {
  return side === "below" || side === "above" ? box.max.x - box.min.x : box.max.y - box.min.y;
}
