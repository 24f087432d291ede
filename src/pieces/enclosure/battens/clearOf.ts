import { inverse, place, type Vector } from "../../../geometry/frame.js";
import { edgeLine, squareTo } from "../chambers/section.js";
import { betweenFaces, clipped, insideEdge, sidesOf } from "../chambers/sheetBody.js";
import type { Sheet } from "../form/face.js";
import { alongTo, crossing, type Line } from "../form/lines.js";
import { cornersOf } from "../removable/corners.js";

/**
 * A bar cut back at its ends as far as other boards reach into it, each such end square. Its outline runs along its wall,
 * then round its far end, its inner side and its near end. All in one frame that holds the boards.
 */
export function clearOf(bar: Sheet, others: readonly Sheet[]): Sheet {
  return others.reduce(cutBack, bar);
}

function cutBack(bar: Sheet, other: Sheet): Sheet {
  const sides = sidesOf(other, bar);
  const [ofWall, ofFar, ofInner, ofNear] = bar.outline.map((_, i) => insideEdge(bar, i));
  // the bar as if it had no ends
  const endless = clipped(sides, [...betweenFaces(bar), ofWall!, ofInner!]);
  if (clipped(endless, [ofFar!, ofNear!]).length === 0) return bar;
  const line = edgeLine(bar.outline, 0);
  const along = (places: readonly Vector[]) => places.map(([x, y]) => alongTo(line, { x, y }));
  const [reach, own] = [
    along(endless.flat()),
    along(cornersOf(bar).map((corner) => place(inverse(bar.frame), corner))),
  ];
  const middle = (Math.min(...own) + Math.max(...own)) / 2;
  const isNear = (Math.min(...reach) + Math.max(...reach)) / 2 < middle;
  const ends = own.filter((at) => at < middle === isNear);
  return cutAt(bar, isNear, isNear ? Math.max(...reach, ...ends) : Math.min(...reach, ...ends));
}

/** The bar with one end cut square so far along its wall, mm. */
function cutAt(bar: Sheet, isNear: boolean, at: number): Sheet {
  const { outline } = bar;
  const [line, inner] = [edgeLine(outline, 0), edgeLine(outline, 2)];
  const corner = (edge: Line, i: number) => ({ ...outline[i]!, ...crossing(edge, squareTo(line, at)) });
  const gone = outline[isNear ? 3 : 1]!.by;
  return {
    ...bar,
    outline: isNear
      ? [corner(line, 0), outline[1]!, outline[2]!, corner(inner, 3)]
      : [outline[0]!, corner(line, 1), corner(inner, 2), outline[3]!],
    bevels: Object.fromEntries(Object.entries(bar.bevels).filter(([by]) => by !== gone)),
  };
}
