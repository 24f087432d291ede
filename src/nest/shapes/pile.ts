import { collide } from "./collide.js";
import { type Fields, overlapOf, type Pair, pairOf } from "./overlap.js";
import type { Shape } from "./shape.js";

/**
 * Parts on one sheet that may lie over each other while the search sorts them out. It owns its buffers and is changed
 * in place: the inner loop makes no garbage.
 */
export type Pile = {
  readonly count: number;
  /** Every turn a part may have; what is fixed has one. */
  readonly turns: readonly (readonly Shape[])[];
  /** Of `count`, the first so many may move; the rest are obstacles. */
  readonly loose: number;
  /** Of each part now. */
  readonly turn: Int32Array;
  readonly shape: Shape[];
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Four numbers a part: its box. */
  readonly boxes: Float64Array;
  /** The room each part lies in: its place in `rooms`. */
  readonly room: Int32Array;
  /** Where parts may lie, four numbers a room: x0, y0, x1, y1. No two rooms are so near that parts could touch. */
  readonly rooms: Float64Array;
  /** count x count, symmetric. */
  readonly overlap: Float64Array;
  readonly weight: Float64Array;
  readonly fields: Fields;
  /** What is known of each pair of shapes: by the first's number times `kinds`, plus the second's. */
  readonly pairs: (Pair | undefined)[];
  readonly kinds: number;
  /** Places tried so far: what a budget counts. */
  tried: number;
};

export function makePile(
  turns: readonly (readonly Shape[])[],
  fields: Fields,
  loose: number,
  rooms: Float64Array,
): Pile {
  const count = turns.length;
  const kinds = 1 + Math.max(...turns.flat().map((shape) => shape.number));
  return {
    count,
    turns,
    loose,
    turn: new Int32Array(count),
    shape: turns.map(([first]) => first!),
    x: new Float64Array(count),
    y: new Float64Array(count),
    boxes: new Float64Array(4 * count),
    room: new Int32Array(count),
    overlap: new Float64Array(count * count),
    weight: new Float64Array(count * count).fill(1),
    rooms,
    fields,
    pairs: new Array<Pair | undefined>(kinds * kinds).fill(undefined),
    kinds,
    tried: 0,
  };
}

export function put(pile: Pile, i: number, room: number, turn: number, x: number, y: number): void {
  const shape = pile.turns[i]![turn]!;
  pile.room[i] = room;
  pile.turn[i] = turn;
  pile.shape[i] = shape;
  pile.x[i] = x;
  pile.y[i] = y;
  pile.boxes[4 * i] = x + shape.x0;
  pile.boxes[4 * i + 1] = y + shape.y0;
  pile.boxes[4 * i + 2] = x + shape.x1;
  pile.boxes[4 * i + 3] = y + shape.y1;
}

/** A new field counts as so many places: what it takes about as long as. */
const costOfField = 1000;

function overlapBetween(pile: Pile, a: Shape, b: Shape, dx: number, dy: number): number {
  const k = a.number * pile.kinds + b.number;
  let pair = pile.pairs[k];
  if (pair === undefined) {
    const made = pile.fields.made.size;
    pair = pairOf(pile.fields, a, b);
    pile.pairs[k] = pair;
    if (pile.fields.made.size > made) pile.tried += costOfField;
  }
  return overlapOf(pair, a, b, dx, dy);
}

/** The weighted overlap a part would have there; once it passes `limit`, any value above it. */
export function overlapAt(pile: Pile, i: number, shape: Shape, x: number, y: number, limit: number): number {
  const { boxes, count, weight } = pile;
  const x0 = x + shape.x0;
  const y0 = y + shape.y0;
  const x1 = x + shape.x1;
  const y1 = y + shape.y1;
  const row = i * count;
  pile.tried++;
  let sum = 0;
  for (let j = 0, b = 0; j < count; j++, b += 4) {
    if (boxes[b]! > x1 || boxes[b + 1]! > y1 || boxes[b + 2]! < x0 || boxes[b + 3]! < y0 || j === i) continue;
    const w = weight[row + j]!;
    sum += w * overlapBetween(pile, shape, pile.shape[j]!, pile.x[j]! - x, pile.y[j]! - y);
    if (sum > limit) return sum;
  }
  return sum;
}

/** Reckons anew how a part overlaps with all others; every 0 is proved by the edges, where the fields may miss a sliver. */
export function reckon(pile: Pile, i: number): void {
  const { boxes, count, overlap } = pile;
  const shape = pile.shape[i]!;
  for (let j = 0; j < count; j++) {
    const clear =
      j === i ||
      boxes[4 * j]! > boxes[4 * i + 2]! ||
      boxes[4 * j + 1]! > boxes[4 * i + 3]! ||
      boxes[4 * j + 2]! < boxes[4 * i]! ||
      boxes[4 * j + 3]! < boxes[4 * i + 1]!;
    const dx = pile.x[j]! - pile.x[i]!;
    const dy = pile.y[j]! - pile.y[i]!;
    let value = clear ? 0 : overlapBetween(pile, shape, pile.shape[j]!, dx, dy);
    if (!clear && value === 0 && collide(shape, pile.shape[j]!, dx, dy)) value = unseen(pile, shape, pile.shape[j]!);
    overlap[i * count + j] = value;
    overlap[j * count + i] = value;
  }
}

/** Of an overlap too thin for its field. */
function unseen(pile: Pile, a: Shape, b: Shape): number {
  return 0.1 * pile.pairs[a.number * pile.kinds + b.number]!.field.doubt * a.bulk * b.bulk;
}

export function reckonAll(pile: Pile): void {
  for (let i = 0; i < pile.loose; i++) reckon(pile, i);
}

/** Overlap of one part, as the weights have it. */
export function weighted(pile: Pile, i: number): number {
  const { count, overlap, weight } = pile;
  let sum = 0;
  for (let k = i * count; k < (i + 1) * count; k++) sum += overlap[k]! * weight[k]!;
  return sum;
}

/** Overlap of all pairs, every weight 1. */
export function totalOverlap(pile: Pile): number {
  const { count, loose, overlap } = pile;
  let sum = 0;
  for (let i = 0; i < loose; i++) for (let j = i + 1; j < count; j++) sum += overlap[i * count + j]!;
  return sum;
}

/** Where every loose part lies: room, turn, x, y. */
export type Lying = Float64Array;

export function lyingOf(pile: Pile): Lying {
  const lying = new Float64Array(4 * pile.loose);
  for (let i = 0; i < pile.loose; i++) lying.set([pile.room[i]!, pile.turn[i]!, pile.x[i]!, pile.y[i]!], 4 * i);
  return lying;
}

export function restore(pile: Pile, lying: Lying): void {
  for (let i = 0, k = 0; i < pile.loose; i++, k += 4)
    put(pile, i, lying[k]!, lying[k + 1]!, lying[k + 2]!, lying[k + 3]!);
}

/** The place nearest to x at which a shape lies within a room; it must be no larger than that. */
export function clampX(rooms: Float64Array, room: number, shape: Shape, x: number): number {
  return Math.max(rooms[4 * room]! - shape.x0, Math.min(rooms[4 * room + 2]! - shape.x1, x));
}

/** As `clampX`, for y. */
export function clampY(rooms: Float64Array, room: number, shape: Shape, y: number): number {
  return Math.max(rooms[4 * room + 1]! - shape.y0, Math.min(rooms[4 * room + 3]! - shape.y1, y));
}

export function fitsRoom(rooms: Float64Array, room: number, shape: Shape): boolean {
  return (
    shape.x1 - shape.x0 <= rooms[4 * room + 2]! - rooms[4 * room]! &&
    shape.y1 - shape.y0 <= rooms[4 * room + 3]! - rooms[4 * room + 1]!
  );
}

/** Lays a part into a room at the place nearest to x, y. */
export function putInside(pile: Pile, i: number, room: number, turn: number, x: number, y: number): void {
  const shape = pile.turns[i]![turn]!;
  put(pile, i, room, turn, clampX(pile.rooms, room, shape, x), clampY(pile.rooms, room, shape, y));
}
