import { compose, type Frame, shifted } from "../../../geometry/frame.js";
import { areaOf } from "../../../geometry/measure.js";
import type { Point, Profile } from "../../../geometry/profile.js";
import { below, type Origin } from "../../../input/finding.js";
import type { Around, Gasket } from "../../../model/piece.js";
import type { Bolt } from "../../../model/shop.js";
import { boltRow } from "../../../shop/lookups.js";
import { rules } from "../../../shop/rules.js";
import { upToStep } from "../../common/method.js";
import { airBehind } from "../chambers/airBehind.js";
import type { Chamber } from "../chambers/divide.js";
import { outlineAt, sheetL } from "../chambers/innerSheet.js";
import { edgeLine } from "../chambers/section.js";
import { faceOf } from "../form/box.js";
import { type Face, offSheet, onSheet, type Sheet, thickOf } from "../form/face.js";
import { crossing, inward } from "../form/lines.js";
import { meetingOf } from "../form/meeting.js";
import type { EnclosureSpec } from "../schema.js";
import type { Shape } from "../shape.js";
import { type BoltedSpec, clampedOf } from "./keys.js";
import { partedBy } from "./parted.js";
import { alongRow, middleOf } from "./row.js";
import { roomOf, type Seated, seatedIn } from "./seated.js";
import { innerEdge, openingWithin, stripsAlong } from "./strips.js";

/** One batten under a panel: its boards, face first, box frame, and where its bolts stand on the panel's own axes. */
export type Batten = {
  readonly role: string;
  /** The face that it is glued to. */
  readonly wall: string;
  readonly layers: readonly Sheet[];
  readonly bolts: readonly Point[];
};

/** What runs round the air of one chamber under a panel: its battens, what they leave open, and the gasket on them. */
export type Ring = {
  readonly chamber: Chamber;
  /** What of the panel has that air behind it, where its neighbours end. */
  readonly air: Sheet;
  /** In the axes of that. */
  readonly open: Profile;
  readonly battens: readonly Batten[];
  readonly gasket: Gasket;
};

/** A panel that is bolted on, with all that it is bolted to. */
export type Removable = {
  readonly face: Face;
  readonly spec: BoltedSpec;
  readonly from: Origin;
  readonly bolt: Bolt | undefined;
  readonly insert: Seated | undefined;
  /** How wide its battens are, mm: wider at their face where the wall behind leans in. */
  readonly wide: number;
  readonly rings: readonly Ring[];
  /** Chambers whose side of it is too narrow for battens. */
  readonly narrow: readonly Chamber[];
};

/** Every panel that is bolted on. */
export function removablesOf(spec: EnclosureSpec, shape: Shape, around: Around): readonly Removable[] {
  return Object.entries(spec.panels ?? {}).flatMap(([name, { bolted }]): readonly Removable[] => {
    const face = faceOf(shape, name);
    if (face === undefined || bolted === undefined) return [];
    const bolt = boltRow(around.shop, bolted.with);
    const { thickness } = around.board(spec.board);
    const insert = bolt && seatedIn(bolted.insert, bolt, thickness, around.shop);
    const made = shape.fitOut.chambers.flatMap((chamber) => {
      const air = airBehind(face, chamber.air, shape.extrusion);
      return air === undefined ? [] : [{ chamber, ring: ringOf(chamber, air, face, bolted, insert, thickness, shape) }];
    });
    return [
      {
        face,
        spec: bolted,
        from: below(around.origin, "panels", name, "bolted"),
        bolt,
        insert,
        wide: widthOf(bolted, insert, shape.step),
        rings: numbered(
          name,
          made.flatMap(({ ring }) => ring ?? []),
        ),
        narrow: made.flatMap(({ chamber, ring }) => (ring === undefined ? [chamber] : [])),
      },
    ];
  });
}

/** How wide battens are, mm: what the insert needs on either side, and no less than is good to glue. */
function widthOf({ wide }: BoltedSpec, insert: Seated | undefined, step: number | undefined): number {
  if (wide !== undefined) return wide;
  return upToStep(Math.max(rules.battenWidth.value, 2 * roomOf(insert)), step);
}

function ringOf(
  chamber: Chamber,
  air: Sheet,
  face: Face,
  spec: BoltedSpec,
  insert: Seated | undefined,
  board: number,
  shape: Shape,
): Ring | undefined {
  const layers = insert?.layers ?? 1;
  const wide = widthOf(spec, insert, shape.step);
  // where the wall leans in, the batten is as wide at its back
  const leansIn = (by: string) => layers * board * Math.tan(Math.max(0, air.bevels[by] ?? 0));
  const widths = (by: string) =>
    faceOf(shape, by) === undefined ? 0 : upToStep(wide + leansIn(by), leansIn(by) > 0 ? shape.step : undefined);
  const open = openingWithin(air, widths);
  const strips = stripsAlong(air, widths, layers * board, "batten");
  if (open === undefined || strips === undefined) return undefined;
  const braces = shape.fitOut.braces.filter((brace) => brace.chamber === chamber).map((brace) => brace.board);
  const standing = braces.filter(({ sheet }) => sheet.outline.some(({ by }) => by === face.name));
  const battens = strips.flatMap(({ along, sheet }) => {
    const parts = standing.reduce<readonly Sheet[]>(
      (so, brace) => so.flatMap((part) => partedBy(part, along, brace.sheet, brace.role)),
      [sheet],
    );
    return parts.map((part): Batten => {
      const bolts = boltsIn(part, wide / 2, spec.every ?? rules.screwSpacing.value, roomOf(insert));
      const onPanel = bolts.map((point) => onSheet(face, face.panel, offSheet(face, air, point)));
      return { role: "", wall: along, layers: layersOf(part, layers), bolts: onPanel };
    });
  });
  return { chamber, air, open, battens, gasket: gasketOf(air, open, face, spec, shape) };
}

function boltsIn(strip: Sheet, off: number, every: number, room: number): readonly Point[] {
  const ends = middleOf(strip.outline, innerEdge, off);
  if (ends === undefined) return [];
  const [a, b] = ends;
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  return alongRow(length, every, room).map((at) => ({
    x: a.x + ((b.x - a.x) * at) / length,
    y: a.y + ((b.y - a.y) * at) / length,
  }));
}

/** A bar cut into boards of equal thickness, each with its own outline at its face. */
function layersOf(bar: Sheet, count: number): readonly Sheet[] {
  const thickness = bar.thickness / count;
  return Array.from({ length: count }, (_, i) => {
    const frame: Frame = compose(bar.frame, shifted(0, 0, -i * thickness));
    return { ...bar, frame, outline: outlineAt(bar, i * thickness), thickness };
  });
}

/** Out over the edges of the neighbours that it runs over, up to those that it lies between, and over dividers. */
function gasketOf(air: Sheet, open: Profile, face: Face, spec: BoltedSpec, shape: Shape): Gasket {
  const thickness = clampedOf(spec.gasket);
  const n = air.outline.length;
  const lines = air.outline.map(({ by }, i) => inward(edgeLine(air.outline, i), -bearingOn(by, air, face, shape)));
  const outer = air.outline.map((corner, i) => ({ ...corner, ...crossing(lines[(i + n - 1) % n]!, lines[i]!) }));
  const hole = open.map((corner) => ({ ...corner, by: "opening" }));
  return { at: compose(air.frame, shifted(0, 0, thickness)), region: { outer, holes: [hole] }, thickness };
}

/** How much of a neighbour's edge the gasket lies on, mm. */
function bearingOn(by: string, air: Sheet, face: Face, shape: Shape): number {
  const wall = faceOf(shape, by);
  if (wall === undefined) return shape.fitOut.dividers.find(({ role }) => role === by)?.sheet.thickness ?? 0;
  const { over } = meetingOf(shape.meetings, face.name, by);
  return over === face.name ? thickOf(wall) / Math.cos(air.bevels[by] ?? 0) : 0;
}

/** Battens named in the order in which they run, over all chambers: "batten.top.1". */
function numbered(face: string, rings: readonly Ring[]): readonly Ring[] {
  let count = 0;
  return rings.map((ring) => ({
    ...ring,
    battens: ring.battens.map((batten) => {
      count += 1;
      return { ...batten, role: `batten.${face}.${count}` };
    }),
  }));
}

export const layerRole = ({ role }: Pick<Batten, "role">, layer: number): string =>
  layer === 0 ? role : `${role}.layer.${layer + 1}`;

export const battensOf = ({ rings }: Removable): readonly Batten[] => rings.flatMap(({ battens }) => battens);

/** What the battens under a panel take of a chamber, L. */
export const battensL = ({ battens }: Ring): number =>
  battens.reduce((sum, { layers }) => sum + layers.reduce((own, sheet) => own + sheetL(sheet), 0), 0);

/** The air before them, as deep as the gasket is thick, L. */
export const gapL = ({ open, gasket }: Ring): number => (areaOf(open) * gasket.thickness) / 1e6;

/** The middle of the gasket, all round and over dividers, mm: what is bought of it. */
export function gasketLength({ rings }: Removable): number {
  const around = ({ air, open }: Ring) => {
    const n = open.length;
    return open.reduce((sum, { by, x, y }, i) => {
      const [next, a, b] = [open[(i + 1) % n]!, air.outline[i]!, air.outline[(i + 1) % n]!];
      // a divider's strip lies on both its chambers
      const share = by.startsWith("divider.") ? 0.5 : 1;
      return sum + (share * (Math.hypot(next.x - x, next.y - y) + Math.hypot(b.x - a.x, b.y - a.y))) / 2;
    }, 0);
  };
  return rings.reduce((sum, ring) => sum + around(ring), 0);
}
