import { extentsOf } from "../../../geometry/measure.js";
import type { Point } from "../../../geometry/profile.js";
import { circle } from "../../../geometry/shapes.js";
import { tolerance } from "../../../geometry/tolerance.js";
import { type Finding, mm, raise, text } from "../../../input/finding.js";
import { partId } from "../../../model/ids.js";
import type { Axis } from "../../../model/joint.js";
import type { Part } from "../../../model/part.js";
import type { Around } from "../../../model/piece.js";
import type { Draft } from "../../common/part.js";
import { threadOffFace } from "../findings.js";
import { offSheet, onSheet, type Sheet, thickOf } from "../form/face.js";
import type { Block, Thread } from "./blocks.js";

const holeName = ({ ask }: Thread) => `insert.${ask.axis.replace(":", ".")}`;

/** The insert's hole in a board that begins `before` mm behind the face: through where it goes on behind, else blind. */
function holeIn(thread: Thread, at: Point, before: number, thickness: number): readonly Draft[] {
  const left = thread.depth - before;
  if (left <= 0) return [];
  const cut = { kind: "hole", at, d: thread.d, depth: left >= thickness ? "through" : left } as const;
  return [{ name: holeName(thread), from: thread.ask.from, axis: thread.ask.axis, cut }];
}

export function panelHole(thread: Thread): readonly Draft[] {
  return holeIn(thread, thread.at, 0, thread.face.panel.thickness);
}

/** What is left of it in the board glued behind the panel. */
export function liningHole(thread: Thread, lining: Sheet): readonly Draft[] {
  const { face, at } = thread;
  return holeIn(thread, onSheet(face, lining, offSheet(face, face.panel, at)), face.panel.thickness, lining.thickness);
}

/** What is left of it in one layer of its block, drilled after the block is glued in. */
export function blockHole(thread: Thread, block: Block, layer: number): readonly Draft[] {
  if (!thread.backed) return [];
  const at = { x: thread.at.x - block.min.x, y: thread.at.y - block.min.y };
  const before = thickOf(block.face) + block.board * layer;
  return holeIn(thread, at, before, block.board).map((draft) => ({ ...draft, stage: "assembled" }));
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
export function threadFindings(threads: readonly Thread[], around: Around): readonly Finding[] {
  return threads.flatMap((thread) => {
    const { face } = thread;
    const board = extentsOf(face.panel.outline);
    const { min, max } = extentsOf(circle(thread.at, thread.d / 2, ""));
    const out = Math.max(board.min.x - min.x, board.min.y - min.y, max.x - board.max.x, max.y - board.max.y);
    if (out <= tolerance.samePoint) return [];
    const facts = { axis: text(thread.ask.axis), face: text(face.name), piece: text(around.id), out: mm(out) };
    return [raise(threadOffFace, { at: thread.ask.from, on: [partId(around.id, face.name)], facts })];
  });
}
