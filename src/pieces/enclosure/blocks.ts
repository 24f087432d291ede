import { compose, type Frame, inverse, place, shifted, turn } from "../../geometry/frame.js";
import type { Point } from "../../geometry/profile.js";
import type { Ask } from "../../model/piece.js";
import type { Shop } from "../../model/shop.js";
import { insertHoleDepth } from "../../shop/lookups.js";
import { rules } from "../../shop/rules.js";
import { type FaceName, faceFrame, faceNames, faces } from "./faces.js";
import { airBehind, type Shape } from "./shape.js";

export type ThreadAsk = Extract<Ask, { kind: "thread" }>;

/** A thread that the box gives: on which face, where on its panel, and how deep the insert's hole goes. */
export type Thread = {
  readonly ask: ThreadAsk;
  readonly face: FaceName;
  readonly at: Point;
  readonly d: number;
  readonly depth: number;
  /** The hole would open into the air, or leave too thin a skin before it: a block stands behind it. */
  readonly backed: boolean;
};

/** A block of the box's own board glued behind a panel, in that panel's axes, and the threads it holds. */
export type Block = {
  readonly face: FaceName;
  readonly min: Point;
  readonly max: Point;
  readonly threads: readonly Thread[];
};

/** Every thread that others ask of the box. One whose ray runs square to no face is left out: nothing holds it. */
export function threadsOf(asks: readonly Ask[], shape: Shape, shop: Shop): readonly Thread[] {
  return asks.flatMap((ask) => {
    if (ask.kind !== "thread") return [];
    const insert = shop.inserts[ask.insert];
    const ray = compose(inverse(shape.stands), ask.ray);
    const face = faceNames.find((name) => looksOut(name, ray.quat));
    if (insert === undefined || face === undefined) return [];
    const at = place(inverse(faceFrame(face, shape.spans[face])), ray.origin);
    const depth = insertHoleDepth(insert);
    const backed = shape.thickness - depth < rules.tipFloor.value;
    return [{ ask, face, at: { x: at[0], y: at[1] }, d: insert.hole, depth, backed }];
  });
}

/**
 * The blocks behind the threads that need one. A block is wide enough to glue and to keep the insert's hole away from
 * its edges; it is kept inside the box, and blocks that would overlap become one. Sawn, its sides are whole steps.
 */
export function blocksOf(threads: readonly Thread[], shape: Shape): readonly Block[] {
  const single = threads.filter((thread) => thread.backed).map((thread) => blockAt(thread, shape));
  return single.reduce<readonly Block[]>(joinIn, []).map((block) => downToStep(block, shape.step));
}

function downToStep(block: Block, step: number | undefined): Block {
  if (step === undefined) return block;
  const whole = (min: number, max: number) => min + Math.floor((max - min) / step + 1e-6) * step;
  return { ...block, max: { x: whole(block.min.x, block.max.x), y: whole(block.min.y, block.max.y) } };
}

/** What the blocks take from the air, L: their holes are filled by inserts and bolts. */
export function blockVolumeL(block: Block, shape: Shape): number {
  return ((block.max.x - block.min.x) * (block.max.y - block.min.y) * shape.thickness * layersOf(block, shape)) / 1e6;
}

/** How many boards thick a block is, so that its deepest hole stays blind. */
export function layersOf(block: Block, shape: Shape): number {
  const deepest = Math.max(...block.threads.map((thread) => thread.depth));
  return Math.max(1, Math.ceil((deepest + rules.tipFloor.value) / shape.thickness) - 1);
}

function looksOut(name: FaceName, quat: Parameters<typeof turn>[0]): boolean {
  const out = turn(quat, [0, 0, 1]);
  const { axis, end } = faces[name];
  return (end === "max" ? out[axis] : -out[axis]) > 1 - 1e-9;
}

function blockAt(thread: Thread, shape: Shape): Block {
  const half = Math.max(rules.blockSide.value, 2 * rules.insertEdge.value * thread.d) / 2;
  const air = airBehind(thread.face, shape);
  const range = (at: number, min: number, max: number) => {
    const low = Math.max(min, Math.min(at - half, max - 2 * half));
    return [low, Math.min(max, low + 2 * half)] as const;
  };
  const [x0, x1] = range(thread.at.x, air.min.x, air.max.x);
  const [y0, y1] = range(thread.at.y, air.min.y, air.max.y);
  return { face: thread.face, min: { x: x0, y: y0 }, max: { x: x1, y: y1 }, threads: [thread] };
}

function joinIn(blocks: readonly Block[], next: Block): readonly Block[] {
  const met = blocks.find((block) => block.face === next.face && overlap(block, next));
  if (met === undefined) return [...blocks, next];
  const joined: Block = {
    face: met.face,
    min: { x: Math.min(met.min.x, next.min.x), y: Math.min(met.min.y, next.min.y) },
    max: { x: Math.max(met.max.x, next.max.x), y: Math.max(met.max.y, next.max.y) },
    threads: [...met.threads, ...next.threads],
  };
  return joinIn(
    blocks.filter((block) => block !== met),
    joined,
  );
}

function overlap(a: Block, b: Block): boolean {
  return a.min.x < b.max.x && b.min.x < a.max.x && a.min.y < b.max.y && b.min.y < a.max.y;
}

/** The frame of a block's layer in the box frame: the first layer's face lies on the panel's back. */
export function blockFrame(block: Block, layer: number, shape: Shape): Frame {
  const panel = faceFrame(block.face, shape.spans[block.face]);
  return compose(panel, shifted(block.min.x, block.min.y, -shape.thickness * (layer + 1)));
}
