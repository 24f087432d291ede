import { count, mm, type Quantity, text } from "../../../input/finding.js";
import { type PartId, partId } from "../../../model/ids.js";
import type { Around } from "../../../model/piece.js";
import { insertHoleDepth } from "../../../shop/lookups.js";
import { clampedOf } from "./keys.js";
import { battensOf, layerRole, type Removable } from "./removable.js";

/** A step of what comes off again. */
export type Due = {
  readonly name: string;
  readonly parts: readonly PartId[];
  readonly words: string;
  readonly facts: Readonly<Record<string, Quantity>>;
  readonly cautions: readonly string[];
};

/** Before the box is glued: what stays off. */
export function leftOff(removables: readonly Removable[], { id }: Around): readonly Due[] {
  return removables.map(({ face }) => ({
    name: `leave off ${face.name}`,
    parts: [partId(id, face.name)],
    words: "Leave {panel} off when the others are glued: it is bolted on later, on its gasket",
    facts: { panel: text(face.name) },
    cautions: [],
  }));
}

/** After the box is glued: battens, inserts, gasket, bolts. */
export function boltedSteps(removables: readonly Removable[], { id }: Around): readonly Due[] {
  return removables.flatMap((removable): readonly Due[] => {
    const { face, insert, spec } = removable;
    const battens = battensOf(removable);
    const parts = battens.flatMap((batten) => batten.layers.map((_, i) => partId(id, layerRole(batten, i))));
    const panel = text(face.name);
    const bolts = battens.reduce((sum, each) => sum + each.bolts.length, 0);
    const doubled = (insert?.layers ?? 1) > 1 ? ", the second boards behind the first" : "";
    return [
      {
        name: `battens of ${face.name}`,
        parts,
        words: `Glue the battens of {panel} along the walls, level with the walls' edges and butted at the corners${doubled}; a bead of glue under them, or air passes`,
        facts: { panel },
        cautions: ["formaldehyde"],
      },
      {
        name: `inserts of ${face.name}`,
        parts: [partId(id, face.name), ...parts],
        words:
          "Lay {panel} in its place without the gasket, mark its bolt holes on the battens, drill {hole} wide and {deep} deep, square and not through, and set {count} threaded inserts in glue, level or a hair below",
        facts: {
          panel,
          hole: mm(insert?.row.hole ?? 0),
          deep: mm(insert === undefined ? 0 : insertHoleDepth(insert.row)),
          count: count(bolts),
        },
        cautions: ["dust"],
      },
      {
        name: `bolt ${face.name}`,
        parts: [partId(id, face.name)],
        words:
          "Lay the gasket on battens and edges all round, its ends tight against each other, punch it at the inserts, and bolt {panel} on: all bolts loose first, then crosswise until the gasket is {clamped} thick",
        facts: { panel, clamped: mm(clampedOf(spec.gasket)) },
        cautions: [],
      },
    ];
  });
}
