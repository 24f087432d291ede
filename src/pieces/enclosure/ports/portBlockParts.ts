import { circle } from "../../../geometry/shapes.js";
import { all, type Outcome } from "../../../input/finding.js";
import { type PieceId, partId } from "../../../model/ids.js";
import type { Joint } from "../../../model/joint.js";
import type { Part } from "../../../model/part.js";
import type { Around } from "../../../model/piece.js";
import { type Draft, makePart } from "../../common/part.js";
import { liningRole } from "../form/face.js";
import { jointName } from "../joints/jointName.js";
import type { EnclosureSpec } from "../schema.js";
import type { PortBlock } from "./portBlocks.js";
import { portName } from "./roundPort.js";

/** The blocks as parts, holed for their tubes. */
export function portBlockParts(
  blocks: readonly PortBlock[],
  spec: EnclosureSpec,
  around: Around,
): readonly Outcome<Part>[] {
  const own = spec["cut by"];
  return blocks.map(({ role, from, port, board, across, hole, sheet }) => {
    const by = `opening.${port.role}`;
    const middle = { x: across / 2, y: across / 2 };
    const outline: Draft = {
      name: "outline",
      from: [from],
      cut: { kind: "outline", region: { outer: sheet.outline, holes: [] }, corner: "sharp" },
    };
    const opening: Draft = {
      name: by,
      from: [from],
      cut: { kind: "opening", corner: "bit", region: { outer: circle(middle, hole / 2, by), holes: [] } },
    };
    return makePart({
      piece: around.id,
      role,
      from: [from],
      board,
      features: [outline, opening],
      ...(own === undefined ? {} : { cutBy: own }),
      at: sheet.frame,
    });
  });
}

/** The outer ones are glued flat behind the wall of their port; the inner ones to the tube alone. */
export function portBlockJoints(blocks: readonly PortBlock[], piece: PieceId): readonly Joint[] {
  return blocks
    .filter(({ end }) => end === "outer")
    .map(({ role, port: { face } }): Joint => {
      const over = face.lining === undefined ? face.name : liningRole(face);
      return {
        id: jointName(piece, { over, into: role }),
        form: "lap",
        laps: partId(piece, over),
        into: partId(piece, role),
        edges: [],
        axes: [],
        glue: true,
      };
    });
}

const words = {
  outer:
    "Glue the block behind the hole of {ports} flat on to the panel, wet all over, both holes in line, and clamp it till the glue has set",
  inner: "Glue the block round the inner end of {ports}, flush with it, before the tube goes in",
} as const;

/** Before the tubes are glued in. */
export function portBlockSteps(blocks: readonly PortBlock[], { id }: Pick<Around, "id">) {
  return (["outer", "inner"] as const).flatMap((end) => {
    const own = blocks.filter((block) => block.end === end);
    if (own.length === 0) return [];
    const parts = own.map(({ role }) => partId(id, role));
    const facts = { ports: all(own.map(({ port }) => portName(port))) };
    return [{ name: `port blocks ${end}`, parts, words: words[end], facts, cautions: ["formaldehyde"] }];
  });
}
