import type { Outcome } from "../../../input/finding.js";
import { type PieceId, partId } from "../../../model/ids.js";
import type { Joint } from "../../../model/joint.js";
import type { Part } from "../../../model/part.js";
import type { Around } from "../../../model/piece.js";
import { type Draft, makePart } from "../../common/part.js";
import { liningRole } from "../form/face.js";

import type { EnclosureSpec } from "../schema.js";
import { type Block, blockSheets, layersOf } from "./blocks.js";
import { blockHole } from "./threads.js";

/** The boards that the blocks are made of, in layers. */
export function blockParts(blocks: readonly Block[], spec: EnclosureSpec, around: Around): readonly Outcome<Part>[] {
  return blocks.flatMap((block, index) =>
    blockSheets(block).map((sheet, layer) => {
      const from = block.threads.flatMap((thread) => thread.ask.from);
      const outline: Draft = {
        name: "outline",
        from,
        cut: { kind: "outline", region: { outer: sheet.outline, holes: [] }, corner: "sharp" },
      };
      return makePart({
        piece: around.id,
        role: blockRole(index, layer),
        from,
        board: around.board(spec.board),
        features: [outline, ...block.threads.flatMap((thread) => blockHole(thread, block, layer))],
        at: sheet.frame,
      });
    }),
  );
}

/** Blocks are glued flat behind the panel whose inserts they back, a second layer behind the first. */
export function blockJoints(blocks: readonly Block[], piece: PieceId): readonly Joint[] {
  return blocks.flatMap((block, index) =>
    Array.from({ length: layersOf(block) }, (_, layer): Joint => {
      const { face } = block;
      const first = face.lining === undefined ? face.name : liningRole(face);
      const laps = layer === 0 ? first : blockRole(index, layer - 1);
      const into = blockRole(index, layer);
      const axes = block.threads.map((thread) => thread.ask.axis);
      return {
        id: `${piece}:${laps}+${into}`,
        form: "lap",
        laps: partId(piece, laps),
        into: partId(piece, into),
        edges: [],
        axes,
        glue: true,
      };
    }),
  );
}

export const blockRole = (index: number, layer: number) =>
  layer === 0 ? `block.${index + 1}` : `block.${index + 1}.layer.${layer + 1}`;
