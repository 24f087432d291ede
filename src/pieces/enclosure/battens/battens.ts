import { inverse, place } from "../../../geometry/frame.js";
import type { Profile } from "../../../geometry/profile.js";
import { below, type Origin } from "../../../input/finding.js";
import type { Around } from "../../../model/piece.js";
import { rules } from "../../../shop/rules.js";
import { downToStep } from "../../common/method.js";
import { airBehind } from "../chambers/airBehind.js";
import type { Chamber } from "../chambers/divide.js";
import { outlineAt } from "../chambers/innerSheet.js";
import { edgeLine, offLine } from "../chambers/section.js";
import { cornerNames } from "../form/asked.js";
import { faceOf } from "../form/box.js";
import { type Face, isBolted, type Sheet } from "../form/face.js";
import { alongTo, crossing, inward, type Line } from "../form/lines.js";
import { cornersOf } from "../removable/corners.js";
import { partedBy } from "../removable/parted.js";
import { removablesOf } from "../removable/removable.js";
import { runsInto } from "../removable/runsInto.js";
import { innerEdge, keepsItsWay } from "../removable/strips.js";
import type { EnclosureSpec } from "../schema.js";
import type { Shape } from "../shape.js";
import { clearOf } from "./clearOf.js";
import { cornersNamed } from "./keys.js";

/** A batten in an inside corner: flat on one face, its edge along another. */
export type CornerBatten = {
  readonly role: string;
  readonly from: Origin;
  readonly flat: Face;
  readonly along: Face;
  readonly chamber: Chamber;
  readonly board: ReturnType<Around["board"]>;
  readonly sheet: Sheet;
  /** Its edge lies against the second face; where the corner opens too wide for a blade it only touches. */
  readonly isSnug: boolean;
};

/** A corner that takes no batten. */
export type NoBatten = {
  readonly from: Origin;
  readonly corner: string;
  readonly wide: number;
  readonly why: "unknown" | "goes in" | "bolted" | "room";
};

export type Battens = { readonly stand: readonly CornerBatten[]; readonly unfit: readonly NoBatten[] };

/** What lies in a corner already: by its two faces. */
type Lying = { readonly faces: readonly [string, string]; readonly chamber: Chamber; readonly sheet: Sheet };

/** Every batten in the corners of a box, one for each chamber that the corner is in; later ones end at earlier ones. */
export function battensOf(spec: EnclosureSpec, shape: Shape, around: Around): Battens {
  const wanted = (spec.battens ?? []).flatMap(({ along, wide, board }, index) =>
    cornersNamed(along).map(
      ({ corner, path }): Wanted => ({
        corner,
        from: below(around.origin, "battens", index, ...path),
        wide,
        board: around.board(board ?? spec.board),
      }),
    ),
  );
  if (wanted.length === 0) return { stand: [], unfit: [] };
  const lying = underPanels(spec, shape, around);
  const none: Battens = { stand: [], unfit: [] };
  return wanted.reduce((so, next) => add(so, next, lying, shape), none);
}

type Wanted = Pick<NoBatten, "from" | "corner" | "wide"> & Pick<CornerBatten, "board">;

function add(so: Battens, wanted: Wanted, lying: readonly Lying[], shape: Shape): Battens {
  const { from, corner, wide, board } = wanted;
  const refuse = (why: NoBatten["why"]): Battens => {
    return { ...so, unfit: [...so.unfit, { from, corner, wide, why }] };
  };
  const found = facesAt(corner, shape);
  if (typeof found === "string") return refuse(found);
  const [flat, along] = found;
  const before = [...lying, ...so.stand.map(asLying)];
  const bars = shape.fitOut.chambers.flatMap((chamber) =>
    barsIn(chamber, flat, along, wide, board.thickness, before, shape),
  );
  const isTwice = so.stand.some((each) => [each.flat, each.along].every((face) => face === flat || face === along));
  const hasPlace = ({ sheet, chamber }: Bar) => sheet !== undefined && runsInto(sheet, chamber, shape) === undefined;
  if (isTwice || !bars.every(hasPlace)) return refuse("room");
  const stand = bars.flatMap(({ sheet, chamber, isSnug }, i): readonly CornerBatten[] => {
    const role = `batten.${so.stand.length + i + 1}`;
    return sheet === undefined ? [] : [{ role, from, flat, along, chamber, board, sheet, isSnug }];
  });
  return { ...so, stand: [...so.stand, ...stand] };
}

function facesAt(corner: string, shape: Shape): readonly [Face, Face] | NoBatten["why"] {
  const [a, b, ...more] = cornerNames(corner);
  const meeting = shape.meetings.find(
    ({ over, into }) => a !== b && [over, into].every((name) => name === a || name === b),
  );
  const [flat, along] = [a, b].map((name) => faceOf(shape, name ?? ""));
  if (meeting === undefined || flat === undefined || along === undefined || more.length > 0) return "unknown";
  if (isBolted(flat.skin) || isBolted(along.skin)) return "bolted";
  return meeting.turn < 0 ? "goes in" : [flat, along];
}

const asLying = ({ flat, along, chamber, sheet }: CornerBatten): Lying => {
  return { faces: [flat.name, along.name], chamber, sheet };
};

/** The battens under panels that are bolted on come first. */
function underPanels(spec: EnclosureSpec, shape: Shape, around: Around): readonly Lying[] {
  return removablesOf(spec, shape, around).flatMap(({ face, rings }) =>
    rings.flatMap(({ chamber, battens }) =>
      battens.flatMap(({ wall, layers }) =>
        layers.map((sheet): Lying => ({ faces: [face.name, wall], chamber, sheet })),
      ),
    ),
  );
}

type Bar = { readonly chamber: Chamber; readonly sheet: Sheet | undefined; readonly isSnug: boolean };

/** The bars of one corner in one chamber: none where the corner is not in it, parted by braces that stand in it. */
function barsIn(
  chamber: Chamber,
  flat: Face,
  along: Face,
  wide: number,
  thickness: number,
  before: readonly Lying[],
  shape: Shape,
): readonly Bar[] {
  const air = airBehind(flat, chamber.air, shape.extrusion);
  const i = air?.outline.findIndex(({ by }) => by === along.name) ?? -1;
  if (air === undefined || i < 0) return [];
  const lying = before.filter((each) => each.chamber === chamber);
  const between = barAt(
    air,
    i,
    wide,
    thickness,
    lying.filter((each) => meetsEither(each, flat, along)),
  );
  // round a corner that is cut off something may reach in that lies along neither of its faces
  const bar =
    between &&
    clearOf(
      between,
      lying.map(({ sheet }) => sheet),
    );
  const isSnug = (air.bevels[along.name] ?? 0) >= -steepest;
  if (bar === undefined || !keepsItsWay(bar)) return [{ chamber, sheet: undefined, isSnug }];
  const braces = shape.fitOut.braces
    .filter((brace) => brace.chamber === chamber)
    .map(({ board }) => board)
    .filter(({ sheet }) => sheet.outline.some(({ by }) => by === flat.name || by === along.name));
  const parts = braces.reduce<readonly Sheet[]>(
    (so, brace) => so.flatMap((part) => partedBy(part, along.name, brace.sheet, brace.role)),
    [bar],
  );
  return parts.map((sheet) => ({ chamber, sheet: downToSteps(sheet, along.name, shape.step), isSnug }));
}

/** A bar closes nothing at its ends: sawn, it is cut down to whole steps, and one end stands off what is there. */
function downToSteps(bar: Sheet, along: string, step: number | undefined): Sheet {
  const i = bar.outline.findIndex(({ by }) => by === along);
  const line = edgeLine(bar.outline, i);
  const places = [...bar.outline, ...outlineAt(bar, bar.thickness)].map((corner) => alongTo(line, corner));
  const size = Math.max(...places) - Math.min(...places);
  const less = size - downToStep(size, step);
  // the corners at the far end of its long edge, and of the one opposite, lie beyond its middle
  const middle = (Math.max(...places) + Math.min(...places)) / 2;
  const outline = bar.outline.map((corner) => {
    if (less === 0 || alongTo(line, corner) < middle) return corner;
    return { ...corner, x: corner.x - line.along.x * less, y: corner.y - line.along.y * less };
  });
  return { ...bar, outline };
}

/** Something that lies along one of a batten's two faces may be in its way at an end. */
const meetsEither = ({ faces }: Lying, flat: Face, along: Face): boolean =>
  faces.includes(flat.name) || faces.includes(along.name);

/** Steeper than this no blade tilts, rad. */
const steepest = (rules.bladeTiltDeg.value * Math.PI) / 180 + 1e-6;

/**
 * A bar along the edge `i` of some air behind a face, up to the walls at its ends or what lies along those already. Its
 * edge leans with the wall; where that opens too wide for a blade it is square, and touches at its foot.
 */
function barAt(air: Sheet, i: number, wide: number, thickness: number, before: readonly Lying[]): Sheet | undefined {
  const { outline, bevels } = air;
  const n = outline.length;
  const at = (k: number) => (k + n) % n;
  const name = (k: number) => outline[at(k)]!.by;
  const lean = (k: number) => bevels[name(k)] ?? 0;
  if (lean(i) > steepest) return undefined;
  const line = edgeLine(outline, i);
  const inner = inward(line, wide);
  const [start, stop] = [i - 1, i + 1].map((k): Line => {
    const lying = reachFrom(air, at(k), before);
    // what no blade cuts is cut square, clear of the wall
    const clear = lean(k) > steepest ? thickness * Math.tan(lean(k)) : 0;
    return inward(edgeLine(outline, at(k)), lying + clear);
  }) as [Line, Line];
  const own: Profile = [
    { ...crossing(line, start), bulge: 0, by: name(i) },
    { ...crossing(line, stop), bulge: 0, by: name(i + 1) },
    { ...crossing(inner, stop), bulge: 0, by: innerEdge },
    { ...crossing(inner, start), bulge: 0, by: name(i - 1) },
  ];
  const leaning = [i - 1, i, i + 1].filter((k) => lean(k) !== 0 && Math.abs(lean(k)) <= steepest);
  const sheet = {
    frame: air.frame,
    outline: own,
    bevels: Object.fromEntries(leaning.map((k) => [name(k), lean(k)])),
    thickness,
  };
  return keepsItsWay(sheet) ? sheet : undefined;
}

/** How far what lies along a wall reaches out from it, seen on the face of the air; 0 where nothing does. mm. */
function reachFrom(air: Sheet, wall: number, lying: readonly Lying[]): number {
  const line = edgeLine(air.outline, wall);
  const { by } = air.outline[wall]!;
  const lean = Math.tan(air.bevels[by] ?? 0);
  const seen = inverse(air.frame);
  const reaches = lying
    .filter(({ faces }) => faces.includes(by))
    .flatMap(({ sheet }) => cornersOf(sheet))
    .map((corner) => {
      const [x, y, z] = place(seen, corner);
      return offLine(line, { x, y }) + z * lean;
    });
  return Math.max(0, ...reaches);
}
