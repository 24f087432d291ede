import { midpoint } from "../geometry/arc.js";
import { extentsOf, isCircle } from "../geometry/measure.js";
import type { Path, Point, Profile, Vertex } from "../geometry/profile.js";
import type { Show } from "../input/show.js";
import type { Feature, Part } from "../model/part.js";
import type { Callout } from "./callouts.js";
import type { Label } from "./dimensions/labels.js";
import { reliefsOf } from "./dimensions/relief.js";
import { roundingsOf } from "./dimensions/sharpCorners.js";
import { polar } from "./shapes.js";
import { toolSize } from "./sizes.js";
import { textWidth } from "./textBox.js";
import { toPaper, type View } from "./view.js";

/** The words inside a view: the letters of its features, and the radii of its rounded corners. */
export function partLabels(
  part: Part,
  callouts: readonly Callout[],
  view: View,
  tabled: boolean,
  show: Show,
): readonly Label[] {
  return [
    ...callouts.flatMap((callout) => calloutLabels(callout, part, view, tabled)),
    ...(view.from === "face" ? radiusLabels(part, view, show) : []),
    ...part.features.flatMap((feature) => markLabel(feature, view)),
  ];
}

/** A letter beside each hole; beside one of them where all lie on a circle. */
function calloutLabels(callout: Callout, part: Part, view: View, tabled: boolean): readonly Label[] {
  const features = callout.circle ? callout.features.slice(0, 1) : callout.features;
  const numbered = tabled && features.length > 1;
  return features.flatMap((feature, i) =>
    featureLabel(feature, numbered ? `${callout.letter}${i + 1}` : callout.label, part, view),
  );
}

function featureLabel({ cut, side }: Feature, text: string, part: Part, view: View): readonly Label[] {
  const label = (at: Point, clear: number, tip: Label["tip"] = "none"): readonly Label[] => [
    { text, at, clear, tip, always: tip === "arrow", bold: true },
  ];
  const arrows = (places: readonly Point[]) => places.flatMap((place) => label(toPaper(view, place), 0, "arrow"));
  switch (cut.kind) {
    case "opening":
      return openingLabel(text, cut.region.outer, view);
    case "pocket":
      return arrows(upperRight(cut.region.outer));
    case "groove":
      return arrows(longestMiddle(edgesOf(cut.path, cut.closed)));
    case "edge": {
      const all = [part.profile.outer, ...part.profile.holes].flatMap((profile) => edgesOf(profile, true));
      return arrows(longestMiddle(all.filter(({ from }) => cut.along.includes(from.by))));
    }
    case "hole":
      return label(toPaper(view, cut.at), typeof side === "object" ? 0.6 : (cut.d / 2) * view.scale);
    default:
      return [];
  }
}

/** Inside the opening, its letter alone where the size has no room; beside a very small one, with an arrow. */
function openingLabel(text: string, outer: Profile, view: View): readonly Label[] {
  const { min, max } = extentsOf(outer);
  const room = Math.min(max.x - min.x, (max.y - min.y) * 4) * view.scale - 4;
  const middle = { x: (min.x + max.x) / 2, y: (min.y + max.y) / 2 };
  const letter = text.split(" ")[0]!;
  const fits = [text, letter].find((words) => textWidth(words, 2.5, true) <= room);
  if (fits !== undefined) {
    const aside = besideCross(textWidth(fits, 2.5, true), outer, view);
    const at = toPaper(view, middle);
    return [{ text: fits, at: { x: at.x + aside.x, y: at.y + aside.y }, clear: 0.5, tip: "inside", bold: true }];
  }
  return upperRight(outer).map((place) => ({
    text: letter,
    at: toPaper(view, place),
    clear: 0,
    tip: "arrow" as const,
    always: true,
    bold: true,
  }));
}

/** From the middle of a round opening to where words stand off its centre lines, where there is room, mm of paper. */
function besideCross(width: number, outer: Profile, view: View): Point {
  const round = isCircle(outer);
  const roomy = round !== undefined && round.radius * view.scale > Math.hypot(width + 5, 6);
  return roomy ? { x: width / 2 + 2.5, y: 3 } : { x: 0, y: 0 };
}

/** A place on the outline towards the upper right. */
function upperRight(outer: Profile): readonly Point[] {
  const round = isCircle(outer);
  if (round) return [polar(round.center, round.radius, Math.PI / 4)];
  return longestMiddle(edgesOf(outer, true));
}

type Edge = { readonly from: Vertex; readonly to: Vertex };

function edgesOf(path: Path, closed: boolean): readonly Edge[] {
  return path.slice(0, closed ? undefined : -1).map((from, i) => ({ from, to: path[(i + 1) % path.length]! }));
}

/** The middle of the longest edge; none where there are no edges. */
function longestMiddle(edges: readonly Edge[]): readonly Point[] {
  const chord = ({ from, to }: Edge) => Math.hypot(to.x - from.x, to.y - from.y);
  const [longest] = [...edges].sort((a, b) => chord(b) - chord(a));
  return longest ? [midpoint(longest.from, longest.to)] : [];
}

/** "4 × R60" at one of the corners that are rounded alike, "4 × R3 relief" at one of those that are relieved. */
function radiusLabels(part: Part, view: View, show: Show): readonly Label[] {
  const groups = new Map<string, Point[]>();
  const shapes = [
    part.profile.outer,
    ...part.features.flatMap(({ cut }) => (cut.kind === "opening" || cut.kind === "pocket" ? [cut.region.outer] : [])),
  ];
  const add = (text: string, middle: Point) => groups.set(text, [...(groups.get(text) ?? []), middle]);
  for (const { radius, middle } of shapes.flatMap(roundingsOf)) add(`R${toolSize(radius, show)}`, middle);
  for (const { radius, middle } of shapes.flatMap(reliefsOf)) add(`R${toolSize(radius, show)} relief`, middle);
  return [...groups].map(([text, alike]) => ({
    text: alike.length === 1 ? text : `${alike.length} × ${text}`,
    at: toPaper(view, alike[0]!),
    clear: 0,
    tip: "arrow" as const,
    always: true,
  }));
}

function markLabel({ cut, side }: Feature, view: View): readonly Label[] {
  if (cut.kind !== "mark" || side !== view.from) return [];
  return [{ text: `mark: ${cut.text}`, at: toPaper(view, cut.at), clear: 1.2, tip: "none" }];
}
