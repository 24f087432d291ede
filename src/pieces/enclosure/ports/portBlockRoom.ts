import { nearestOn } from "../../../geometry/distance.js";
import { inverse, place } from "../../../geometry/frame.js";
import { pointInProfile } from "../../../geometry/inside.js";
import { tolerance } from "../../../geometry/tolerance.js";
import { type Finding, mm, raise, text } from "../../../input/finding.js";
import { partId } from "../../../model/ids.js";
import type { Around } from "../../../model/piece.js";
import { rules } from "../../../shop/rules.js";
import { airName } from "../chambers/divide.js";
import type { PortBlock } from "./portBlocks.js";
import { portBlockNoRoom } from "./roundFindings.js";
import { portName } from "./roundPort.js";

/** Blocks that reach beyond the air of their chamber. What stands in that is held against them as against all parts. */
export function portBlockFindings(blocks: readonly PortBlock[], around: Around): readonly Finding[] {
  return blocks.flatMap((block): readonly Finding[] => {
    const { port, end, across, role, from } = block;
    if (isRoomFor(block, across)) return [];
    const facts = {
      end: text(end),
      port: text(portName(port)),
      across: mm(across),
      chamber: text(airName(port.chamber, around)),
    };
    return [raise(portBlockNoRoom, { at: [from], on: [partId(around.id, role)], facts: { ...facts, ...best(block) } })];
  });
}

/** The largest whole size that would do; none where its rim would be too narrow. */
function best(block: PortBlock): Finding["facts"] {
  for (let size = Math.ceil(block.across) - 1; size >= block.hole + 2 * rules.web.value; size--) {
    if (isRoomFor(block, size)) return { best: mm(size) };
  }
  return {};
}

/** Points on the rim of a ring that are looked at. */
const rim = 24;

/** Whether a block so large about the same middle stands in the air; an outer one begins on a gasket's height before it. */
function isRoomFor({ port, end, across, sheet }: PortBlock, size: number): boolean {
  const { air } = port.chamber;
  const seen = inverse(air.frame);
  const turns = port.spec.blocks?.[end]?.round ? rim : 4;
  const reach = turns === rim ? size / 2 : size * Math.SQRT1_2;
  const first = end === "outer" ? Math.min(port.face.skin.gasket, sheet.thickness) : 0;
  const corners = [first, sheet.thickness].flatMap((depth) =>
    Array.from({ length: turns }, (_, i) => {
      const angle = ((i + 0.5) * 2 * Math.PI) / turns;
      const [x, y] = [across / 2 + reach * Math.cos(angle), across / 2 + reach * Math.sin(angle)];
      return place(seen, place(sheet.frame, [x, y, -depth]));
    }),
  );
  return corners.every(([x, y, z]) => {
    const within = z >= air.from - tolerance.contact && z <= air.to + tolerance.contact;
    const near = (nearestOn(air.section, { x, y })?.distance ?? 0) <= tolerance.contact;
    return within && (near || pointInProfile(air.section, { x, y }));
  });
}
