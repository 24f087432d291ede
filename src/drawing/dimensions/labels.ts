import type { Extents, Point } from "../../geometry/profile.js";
import type { Item, Text } from "../page.js";
import { arrowHead, filledBox, lineThrough } from "../shapes.js";
import { boxOf, textWidth, write } from "../textBox.js";

/**
 * Words that belong beside a place. `clear`: how far round the place they keep off, mm of paper. `tip`: what ends the
 * leader at the place; words inside what they name have none. A label that finds room close by needs no leader unless `always`.
 */
export type Label = {
  readonly text: string;
  readonly at: Point;
  readonly clear: number;
  readonly tip: "arrow" | "none" | "inside";
  readonly always?: boolean;
  readonly height?: number;
  readonly bold?: boolean;
};

export type Segment = readonly [Point, Point];

const directions = Array.from({ length: 16 }, (_, i) => ((2 * i + 1) * Math.PI) / 16);
const distances = [0.6, 1.6, 3, 5, 7.5, 10.5, 14, 18, 24, 32];
/** A label nearer than this explains itself. */
const beside = 2;
const margin = 0.5;
/** A leader with an arrowhead needs this much, mm. */
const shortest = 5;

type Place = { readonly words: Text; readonly box: Extents; readonly leader?: Segment };

/**
 * Sets labels one after the other, each where it crosses the fewest lines and stands nearest to its place, never over
 * other words (`taken`) and inside `room`. Under each lies a white patch, so that a crossing line does not strike it out.
 */
export function placeLabels(
  labels: readonly Label[],
  room: Extents,
  taken: readonly Extents[],
  lines: readonly Segment[],
): readonly Item[] {
  const boxes = [...taken];
  const segments = [...lines];
  const patches: Item[] = [];
  const over: Item[] = [];
  for (const label of labels) {
    const place = bestPlace(
      label,
      room,
      boxes,
      segments.filter((segment) => crosses(segment, reachOf(label))),
    );
    boxes.push(place.box);
    patches.push(filledBox(grown(place.box, 0.2), 1));
    over.push(place.words);
    if (!place.leader) continue;
    segments.push(place.leader);
    over.push(...drawLeader(place.leader, label.tip));
  }
  return [...patches, ...over];
}

/** All the paper that a label could come to stand on. */
function reachOf({ at, clear, text, height = 2.5 }: Label): Extents {
  const far = clear + distances.at(-1)! + textWidth(text, height, true) + 1;
  return { min: { x: at.x - far, y: at.y - far }, max: { x: at.x + far, y: at.y + far } };
}

function drawLeader(leader: Segment, tip: Label["tip"]): readonly Item[] {
  const [from, to] = leader;
  const line = lineThrough(leader, "narrow");
  return tip === "arrow" ? [line, arrowHead(to, Math.atan2(to.y - from.y, to.x - from.x))] : [line];
}

function bestPlace(label: Label, room: Extents, boxes: readonly Extents[], segments: readonly Segment[]): Place {
  const free = (place: Place) => within(place.box, room) && !boxes.some((box) => overlap(box, place.box, margin));
  const straight = ({ leader }: Place) => !leader || !boxes.some((box) => crosses(leader, box));
  return (
    cheapest(label, segments, (place) => free(place) && straight(place)) ??
    cheapest(label, segments, free) ??
    placeAt(label, directions[0]!, distances[0]!)
  );
}

/** The place that crosses the fewest lines nearest by, of those that will do; rings that cannot win are not tried. */
function cheapest(label: Label, segments: readonly Segment[], willDo: (place: Place) => boolean): Place | undefined {
  let best: { readonly place: Place; readonly cost: number } | undefined;
  for (const [ring, distance] of distances.entries()) {
    if (label.always && distance < shortest) continue;
    if (best && best.cost < distance + ring) break;
    for (const angle of directions) {
      const place = placeAt(label, angle, distance);
      if (!willDo(place)) continue;
      const cost = crossings(place, segments) * 12 + distance + ring;
      if (!best || cost < best.cost) best = { place, cost };
    }
  }
  return best?.place;
}

function placeAt(label: Label, angle: number, distance: number): Place {
  const { height = 2.5, bold = false } = label;
  const flat = boxOf(write({ x: 0, y: 0 }, label.text, { height, bold, anchor: "middle" }));
  const half = { x: (flat.max.x - flat.min.x) / 2, y: (flat.max.y - flat.min.y) / 2 };
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const end = (far: number): Point => ({ x: label.at.x + far * cos, y: label.at.y + far * sin });
  // The words lean outward from where the leader ends: beside it to the left or right, else above or below.
  const near = end(label.clear + distance);
  const inside = label.tip === "inside";
  const middle = inside ? near : { x: near.x + half.x * lean(cos), y: near.y + half.y * lean(sin) };
  const words = write({ x: middle.x, y: middle.y - (flat.max.y + flat.min.y) / 2 }, label.text, {
    height,
    bold,
    anchor: "middle",
  });
  const box = boxOf(words);
  if (label.tip === "inside" || (distance < beside && !label.always)) return { words, box };
  return { words, box, leader: [end(label.clear + distance - 0.4), end(label.clear)] };
}

/** From the middle of a box at 0 to its side at 1, reached well before the direction runs along the axis. */
function lean(cosine: number): number {
  return Math.max(-1, Math.min(1, 1.6 * cosine));
}

/** Lines that run through the words count in full, lines that the leader crosses less. */
function crossings({ box, leader }: Place, segments: readonly Segment[]): number {
  const near = grown(box, 0.4);
  return segments.reduce((sum, segment) => {
    if (crosses(segment, near)) return sum + 1;
    return leader && meet(segment, leader) ? sum + 0.3 : sum;
  }, 0);
}

export function overlap(a: Extents, b: Extents, gap: number): boolean {
  return a.min.x < b.max.x + gap && b.min.x < a.max.x + gap && a.min.y < b.max.y + gap && b.min.y < a.max.y + gap;
}

function within(box: Extents, room: Extents): boolean {
  return box.min.x >= room.min.x && box.max.x <= room.max.x && box.min.y >= room.min.y && box.max.y <= room.max.y;
}

function grown({ min, max }: Extents, by: number): Extents {
  return { min: { x: min.x - by, y: min.y - by }, max: { x: max.x + by, y: max.y + by } };
}

/** A segment touches a box: clipped to it, something is left (Liang and Barsky, 1984, from memory). */
export function crosses([a, b]: Segment, box: Extents): boolean {
  let t0 = 0;
  let t1 = 1;
  for (const axis of ["x", "y"] as const) {
    const d = b[axis] - a[axis];
    if (Math.abs(d) < 1e-12) {
      if (a[axis] < box.min[axis] || a[axis] > box.max[axis]) return false;
      continue;
    }
    const [p, q] = [(box.min[axis] - a[axis]) / d, (box.max[axis] - a[axis]) / d];
    t0 = Math.max(t0, Math.min(p, q));
    t1 = Math.min(t1, Math.max(p, q));
    if (t0 > t1) return false;
  }
  return true;
}

/** Whether two lines cross. */
export function meet([a, b]: Segment, [c, d]: Segment): boolean {
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

function side(a: Point, b: Point, p: Point): number {
  return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
}
