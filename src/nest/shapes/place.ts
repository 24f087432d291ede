import type { Random } from "../random.js";
import { clampX, clampY, fitsRoom, overlapAt, type Pile, put, reckon, weighted } from "./pile.js";
import type { Shape } from "./shape.js";

/** How hard a better place is looked for. */
export type Effort = {
  /** Places tried over the whole sheet, and near where the part lies. */
  readonly wide: number;
  readonly near: number;
};

/** Candidates that are refined; the best places by sampling. */
const kept = 3;
const spot = {
  room: new Int32Array(kept + 1),
  turn: new Int32Array(kept + 1),
  x: new Float64Array(kept + 1),
  y: new Float64Array(kept + 1),
  value: new Float64Array(kept + 1),
};

/** Moves a part to the place with the least weighted overlap that a search by samples and descent finds, if better. */
export function moveToBetter(pile: Pile, i: number, random: Random, effort: Effort): void {
  const now = weighted(pile, i);
  spot.value.fill(Number.POSITIVE_INFINITY);
  const turns = pile.turns[i]!;
  offer(pile.room[i]!, pile.turn[i]!, pile.x[i]!, pile.y[i]!, now);
  for (let n = 0; n < effort.wide; n++) sampleWide(pile, i, turns, random);
  for (let n = 0; n < effort.near; n++) sampleNear(pile, i, turns, random);
  let best = -1;
  for (let k = 0; k < kept; k++) {
    if (spot.value[k] === Number.POSITIVE_INFINITY) continue;
    descend(pile, i, k, random, coarse);
    if (best < 0 || spot.value[k]! < spot.value[best]!) best = k;
    if (spot.value[k] === 0) break;
  }
  descend(pile, i, best, random, fine);
  if (spot.value[best]! <= now) {
    put(pile, i, spot.room[best]!, spot.turn[best]!, spot.x[best]!, spot.y[best]!);
    reckon(pile, i);
  }
}

function sampleWide(pile: Pile, i: number, turns: readonly Shape[], random: Random): void {
  const { rooms } = pile;
  const turn = turns.length > 1 ? Math.floor(random() * turns.length) : 0;
  const room = rooms.length > 4 ? Math.floor((random() * rooms.length) / 4) : 0;
  const s = turns[turn]!;
  if (!fitsRoom(rooms, room, s)) return;
  const dx = rooms[4 * room + 2]! - rooms[4 * room]! - (s.x1 - s.x0);
  const dy = rooms[4 * room + 3]! - rooms[4 * room + 1]! - (s.y1 - s.y0);
  consider(pile, i, room, turn, rooms[4 * room]! + random() * dx - s.x0, rooms[4 * room + 1]! + random() * dy - s.y0);
}

function sampleNear(pile: Pile, i: number, turns: readonly Shape[], random: Random): void {
  const { rooms } = pile;
  const room = pile.room[i]!;
  const turn = turns.length > 1 && random() < 0.3 ? Math.floor(random() * turns.length) : pile.turn[i]!;
  const s = turns[turn]!;
  if (!fitsRoom(rooms, room, s)) return;
  const reach = 0.6 * Math.max(s.x1 - s.x0, s.y1 - s.y0);
  const from = pile.shape[i]!;
  const cx = pile.x[i]! + (from.x0 + from.x1 - s.x0 - s.x1) / 2 + (2 * random() - 1) * reach;
  const cy = pile.y[i]! + (from.y0 + from.y1 - s.y0 - s.y1) / 2 + (2 * random() - 1) * reach;
  consider(pile, i, room, turn, clampX(rooms, room, s, cx), clampY(rooms, room, s, cy));
}

function consider(pile: Pile, i: number, room: number, turn: number, x: number, y: number): void {
  const limit = spot.value[kept - 1]!;
  const value = overlapAt(pile, i, pile.turns[i]![turn]!, x, y, limit);
  if (value < limit) offer(room, turn, x, y, value);
}

/** Keeps the list of candidates sorted, the best first. */
function offer(room: number, turn: number, x: number, y: number, value: number): void {
  let k = kept - 1;
  while (k > 0 && spot.value[k - 1]! > value) {
    spot.room[k] = spot.room[k - 1]!;
    spot.turn[k] = spot.turn[k - 1]!;
    spot.x[k] = spot.x[k - 1]!;
    spot.y[k] = spot.y[k - 1]!;
    spot.value[k] = spot.value[k - 1]!;
    k--;
  }
  spot.room[k] = room;
  spot.turn[k] = turn;
  spot.x[k] = x;
  spot.y[k] = y;
  spot.value[k] = value;
}

type Steps = { readonly from: number; readonly to: number };
/** Shares of the part's smaller side. */
const coarse: Steps = { from: 0.25, to: 0.02 };
const fine: Steps = { from: 0.02, to: 0.0005 };

/** Coordinate descent: a step either way along x, y or a diagonal; what helps is repeated wider, what does not narrower. */
function descend(pile: Pile, i: number, k: number, random: Random, steps: Steps): void {
  const { rooms } = pile;
  const room = spot.room[k]!;
  const shape = pile.turns[i]![spot.turn[k]!]!;
  const side = Math.min(shape.x1 - shape.x0, shape.y1 - shape.y0);
  const least = steps.to * side;
  let sx = steps.from * side;
  let sy = sx;
  let x = spot.x[k]!;
  let y = spot.y[k]!;
  let value = spot.value[k]!;
  while (value > 0 && (sx > least || sy > least)) {
    const way = random();
    const dx = way < 0.25 ? 0 : sx;
    const dy = way < 0.25 ? sy : way < 0.5 ? 0 : way < 0.75 ? sy : -sy;
    const px = clampX(rooms, room, shape, x + dx);
    const py = clampY(rooms, room, shape, y + dy);
    const qx = clampX(rooms, room, shape, x - dx);
    const qy = clampY(rooms, room, shape, y - dy);
    const p = overlapAt(pile, i, shape, px, py, value);
    const q = overlapAt(pile, i, shape, qx, qy, Math.min(p, value));
    const better = p < value || q < value;
    if (better && p <= q) {
      x = px;
      y = py;
      value = p;
    } else if (better) {
      x = qx;
      y = qy;
      value = q;
    }
    const scale = better ? 1.1 : 0.5;
    if (dx !== 0 && dy !== 0) {
      sx *= Math.sqrt(scale);
      sy *= Math.sqrt(scale);
    } else if (dx !== 0) sx *= scale;
    else sy *= scale;
  }
  spot.x[k] = x;
  spot.y[k] = y;
  spot.value[k] = value;
}
