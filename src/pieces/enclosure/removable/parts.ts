import { compose, shifted } from "../../../geometry/frame.js";
import { below, type Outcome } from "../../../input/finding.js";
import { type AxisId, axisId, featureId, type PieceId, partId } from "../../../model/ids.js";
import type { Axis, Joint } from "../../../model/joint.js";
import type { Edge, Part } from "../../../model/part.js";
import type { Around } from "../../../model/piece.js";
import { insertHoleDepth } from "../../../shop/lookups.js";
import { type Draft, makePart } from "../../common/part.js";
import { faceOf } from "../form/box.js";
import { type Face, liningRole, offSheet, onSheet } from "../form/face.js";
import { jointName } from "../joints/jointName.js";
import type { EnclosureSpec } from "../schema.js";
import type { Shape } from "../shape.js";
import { type Batten, battensOf, layerRole, type Removable } from "./removable.js";

/** A bolt of a panel: through the panel, into the insert in its batten. */
type PanelBolt = { readonly batten: Batten; readonly index: number; readonly name: string; readonly axis: AxisId };

/** The bolts of a panel in the order of its battens: "bolt.top.1". */
function boltsOf(piece: PieceId, removable: Removable): readonly PanelBolt[] {
  const places = battensOf(removable).flatMap((batten) => batten.bolts.map((_, index) => ({ batten, index })));
  return places.map((place, i) => {
    const name = `bolt.${removable.face.name}.${i + 1}`;
    return { ...place, name, axis: axisId(piece, name) };
  });
}

/** The clearance holes in a panel that is bolted on. */
export function boltHoles(face: Face, removables: readonly Removable[], { id }: Around): readonly Draft[] {
  const removable = removables.find((each) => each.face === face);
  const d = removable?.bolt?.clearance.medium;
  if (removable === undefined || d === undefined) return [];
  return boltsOf(id, removable).map(({ batten, index, name, axis }): Draft => {
    return { name, from: [removable.from], axis, cut: { kind: "hole", at: batten.bolts[index]!, d, depth: "through" } };
  });
}

/** The boards of the battens under a panel, with the holes of its inserts: matched to the panel's own when they are in. */
export function battenParts(removable: Removable, spec: EnclosureSpec, around: Around): readonly Outcome<Part>[] {
  const bolts = boltsOf(around.id, removable);
  const own = spec["cut by"];
  return battensOf(removable).flatMap((batten) =>
    batten.layers.map((sheet, layer) => {
      const from = [removable.from];
      const outline: Draft = {
        name: "outline",
        from: [below(removable.from, "with")],
        cut: { kind: "outline", region: { outer: sheet.outline, holes: [] }, corner: "sharp" },
      };
      const holes = bolts
        .filter((bolt) => bolt.batten === batten)
        .flatMap((bolt) => insertHole(bolt, layer, removable));
      return makePart({
        piece: around.id,
        role: layerRole(batten, layer),
        from,
        board: around.board(spec.board),
        features: [outline, ...holes],
        edges: edgesOf(batten, layer, removable, around.id),
        ...(own === undefined ? {} : { cutBy: own }),
        at: sheet.frame,
      });
    }),
  );
}

/** What an insert's hole is in one board of its batten: through where it goes on behind, else blind. */
function insertHole({ batten, index, name, axis }: PanelBolt, layer: number, removable: Removable): readonly Draft[] {
  const { face, insert, from } = removable;
  const sheet = batten.layers[layer]!;
  if (insert === undefined) return [];
  const left = insertHoleDepth(insert.row) - layer * sheet.thickness;
  if (left <= 0) return [];
  const at = onSheet(face, sheet, offSheet(face, face.panel, batten.bolts[index]!));
  const depth = left >= sheet.thickness ? ("through" as const) : left;
  return [{ name, from: [from], axis, stage: "assembled", cut: { kind: "hole", at, d: insert.row.hole, depth } }];
}

function edgesOf(
  { wall, layers, role }: Batten,
  layer: number,
  { face }: Removable,
  piece: PieceId,
): Readonly<Record<string, Edge>> {
  const sheet = layers[layer]!;
  return Object.fromEntries(
    sheet.outline.flatMap(({ by }): [string, Edge][] => {
      const bevel = sheet.bevels[by] ?? 0;
      if (by === wall && by !== face.name) {
        const joint = jointName(piece, { over: wall, into: layerRole({ role }, layer) });
        return [[by, { bevel, flush: 0, finish: { kind: "joint", joint } }]];
      }
      return bevel === 0 ? [] : [[by, { bevel, flush: 0, finish: { kind: "bare" } }]];
    }),
  );
}

/** Battens are glued along their walls, a second board behind the first. */
export function battenJoints(removable: Removable, shape: Shape, piece: PieceId): readonly Joint[] {
  return battensOf(removable).flatMap((batten) =>
    batten.layers.flatMap((_, layer): readonly Joint[] => {
      const face = faceOf(shape, batten.wall);
      const wall = face?.lining === undefined ? batten.wall : liningRole(face);
      const role = layerRole(batten, layer);
      const along: Joint = {
        id: jointName(piece, { over: wall, into: role }),
        form: "butt",
        laps: partId(piece, wall),
        into: partId(piece, role),
        edges: [batten.wall],
        axes: [],
        glue: true,
      };
      if (layer === 0) return [along];
      const before = layerRole(batten, layer - 1);
      const behind: Joint = {
        ...along,
        id: jointName(piece, { over: before, into: role }),
        form: "lap",
        laps: partId(piece, before),
        edges: [],
      };
      return [along, behind];
    }),
  );
}

/** The bolts' axes, box frame: heads on the panel's face; holes that share one are one thing. */
export function boltAxes(
  removable: Removable,
  fastener: string | undefined,
  parts: readonly Part[],
  piece: PieceId,
): readonly Axis[] {
  const { face, from } = removable;
  // without a bolt there is nothing on them; that is told
  if (fastener === undefined) return [];
  return boltsOf(piece, removable).map(({ batten, index, name, axis }) => {
    const { x, y } = batten.bolts[index]!;
    const roles = [face.name, ...batten.layers.map((_, layer) => layerRole(batten, layer))];
    return {
      id: axis,
      from: [from],
      ray: compose(face.panel.frame, shifted(x, y, 0)),
      fastener,
      stack: roles.flatMap((role, i) => {
        const [part, feature] = [partId(piece, role), featureId(partId(piece, role), name)];
        const bored = parts.some((each) => each.id === part && each.features.some(({ id }) => id === feature));
        return bored ? [{ part, feature, role: i === 0 ? ("clearance" as const) : ("thread" as const) }] : [];
      }),
    };
  });
}
