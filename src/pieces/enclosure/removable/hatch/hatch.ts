import { fillet } from "../../../../geometry/corners.js";
import { compose, type Frame, shifted } from "../../../../geometry/frame.js";
import { areaOf } from "../../../../geometry/measure.js";
import type { Point, Profile } from "../../../../geometry/profile.js";
import { rectangle } from "../../../../geometry/shapes.js";
import { below, type Origin } from "../../../../input/finding.js";
import { type AxisId, axisId } from "../../../../model/ids.js";
import type { Around, Ask } from "../../../../model/piece.js";
import type { Bolt } from "../../../../model/shop.js";
import { boltRow } from "../../../../shop/lookups.js";
import { rules } from "../../../../shop/rules.js";
import { snap, stepOf, upToStep } from "../../../common/method.js";
import type { Draft } from "../../../common/part.js";
import { faceOf } from "../../form/box.js";
import { type Face, onSheet, type Sheet, thickOf } from "../../form/face.js";
import type { EnclosureSpec } from "../../schema.js";
import { pointOn, type Shape } from "../../shape.js";
import { clampedOf } from "../keys.js";
import { roomOf, type Seated, seatedIn } from "../seated.js";
import type { HatchSpec } from "./keys.js";

/** A hatch worked out, in the axes of its face. mm. */
export type Hatch = {
  readonly spec: HatchSpec;
  readonly from: Origin;
  readonly face: Face;
  readonly at: Point;
  readonly opening: Profile;
  readonly cover: Profile;
  readonly board: ReturnType<Around["board"]>;
  readonly overlap: number;
  /** What the overlap is at the least: room for the inserts, and for blocks behind them. */
  readonly least: number;
  readonly bolt: Bolt | undefined;
  readonly insert: Seated | undefined;
  readonly bolts: readonly Point[];
};

export const coverRole = "hatch";

/** The hatch of a box, where its face is known. */
export function hatchOf(spec: EnclosureSpec, shape: Shape, around: Around): Hatch | undefined {
  const { hatch } = spec;
  const face = hatch && faceOf(shape, hatch.in);
  if (hatch === undefined || face === undefined) return undefined;
  const bolt = boltRow(around.shop, hatch.with);
  const insert = bolt && seatedIn(hatch.insert, bolt, thickOf(face), around.shop);
  const step = stepOf(spec, around);
  const least = Math.max(2 * roomOf(insert), (insert?.layers ?? 1) > 1 ? rules.blockSide.value : 0);
  const overlap = hatch.overlap ?? upToStep(Math.max(rules.battenWidth.value, least), step);
  const at = pointOn(face, hatch.at);
  const [wide, high] = hatch.size.map((size) => snap(size, step)) as [number, number];
  const about = (more: number, by: string) =>
    rectangle(at.x - wide / 2 - more, at.y - high / 2 - more, at.x + wide / 2 + more, at.y + high / 2 + more, by);
  return {
    spec: hatch,
    from: below(around.origin, "hatch"),
    face,
    at,
    opening: fillet(about(0, "opening.hatch"), hatch.round ?? rules.openingCorner.value).profile,
    cover: fillet(about(overlap, "outline"), overlap / 2).profile,
    board: around.board(hatch.board ?? spec.board),
    overlap,
    least,
    bolt,
    insert,
    bolts: insert === undefined ? [] : roundRow(about(overlap / 2, ""), hatch.every ?? rules.screwSpacing.value),
  };
}

/** Bolts in the corners of a rectangle and evenly between them, no further apart than asked. */
function roundRow(row: Profile, every: number): readonly Point[] {
  return row.flatMap((a, i) => {
    const b = row[(i + 1) % row.length]!;
    const gaps = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / every - 1e-9));
    return Array.from({ length: gaps }, (_, k) => {
      return { x: a.x + ((b.x - a.x) * k) / gaps, y: a.y + ((b.y - a.y) * k) / gaps };
    });
  });
}

/** The opening in a sheet of its face; the cover closes it. */
export function openingDraft({ face, opening, from }: Hatch, sheet: Sheet): Draft {
  const outer = opening.map((corner) => ({ ...corner, ...onSheet(face, sheet, corner) }));
  return {
    name: "opening.hatch",
    from: [from],
    filledBy: "hatch",
    cut: { kind: "opening", corner: "bit", region: { outer, holes: [] } },
  };
}

/** The same of a hatch in this face; none where it is in another. */
export const hatchDrafts = (face: Face, sheet: Sheet, hatch: Hatch | undefined): readonly Draft[] =>
  hatch?.face === face ? [openingDraft(hatch, sheet)] : [];

/** Where the face of the cover lies: on the gasket, outside the face. Box frame, with the axes of the face. */
export function coverFrame({ face, spec, board }: Hatch): Frame {
  return compose(face.frame, shifted(0, 0, clampedOf(spec.gasket) + board.thickness));
}

export const boltAxis = ({ id }: Pick<Around, "id">, index: number): AxisId => axisId(id, `hatch.${index + 1}`);

/** The threads that a hatch asks of its own box: inserts, and blocks behind those that would come out. */
function hatchAsks(spec: EnclosureSpec, shape: Shape, around: Around): readonly Ask[] {
  const hatch = hatchOf(spec, shape, around);
  const insert = hatch?.insert;
  if (hatch === undefined || insert === undefined) return [];
  return hatch.bolts.map(({ x, y }, index): Ask => {
    return {
      kind: "thread",
      of: around.id,
      by: around.id,
      from: [hatch.from],
      axis: boltAxis(around, index),
      ray: compose(shape.stands, compose(hatch.face.frame, shifted(x, y, 0))),
      insert: insert.name,
    };
  });
}

/** What others ask of the box, and what its hatch does. */
export const allAsks = (spec: EnclosureSpec, shape: Shape, around: Around): readonly Ask[] => [
  ...around.asks,
  ...hatchAsks(spec, shape, around),
];

/** The air in the opening and within the gasket, L. */
export const hatchL = ({ opening, face, spec }: Hatch): number =>
  (areaOf(opening) * (thickOf(face) + clampedOf(spec.gasket))) / 1e6;
