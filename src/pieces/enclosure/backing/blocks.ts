import { compose, type Frame, inverse, place, shifted, turn } from "../../../geometry/frame.js";
import { extentsOf } from "../../../geometry/measure.js";
import type { Extents, Point } from "../../../geometry/profile.js";
import { rectangle } from "../../../geometry/shapes.js";
import type { Ask } from "../../../model/piece.js";
import type { Shop } from "../../../model/shop.js";
import { insertHoleDepth } from "../../../shop/lookups.js";
import { rules } from "../../../shop/rules.js";
import { downToStep } from "../../common/method.js";
import { type Behind, behind } from "../chambers/behind.js";
import type { Chamber } from "../chambers/divide.js";
import { type Face, offSheet, onSheet, type Sheet, thickOf } from "../form/face.js";
import type { Shape } from "../shape.js";

export type ThreadAsk = Extract<Ask, { kind: "thread" }>;

/** A thread that the box gives: on which face, where on its panel, and how deep the insert's hole goes. */
export type Thread = {
  readonly ask: ThreadAsk;
  readonly face: Face;
  readonly at: Point;
  readonly d: number;
  readonly depth: number;
  /** The air that its block stands in, where the hole would open into it or leave too thin a skin before it. */
  readonly backed: Behind | undefined;
};

/** A block glued behind a panel, in that panel's axes, of boards this thick, and the threads it holds. */
export type Block = {
  readonly face: Face;
  readonly chamber: Chamber;
  readonly board: number;
  readonly min: Point;
  readonly max: Point;
  readonly threads: readonly Thread[];
};

/** Every thread that others ask of the box. One whose ray runs square to no face is left out: nothing holds it. */
export function threadsOf(asks: readonly Ask[], shape: Shape, shop: Shop): readonly Thread[] {
  return asks.flatMap((ask): Thread[] => {
    if (ask.kind !== "thread") return [];
    const insert = shop.inserts[ask.insert];
    const ray = compose(inverse(shape.stands), ask.ray);
    const seen = shape.faces.flatMap((face) => {
      const [x, y, z] = turn(inverse(face.frame).quat, turn(ray.quat, [0, 0, 1]));
      return Math.hypot(x, y) < level && z > 0 ? [{ face, at: place(inverse(face.frame), ray.origin) }] : [];
    });
    const nearest = seen.sort((a, b) => Math.abs(a.at[2]) - Math.abs(b.at[2]))[0];
    if (insert === undefined || nearest === undefined) return [];
    const { face } = nearest;
    const at = onSheet(face, face.panel, { x: nearest.at[0], y: nearest.at[1] });
    const depth = insertHoleDepth(insert);
    const thin = thickOf(face) - depth < rules.tipFloor.value;
    const backed = thin ? behind(face, { x: nearest.at[0], y: nearest.at[1] }, shape) : undefined;
    return [{ ask, face, at, d: insert.hole, depth, backed }];
  });
}

/** A ray that leans less than this to a face stands square on it. */
const level = 1e-6;

/**
 * The blocks behind the threads that need one. A block is wide enough to glue and to keep the insert's hole away from
 * its edges; it is kept inside the box, and blocks that would overlap become one. Sawn, its sides are whole steps.
 */
export function blocksOf(threads: readonly Thread[], board: number, shape: Shape): readonly Block[] {
  const single = threads.flatMap((thread) => (thread.backed ? [blockAt(thread, thread.backed, board)] : []));
  return single.reduce<readonly Block[]>(joinIn, []).map((block) => sawn(block, shape.step));
}

function sawn(block: Block, step: number | undefined): Block {
  const whole = (min: number, max: number) => min + downToStep(max - min, step);
  return { ...block, max: { x: whole(block.min.x, block.max.x), y: whole(block.min.y, block.max.y) } };
}

/** What a block takes from the air, L: its holes are filled by inserts and bolts. */
export function blockVolumeL(block: Block): number {
  return ((block.max.x - block.min.x) * (block.max.y - block.min.y) * block.board * layersOf(block)) / 1e6;
}

/** How many boards thick a block is, so that its deepest hole stays blind. */
export function layersOf({ threads, board, face }: Pick<Block, "threads" | "board" | "face">): number {
  const deepest = Math.max(...threads.map((thread) => thread.depth));
  return Math.max(1, Math.ceil((deepest + rules.tipFloor.value - thickOf(face)) / board - 1e-9));
}

function blockAt(thread: Thread, backed: Behind, board: number): Block {
  const { face, at, d } = thread;
  const half = Math.max(rules.blockSide.value, 2 * rules.insertEdge.value * d) / 2;
  const air = roomBehind(face, backed.air, board * layersOf({ threads: [thread], board, face }));
  const range = (middle: number, min: number, max: number) => {
    const low = Math.max(min, Math.min(middle - half, max - 2 * half));
    return [low, Math.min(max, low + 2 * half)] as const;
  };
  const [x0, x1] = range(at.x, air.min.x, air.max.x);
  const [y0, y1] = range(at.y, air.min.y, air.max.y);
  const [min, max] = [
    { x: x0, y: y0 },
    { x: x1, y: y1 },
  ];
  return { face, chamber: backed.chamber, board, min, max, threads: [thread] };
}

/** The extents of what stays in some air behind a face down to this depth, in its panel's axes. */
export function roomBehind(face: Face, air: Sheet, depth: number): Extents {
  const { outline, bevels } = air;
  const { min, max } = extentsOf(outline);
  const narrower = (by: string | undefined) => Math.max(0, depth * Math.tan(bevels[by ?? ""] ?? 0));
  const edgeAt = (axis: "x" | "y", at: number) =>
    outline.find((corner, i) => corner[axis] === at && outline[(i + 1) % outline.length]![axis] === at)?.by;
  const toPanel = (point: Point) => onSheet(face, face.panel, offSheet(face, air, point));
  return {
    min: toPanel({ x: min.x + narrower(edgeAt("x", min.x)), y: min.y + narrower(edgeAt("y", min.y)) }),
    max: toPanel({ x: max.x - narrower(edgeAt("x", max.x)), y: max.y - narrower(edgeAt("y", max.y)) }),
  };
}

function joinIn(blocks: readonly Block[], next: Block): readonly Block[] {
  const met = blocks.find(
    (block) => block.face === next.face && block.chamber === next.chamber && overlap(block, next),
  );
  if (met === undefined) return [...blocks, next];
  const joined: Block = {
    ...met,
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

/** The frame of a block's layer in the box frame: the first layer's face lies on the back of the panel or its lining. */
export function blockFrame(block: Block, layer: number): Frame {
  const { face, min, board } = block;
  return compose(face.panel.frame, shifted(min.x, min.y, -thickOf(face) - board * layer));
}

/** A block's layers as sheets. */
export function blockSheets(block: Block): readonly Sheet[] {
  const outline = rectangle(0, 0, block.max.x - block.min.x, block.max.y - block.min.y, "outline");
  return Array.from({ length: layersOf(block) }, (_, layer) => {
    return { frame: blockFrame(block, layer), outline, bevels: {}, thickness: block.board };
  });
}
