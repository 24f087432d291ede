import { extentsOf } from "../../geometry/measure.js";
import { circle } from "../../geometry/shapes.js";
import { tolerance } from "../../geometry/tolerance.js";
import { type Finding, mm, raise, text } from "../../input/finding.js";
import { partId } from "../../model/ids.js";
import type { Axis } from "../../model/joint.js";
import type { Part } from "../../model/part.js";
import type { Around } from "../../model/piece.js";
import type { Draft } from "../common/part.js";
import type { Block, Thread } from "./blocks.js";
import { faceSize } from "./faces.js";
import { threadOffFace } from "./findings.js";
import type { Shape } from "./shape.js";

const holeName = ({ ask }: Thread) => `insert.${ask.axis.replace(":", ".")}`;

/** The insert's hole in the panel: through where it goes on into the block behind, else blind. */
export function panelHole(thread: Thread, { thickness }: Shape): Draft {
  const depth = thread.depth >= thickness ? "through" : thread.depth;
  const cut = { kind: "hole", at: thread.at, d: thread.d, depth } as const;
  return { name: holeName(thread), from: thread.ask.from, axis: thread.ask.axis, cut };
}

/** What is left of the insert's hole in one layer of its block, drilled after the block is glued in. */
export function blockHole(thread: Thread, block: Block, layer: number, { thickness }: Shape): readonly Draft[] {
  const left = thread.depth - thickness * (layer + 1);
  if (!thread.backed || left <= 0) return [];
  const at = { x: thread.at.x - block.min.x, y: thread.at.y - block.min.y };
  const cut = { kind: "hole", at, d: thread.d, depth: left >= thickness ? "through" : left } as const;
  return [{ name: holeName(thread), from: thread.ask.from, axis: thread.ask.axis, cut, stage: "assembled" }];
}

/** The threads' share of the axes: the holes that the box has on each. */
export function threadAxes(threads: readonly Thread[], parts: readonly Part[]): readonly Axis[] {
  return threads.map(({ ask }) => ({
    id: ask.axis,
    from: ask.from,
    ray: ask.ray,
    fastener: `${ask.insert} threaded insert`,
    stack: parts.flatMap((part) =>
      part.features
        .filter((feature) => feature.axis === ask.axis)
        .map((feature) => ({ part: part.id, feature: feature.id, role: "thread" as const })),
    ),
  }));
}

/** A finding for every thread that is asked for beside its face. */
export function threadFindings(threads: readonly Thread[], shape: Shape, around: Around): readonly Finding[] {
  return threads.flatMap((thread) => {
    const { width, height } = faceSize(thread.face, shape.spans[thread.face]);
    const { min, max } = extentsOf(circle(thread.at, thread.d / 2, ""));
    const out = Math.max(-min.x, -min.y, max.x - width, max.y - height);
    if (out <= tolerance.samePoint) return [];
    const facts = { axis: text(thread.ask.axis), face: text(thread.face), piece: text(around.id), out: mm(out) };
    return [raise(threadOffFace, { at: thread.ask.from, on: [partId(around.id, thread.face)], facts })];
  });
}
