import { arcOf, midpoint, radiusOf, sagittaOf } from "../../geometry/arc.js";
import type { Point } from "../../geometry/profile.js";
import { tessellatePath } from "../../geometry/tessellate.js";
import { samePoint } from "../../geometry/tolerance.js";
import type { Move } from "../../model/program.js";
import type { Controller } from "../../model/shop.js";

type Place = Move["to"];

/** A move as a controller takes it. mm. */
export type Stroke =
  | { readonly kind: "straight"; readonly to: Place; readonly feed: Move["feed"] }
  /** No more than half a turn. */
  | { readonly kind: "arc"; readonly from: Place; readonly to: Place; readonly bulge: number; readonly feed: number }
  /** Once round, back to where it began in plan. */
  | {
      readonly kind: "circle";
      readonly from: Place;
      readonly to: Place;
      readonly center: Point;
      readonly left: boolean;
      readonly feed: number;
    };

/** Arcs wider than this are sent as lines: where a controller reckons in single precision, 7 digits, it would lose a
 *  thousandth of a millimetre (computed). mm. */
const widest = 10_000;

type Arc = Extract<Stroke, { kind: "arc" }>;

/**
 * Moves as a controller takes them: arcs over half a turn in two; two halves of one circle as one, where it takes whole
 * circles; arcs as lines within the chord, where it takes none. An arc that starts nowhere is a straight way to its end.
 */
export function strokesOf(moves: readonly Move[], controller: Controller): readonly Stroke[] {
  const strokes = moves.flatMap((move, i) => strokesOfMove(moves[i - 1]?.to, move));
  if (controller.arcs === "lines")
    return strokes.flatMap((stroke) => (stroke.kind === "arc" ? asLines(stroke, controller.chord) : [stroke]));
  const arcs = strokes.flatMap((stroke) =>
    stroke.kind === "arc" && isTooWide(stroke) ? asLines(stroke, controller.chord) : [stroke],
  );
  return controller.circles === "whole" ? wholeCircles(arcs) : arcs;
}

function strokesOfMove(from: Place | undefined, { to, bulge, feed }: Move): readonly Stroke[] {
  if (bulge === 0 || from === undefined || feed === "rapid" || samePlan(from, to))
    return [{ kind: "straight", to, feed }];
  const arc: Arc = { kind: "arc", from, to, bulge, feed };
  return Math.abs(bulge) > 1 + 1e-9 ? halved(arc) : [arc];
}

/** At the middle: tan(sweep / 8) of each half by the half-angle formula. */
function halved({ from, to, bulge, feed }: Arc): readonly Arc[] {
  const { x, y } = midpoint(vertex(from, bulge), vertex(to, 0));
  const middle: Place = [x, y, (from[2] + to[2]) / 2];
  const half = bulge / (1 + Math.sqrt(1 + bulge * bulge));
  return [
    { kind: "arc", from, to: middle, bulge: half, feed },
    { kind: "arc", from: middle, to, bulge: half, feed },
  ];
}

function isTooWide({ from, to, bulge }: Arc): boolean {
  return radiusOf(chordOf(from, to), bulge) > widest;
}

/** Straight pieces that stand off the arc by no more than `chord`; z changes evenly along it. */
export function asLines({ from, to, bulge, feed }: Arc, chord: number): readonly Stroke[] {
  const places =
    sagittaOf(chordOf(from, to), bulge) <= chord
      ? []
      : tessellatePath([vertex(from, bulge), vertex(to, 0)], chord).slice(1, -1);
  const pieces = places.length + 1;
  const inner = places.map(({ x, y }, i): Place => [x, y, from[2] + ((to[2] - from[2]) * (i + 1)) / pieces]);
  return [...inner, to].map((place) => ({ kind: "straight", to: place, feed }));
}

/** Two half turns the same way about one centre, with one feed and one slope, are one circle. */
function wholeCircles(strokes: readonly Stroke[]): readonly Stroke[] {
  const whole: Stroke[] = [];
  for (const stroke of strokes) {
    const last = whole[whole.length - 1];
    if (last?.kind === "arc" && stroke.kind === "arc" && isCircle(last, stroke))
      whole[whole.length - 1] = circleOf(last, stroke);
    else whole.push(stroke);
  }
  return whole;
}

function isCircle(a: Arc, b: Arc): boolean {
  const half = (bulge: number) => Math.abs(Math.abs(bulge) - 1) < 1e-9;
  const evenly = Math.abs(b.to[2] - b.from[2] - (a.to[2] - a.from[2])) < 1e-9;
  return (
    half(a.bulge) && half(b.bulge) && a.bulge * b.bulge > 0 && samePlan(a.from, b.to) && a.feed === b.feed && evenly
  );
}

function circleOf(a: Arc, b: Arc): Stroke {
  const { center } = arcOf(vertex(a.from, a.bulge), vertex(a.to, 0));
  return { kind: "circle", from: a.from, to: b.to, center, left: a.bulge > 0, feed: a.feed };
}

const vertex = ([x, y]: Place, bulge: number) => ({ x, y, bulge, by: "" });
const chordOf = (a: Place, b: Place) => Math.hypot(b[0] - a[0], b[1] - a[1]);
const samePlan = (a: Place, b: Place) => samePoint({ x: a[0], y: a[1] }, { x: b[0], y: b[1] });
