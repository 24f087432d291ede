import { extentsOf, isCircle } from "../geometry/measure.js";
import type { Point, Profile } from "../geometry/profile.js";
import type { Show } from "../input/show.js";
import type { Axis } from "../model/joint.js";
import type { Cut, Feature, Part, Sink } from "../model/part.js";
import { type CirclePattern, circlePattern } from "./circlePattern.js";
import { datumOf } from "./datum.js";
import { unrelieved } from "./dimensions/relief.js";
import { distanceFromEdge } from "./grooveDistance.js";
import { purposeOf } from "./purpose.js";
import { degrees, runningSize, sizePair, spanSize, toolSize } from "./sizes.js";

/**
 * Features of a part that are cut alike and share a letter: "C, 6 × ⌀9, 14 deep, threaded insert for M6". `label`
 * stands beside the feature, `size` and `words` in the list. `circle`: they lie on one in equal steps.
 */
export type Callout = {
  readonly letter: string;
  readonly features: readonly Feature[];
  readonly size: string;
  readonly words: string;
  readonly label: string;
  readonly circle?: CirclePattern;
};

/** All of a part's features but outline, notches and marks, in the order in which they are listed. */
export function calloutsOf(part: Part, axes: readonly Axis[], show: Show): readonly Callout[] {
  const described = part.features.flatMap((feature) => {
    const words = describe(feature, part, show);
    return words ? [{ feature, ...words, purpose: purposeOf(feature, axes).join(", ") }] : [];
  });
  const groups = new Map<string, (typeof described)[number][]>();
  for (const each of described) {
    const key = [order(each.feature), each.size, each.words, each.purpose].join("\n");
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  const centres = centresOf(part);
  return [...groups.values()]
    .sort((a, b) => order(a[0]!.feature) - order(b[0]!.feature))
    .map((group, index) => {
      const { size, words, purpose } = group[0]!;
      const features = group.map((each) => each.feature);
      const letter = letterOf(index);
      const circle = circlePattern(features.flatMap(holeCentre), centres);
      return {
        letter,
        features,
        size,
        words: [words, circle && onCircle(circle, show), purpose].filter(Boolean).join(", "),
        label: [letter, ...features.slice(0, 1).flatMap((first) => sizeInView(first, part, show))].join(" "),
        ...(circle && { circle }),
      };
    });
}

function sizeInView({ cut }: Feature, part: Part, show: Show): readonly string[] {
  return cut.kind === "opening" ? [shortSize(cut.region.outer, part, show)] : [];
}

/** A, B ... without I and O, which read as 1 and 0; then AA, AB ... */
export function letterOf(index: number): string {
  const letters = "ABCDEFGHJKLMNPQRSTUVWXYZ";
  const tail = letters[index % letters.length]!;
  return index < letters.length ? tail : letterOf(Math.floor(index / letters.length) - 1) + tail;
}

/** Middles about which a circle of holes may lie: round openings, pockets and outlines. */
function centresOf(part: Part): readonly Point[] {
  const rounds = part.features.flatMap(({ cut }) => ("region" in cut ? [isCircle(cut.region.outer)] : []));
  return rounds.flatMap((round) => (round ? [round.center] : []));
}

function holeCentre({ cut, side }: Feature): readonly Point[] {
  return cut.kind === "hole" && typeof side === "string" ? [cut.at] : [];
}

const kindOrder: Readonly<Record<Cut["kind"], number>> = {
  outline: 0,
  notch: 0,
  opening: 1,
  pocket: 2,
  groove: 3,
  edge: 4,
  hole: 5,
  mark: 7,
};

function order({ cut, side }: Feature): number {
  return cut.kind === "hole" && typeof side === "object" ? 6 : kindOrder[cut.kind];
}

function describe(
  feature: Feature,
  part: Part,
  show: Show,
): { readonly size: string; readonly words: string } | undefined {
  const { cut, side } = feature;
  const where = side === "back" ? "back" : undefined;
  switch (cut.kind) {
    case "outline":
    case "notch":
    case "mark":
      return undefined;
    case "opening":
      return { size: shapeSize(cut.region.outer, part, show), words: "opening" };
    case "pocket":
      return { size: shapeSize(cut.region.outer, part, show), words: joined("recess", deep(cut.depth, show), where) };
    case "groove":
      return {
        size: `${toolSize(cut.width, show)} wide`,
        words: joined("groove", deep(cut.depth, show), fromEdge(cut, part, show), where),
      };
    case "edge":
      return edgeWords(cut, where, show);
    case "hole":
      return {
        size: `⌀${toolSize(cut.d, show)}`,
        words: joined(
          cut.depth === "through" ? "through" : deep(cut.depth, show),
          cut.sink && sinkWords(cut.sink, show),
          typeof side === "object" ? intoEdge(cut.below, show) : where,
        ),
      };
  }
}

function fromEdge(cut: Extract<Cut, { kind: "groove" }>, part: Part, show: Show): string | undefined {
  const away = distanceFromEdge(cut, part);
  return away === undefined ? undefined : `its middle ${toolSize(away, show)} from the edge`;
}

function shapeSize(outer: Profile, part: Part, show: Show): string {
  const round = isCircle(outer);
  if (round) return `⌀${toolSize(2 * round.radius, show)}`;
  const { min, max } = extentsOf(unrelieved(outer));
  const exact = sizePair(max.x - min.x, max.y - min.y, { unit: "mm" });
  return show.unit === "mm" ? shortSize(outer, part, show) : `${shortSize(outer, part, show)} [${exact}]`;
}

/** A shape's size as it stands in the view, in one unit; it agrees with the positions of its sides. */
function shortSize(outer: Profile, part: Part, show: Show): string {
  const round = isCircle(outer);
  if (round) return `⌀${runningSize(2 * round.radius, show)}`;
  const { min, max } = extentsOf(unrelieved(outer));
  const { x, y } = datumOf(part).at;
  return `${spanSize(min.x - x, max.x - x, show)} × ${spanSize(min.y - y, max.y - y, show)}`;
}

function edgeWords(cut: Extract<Cut, { kind: "edge" }>, where: string | undefined, show: Show) {
  const side = where ?? "face";
  switch (cut.form) {
    case "chamfer":
      return { size: `${toolSize(cut.width, show)} × ${degrees(cut.angle)}`, words: `chamfer, ${side} edge` };
    case "roundOver":
      return { size: `R${toolSize(cut.width, show)}`, words: `round-over, ${side} edge` };
    case "rebate":
      return { size: `${toolSize(cut.width, show)} wide`, words: joined("rebate", deep(cut.depth, show), side) };
  }
}

function sinkWords(sink: Sink, show: Show): string {
  return sink.angle > 0
    ? `countersunk ⌀${toolSize(sink.d, show)} at ${degrees(sink.angle)}`
    : `counterbored ⌀${toolSize(sink.d, show)}, ${deep(sink.depth, show)}`;
}

/** The view shows which edge. */
function intoEdge(below: number | undefined, show: Show): string {
  return below === undefined ? "into the edge" : `into the edge, ${toolSize(below, show)} below the face`;
}

function onCircle(circle: CirclePattern, show: Show): string {
  const first = circle.start === 0 ? "at" : `${degrees(circle.start)} above`;
  return `on ⌀${toolSize(circle.d, show)}, first ${first} 3 o'clock`;
}

function deep(depth: number, show: Show): string {
  return `${toolSize(depth, show)} deep`;
}

function joined(...words: readonly (string | undefined)[]): string {
  return words.filter(Boolean).join(", ");
}
