import { type Random, randomFrom } from "../random.js";
import { shapesOf } from "./forms.js";
import type { Loop } from "./loops.js";
import { fitsRoom, type Lying, lyingOf, makePile, type Pile, putInside, reckonAll, restore } from "./pile.js";
import type { Effort } from "./place.js";
import type { Shape } from "./shape.js";
import { type Patience, untangle } from "./untangle.js";

/** Parts that are alike: their loops, how often, and the turns they may have. mm, rad. */
export type Form = { readonly loops: readonly Loop[]; readonly count: number; readonly turns: readonly number[] };

/** Forms to lie on a strip of this width, as short as can be. mm. */
export type StripOrder = { readonly forms: readonly Form[]; readonly width: number };

/** A layout without overlap, and the length of strip it takes. Parts lie in the order of the forms. */
export type StripLayout = { readonly length: number; readonly lying: Lying };

/** A search that can be stopped and gone on with. */
export type StripSearch = {
  readonly pile: Pile;
  readonly random: Random;
  readonly steps: Generator<void, void>;
  best: StripLayout;
  /** Share of the budget that is used, 0 to 1. */
  share: number;
  /** Share of the length that one step of exploring takes off. */
  stride: number;
  /** The best came from elsewhere: begin anew from it. */
  adopted: boolean;
  /** No layout is shorter than its widest part. */
  readonly least: number;
};

export function beginStrip({ forms, width }: StripOrder, seed: number): StripSearch {
  const { turns, fields } = shapesOf(forms, hairOf(width));
  const parts = forms.flatMap(({ count }, form) => Array.from({ length: count }, () => turns[form]!));
  const pile = makePile(parts, fields, parts.length, Float64Array.of(0, 0, 0, width));
  return beginOn(pile, { length: Number.POSITIVE_INFINITY, lying: lyingOf(pile) }, randomFrom(seed));
}

/** A search that begins from a layout without overlap: a pile in its one room, which is the strip. */
export function beginFrom(pile: Pile, random: Random): StripSearch {
  const right = Math.max(...Array.from({ length: pile.loose }, (_, i) => pile.boxes[4 * i + 2]!));
  return beginOn(pile, { length: right - pile.rooms[0]!, lying: lyingOf(pile) }, random);
}

function beginOn(pile: Pile, best: StripLayout, random: Random): StripSearch {
  const width = pile.rooms[3]! - pile.rooms[1]!;
  const narrowest = (turns: readonly Shape[]) =>
    Math.min(...turns.map((s) => (s.y1 - s.y0 > width ? Number.POSITIVE_INFINITY : s.x1 - s.x0)));
  const least = Math.max(...pile.turns.slice(0, pile.loose).map(narrowest));
  const search = { pile, random, best, share: 0, stride: strides.first, adopted: false, least };
  const whole: StripSearch = Object.assign(search, { steps: stepsOf(() => whole) });
  return whole;
}

/** What touches does not collide: far below what a machine or a published check can tell. */
const hairOf = (width: number): number => 1e-7 * width;

/** Goes on until so many more places are tried; `share` says how far the whole budget will be spent then. */
export function advance(search: StripSearch, tries: number, share: number): StripLayout {
  search.share = share;
  const end = search.pile.tried + tries;
  while (search.pile.tried < end && !search.steps.next().done) search.pile.tried++;
  return search.best;
}

/** Takes over a layout from another search if it is better. */
export function adopt(search: StripSearch, layout: StripLayout): void {
  if (layout.length >= search.best.length) return;
  search.best = layout;
  search.adopted = true;
}

const usual: Effort = { wide: 50, near: 25 };
/** Exploring begins with long steps, since the first layout is loose; a step that fails is halved, down to the last. */
const strides = { first: 0.08, last: 0.01 } as const;
/** Share of the budget for exploring; the rest only presses the best layout together. */
const exploring = 0.8;

const hasty: Patience = { effort: usual, passes: 15, rounds: 1 };
const patient: Patience = { effort: usual, passes: 100, rounds: 3 };

function* stepsOf(of: () => StripSearch): Generator<void, void> {
  const search = of();
  if (search.best.length === Number.POSITIVE_INFINITY) yield* start(search);
  while (search.share < exploring && canShorten(search)) yield* explore(search);
  while (canShorten(search)) yield* compress(search);
}

const canShorten = ({ best, least }: StripSearch): boolean => best.length > least * (1 + 2 * noise);

/** Lengths that differ by a smaller share are one: a room as long as its widest part must take it. */
const noise = 1e-9;

/** Scatters the parts over a strip that grows until they come apart. */
function* start(search: StripSearch): Generator<void, void> {
  const { pile, random } = search;
  const { rooms } = pile;
  const area = pile.shape.reduce((sum, s) => sum + s.area, 0);
  for (let length = Math.max(search.least, (1.6 * area) / rooms[3]!); !search.adopted; length *= 1.2) {
    rooms[2] = length;
    for (let i = 0; i < pile.loose; i++)
      putInside(pile, i, 0, turnThatFits(pile, i), random() * length, random() * rooms[3]!);
    if ((yield* untangle(pile, random, { effort: usual, passes: 30, rounds: 1 }, () => search.adopted)) === 0) {
      keep(search);
      return;
    }
  }
}

/** Shortens the strip a step at a time; where a length will not do, tries again from a disturbed layout. */
function* explore(search: StripSearch): Generator<void, void> {
  const { pile, random } = search;
  const pool: { overlap: number; lying: Lying }[] = [];
  search.adopted = false;
  restore(pile, search.best.lying);
  shorten(search, search.stride);
  while (search.share < exploring && !search.adopted) {
    const over = () => search.adopted || search.share >= exploring;
    const patience = search.stride > strides.last ? hasty : patient;
    const overlap = yield* untangle(pile, random, patience, over);
    if (over()) return;
    if (overlap === 0) {
      keep(search);
      return;
    }
    if (search.stride > strides.last) {
      search.stride = Math.max(strides.last, search.stride / 2);
      return;
    }
    pool.push({ overlap, lying: lyingOf(pile) });
    pool.sort((a, b) => a.overlap - b.overlap);
    pool.length = Math.min(pool.length, 10);
    const from = pool[Math.floor(pool.length * Math.abs(random() + random() - 1))]!;
    restore(pile, from.lying);
    swapLarge(pile, random);
  }
}

function swapLarge(pile: Pile, random: Random): void {
  const order = [...Array(pile.loose).keys()].sort((a, b) => pile.shape[b]!.bulk - pile.shape[a]!.bulk);
  const large = order.slice(0, Math.max(2, Math.ceil(order.length * 0.5)));
  const any = () => large[Math.floor(random() * large.length)]!;
  const i = any();
  let j = any();
  for (let n = 0; n < 20 && (i === j || pile.turns[i] === pile.turns[j]); n++) j = any();
  const from = { x: pile.x[i]!, y: pile.y[i]! };
  putInside(pile, i, 0, pile.turn[i]!, pile.x[j]!, pile.y[j]!);
  putInside(pile, j, 0, pile.turn[j]!, from.x, from.y);
  reckonAll(pile);
}

/** Presses the best layout together by steps that grow smaller towards the end of the budget. */
function* compress(search: StripSearch): Generator<void, void> {
  const { pile, random } = search;
  const done = Math.min(1, (search.share - exploring) / (1 - exploring));
  search.adopted = false;
  restore(pile, search.best.lying);
  shorten(search, 0.001 * (1 - done) + 0.0001 * done);
  const patience = { effort: usual, passes: 50, rounds: 2 };
  if ((yield* untangle(pile, random, patience, () => search.adopted)) === 0) keep(search);
}

/** Cuts a share out of the best layout at a random place: what lies beyond moves up, over what lies before. */
function shorten({ pile, best, least, random }: StripSearch, by: number): void {
  const [left] = pile.rooms;
  const length = Math.max(least * (1 + noise), best.length * (1 - by));
  const at = left! + random() * length;
  pile.rooms[2] = left! + length;
  for (let i = 0; i < pile.loose; i++) {
    const s = pile.shape[i]!;
    const beyond = pile.x[i]! + (s.x0 + s.x1) / 2 > at;
    putInside(pile, i, 0, turnThatFits(pile, i), pile.x[i]! - (beyond ? best.length - length : 0), pile.y[i]!);
  }
}

/** The turn a part lies in, or another where the strip has become too short for it. */
function turnThatFits({ rooms, shape, turn, turns }: Pile, i: number): number {
  return fitsRoom(rooms, 0, shape[i]!) ? turn[i]! : turns[i]!.findIndex((other) => fitsRoom(rooms, 0, other));
}

/** Keeps the pile, which has no overlap, as the best; the strip begins and ends where the parts do, if nothing is fixed. */
function keep(search: StripSearch): void {
  const { pile } = search;
  const { boxes } = pile;
  const left = pile.rooms[0]!;
  let x0 = Number.POSITIVE_INFINITY;
  let x1 = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < pile.loose; i++) {
    x0 = Math.min(x0, boxes[4 * i]!);
    x1 = Math.max(x1, boxes[4 * i + 2]!);
  }
  const spare = pile.loose < pile.count ? 0 : x0 - left;
  const lying = lyingOf(pile);
  for (let k = 2; k < lying.length; k += 4) lying[k]! -= spare;
  if (x1 - left - spare < search.best.length) search.best = { length: x1 - left - spare, lying };
}
