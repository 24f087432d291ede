import { areaOf } from "../../../geometry/measure.js";
import type { Profile } from "../../../geometry/profile.js";
import { outlineAt } from "../chambers/innerSheet.js";
import { edgeLine, meetsAt } from "../chambers/section.js";
import type { Sheet } from "../form/face.js";
import { crossing, inward, type Line } from "../form/lines.js";

/** What runs along the edges of an outline on its inside: how wide at each edge, mm; 0 where nothing does. */
export type Widths = (by: string) => number;

/** The name of a strip's long edge that looks inwards. */
export const innerEdge = "free";

/** A strip along one edge, in the axes of the sheet whose edge that is. */
export type Strip = { readonly along: string; readonly sheet: Sheet };

/**
 * Strips along the edges of a sheet, butted and not mitred: each runs through to what stands at the end of its edge and
 * begins at the inner side of the one before. Where that side leans, so does the strip's edge.
 *
 * Returns: none where a strip would have no length left.
 */
export function stripsAlong(
  sheet: Sheet,
  widths: Widths,
  thickness: number,
  name: string,
): readonly Strip[] | undefined {
  const { outline, bevels } = sheet;
  const n = outline.length;
  const strips = outline.flatMap(({ by }, i): readonly Strip[] => {
    const wide = widths(by);
    if (wide === 0) return [];
    const [line, before, after] = [i, i + n - 1, i + 1].map((k) => edgeLine(outline, k % n)) as [Line, Line, Line];
    const [byBefore, byAfter] = [outline[(i + n - 1) % n]!.by, outline[(i + 1) % n]!.by];
    const [wideBefore, wideAfter] = [widths(byBefore), widths(byAfter)];
    const inner = inward(line, wide);
    // round a corner that goes in the strip before runs on, and this one begins where its outer side is
    const start = isReflex(before, line) ? before : inward(before, wideBefore);
    const end = isReflex(line, after) ? inward(after, wideAfter) : after;
    const startName = wideBefore === 0 ? byBefore : `${name} ${byBefore}`;
    const endName = isReflex(line, after) ? `${name} ${byAfter}` : byAfter;
    const corners = [
      { line, at: start, by },
      { line, at: end, by: endName },
      { line: inner, at: end, by: innerEdge },
      { line: inner, at: start, by: startName },
    ];
    const own: Profile = corners.map((corner) => ({ ...crossing(corner.line, corner.at), bulge: 0, by: corner.by }));
    return [{ along: by, sheet: { frame: sheet.frame, outline: own, bevels: bevelsOf(own, bevels), thickness } }];
  });
  return strips.every(({ sheet: strip }) => keepsItsWay(strip)) ? strips : undefined;
}

/** The edges that lie on the sheet's own sides lean as those do. */
const bevelsOf = (own: Profile, bevels: Sheet["bevels"]): Sheet["bevels"] =>
  Object.fromEntries(own.flatMap(({ by }) => (bevels[by] === undefined ? [] : [[by, bevels[by]!]])));

const isReflex = (one: Line, other: Line): boolean => one.along.x * other.along.y - one.along.y * other.along.x < 0;

/** Whether a strip is one: every edge still runs its way at its back. */
export function keepsItsWay(strip: Sheet): boolean {
  const { outline } = strip;
  const back = outlineAt(strip, strip.thickness);
  const way = (loop: Profile, i: number) => {
    const [a, b] = [loop[i]!, loop[(i + 1) % loop.length]!];
    return { x: b.x - a.x, y: b.y - a.y };
  };
  const keeps = outline.every((_, i) => {
    const [edge, one, other] = [edgeLine(outline, i).along, way(outline, i), way(back, i)];
    return one.x * edge.x + one.y * edge.y > 0 && other.x * edge.x + other.y * edge.y > least;
  });
  return keeps && areaOf(outline) > 0;
}

/** An edge shorter than this is none, mm. */
const least = 1;

/** What the strips leave open of the outline; none where they meet. */
export function openingWithin({ outline }: Pick<Sheet, "outline">, widths: Widths): Profile | undefined {
  const n = outline.length;
  const lines = outline.map(({ by }, i) => inward(edgeLine(outline, i), widths(by)));
  const open = outline.map(({ by }, i) => ({ ...crossing(lines[(i + n - 1) % n]!, lines[i]!), bulge: 0, by }));
  const runsOn = lines.every((line, i) => {
    return meetsAt(line, lines[(i + 1) % n]!) - meetsAt(line, lines[(i + n - 1) % n]!) > least;
  });
  return runsOn ? open : undefined;
}
