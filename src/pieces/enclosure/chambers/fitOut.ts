import { difference, intersection } from "../../../geometry/boolean.js";
import { relieve } from "../../../geometry/corners.js";
import { areaOf } from "../../../geometry/measure.js";
import type { Profile } from "../../../geometry/profile.js";
import { tolerance } from "../../../geometry/tolerance.js";
import { below, type Origin } from "../../../input/finding.js";
import type { Around } from "../../../model/piece.js";
import { rules } from "../../../shop/rules.js";
import { snap } from "../../common/method.js";

import { type Boards, faceOf } from "../form/box.js";
import { type Face, type Sheet, thickOf } from "../form/face.js";
import type { Inside } from "../inside.js";
import { type NoSlot, type Slot, slotIn } from "../ports/slotPort.js";
import type { EnclosureSpec } from "../schema.js";
import { axisAcross, lineAcross, reachOf } from "./across.js";
import { windowsOf } from "./braces.js";
import { type Chamber, divided, type Refused } from "./divide.js";
import type { InnerBoard } from "./innerBoard.js";
import { sheetAcross } from "./innerSheet.js";
import { leftPart, reversed } from "./section.js";
import { type Places, wantedDividers } from "./wanted.js";

/** A slot port with its chamber and the face it opens through. */
export type FittedSlot = Slot & {
  readonly role: string;
  readonly index: number;
  readonly chamber: Chamber;
  readonly face: Face;
  readonly boards: readonly InnerBoard[];
};

export type FittedBrace = { readonly chamber: Chamber; readonly board: InnerBoard };

/** What cannot stand where the job has it. `why` chamber: it names none, or has to name one. */
export type Unfit =
  | { readonly what: "divider"; readonly refused: Refused }
  | {
      readonly what: "brace";
      readonly index: number;
      readonly why: "chamber" | "outside" | "corner" | "port";
      readonly reach: readonly [number, number];
    }
  | {
      readonly what: "brace";
      readonly index: number;
      readonly why: "window";
      readonly at: number;
      readonly sheet: Sheet;
    }
  | { readonly what: "slot"; readonly index: number; readonly why: "chamber" | "wall" }
  | { readonly what: "slot"; readonly index: number; readonly no: NoSlot };

/** Everything that stands inside a box: its chambers, the boards between and in them, and its ports. */
export type FitOut = {
  readonly chambers: readonly Chamber[];
  readonly dividers: readonly InnerBoard[];
  readonly braces: readonly FittedBrace[];
  readonly slots: readonly FittedSlot[];
  readonly unfit: readonly Unfit[];
};

type Tried<T> = { readonly fit: readonly T[]; readonly unfit: readonly Unfit[] };

export function fitOutOf(
  spec: EnclosureSpec,
  boards: Boards,
  step: number | undefined,
  around: Around,
  places: Places,
): FitOut {
  const lie = boards.extrusion;
  const { chambers, dividers, refused } = divided(
    boards.inside,
    wantedDividers(spec, boards, step, around, places),
    lie,
  );
  const slots = together((spec["slot ports"] ?? []).map((_, i) => slotAt(i, spec, boards, step, around, chambers)));
  const free = chambers.map((chamber) => besidePorts(chamber, slots.fit));
  const braces = together((spec.braces ?? []).map((_, i) => braceAt(i, spec, boards, step, around, free, slots.fit)));
  return {
    chambers,
    dividers: dividers.map(({ role, index, board, sheet, at, spec: { across } }) => {
      const from = fromList(around, "dividers", index);
      return { role, from, board, sheet, marked: { across, at }, windows: [] };
    }),
    braces: braces.fit,
    slots: slots.fit,
    unfit: [...refused.map((each): Unfit => ({ what: "divider", refused: each })), ...braces.unfit, ...slots.unfit],
  };
}

/** Every board inside a box. */
export const innerBoards = ({ dividers, braces, slots }: FitOut): readonly InnerBoard[] => [
  ...dividers,
  ...braces.map(({ board }) => board),
  ...slots.flatMap(({ boards }) => boards),
];

function together<T>(tried: readonly Tried<T>[]): Tried<T> {
  return { fit: tried.flatMap(({ fit }) => fit), unfit: tried.flatMap(({ unfit }) => unfit) };
}

const isNot = (unfit: Unfit) => ({ fit: [], unfit: [unfit] });

/** What of a chamber its slot ports leave free: there its braces stand. */
type Free = { readonly chamber: Chamber; readonly name: string | undefined; readonly air: Inside };

function besidePorts(chamber: Chamber, slots: readonly FittedSlot[]): Free {
  const taken = slots.filter((slot) => slot.chamber === chamber).map((slot) => ({ outer: slot.taken, holes: [] }));
  const { air, name } = chamber;
  if (taken.length === 0) return { chamber, name, air };
  const left = difference({ outer: air.section, holes: [] }, taken).map(({ outer }) => outer);
  const section = left.reduce((most, next) => (areaOf(next) > areaOf(most) ? next : most), left[0] ?? air.section);
  return { chamber, name, air: { ...air, section } };
}

function braceAt(
  index: number,
  spec: EnclosureSpec,
  { extrusion, inside }: Boards,
  step: number | undefined,
  around: Around,
  chambers: readonly Free[],
  slots: readonly FittedSlot[],
): Tried<FittedBrace> {
  const wanted = spec.braces![index]!;
  const found = chamberCalled(wanted.in, chambers);
  const refuse = (why: "chamber" | "outside" | "corner" | "port", reach: readonly [number, number]) =>
    isNot({ what: "brace", index, why, reach });
  if (found === undefined) return refuse("chamber", [0, 0]);
  const { chamber, air } = found;
  const board = around.board(wanted.board ?? spec.board);
  const axis = axisAcross(wanted.across, extrusion.view);
  const reach = reachOf(air, axis);
  const [from, to] = wanted.in === undefined ? reachOf(inside, axis) : reach;
  const at = wanted.at === "middle" ? snap((from + to - board.thickness) / 2, step) : wanted.at;
  if (at <= reach[0] || at + board.thickness >= reach[1]) return refuse("outside", reach);
  const sheet = relieved(sheetAcross(air, axis, at, board.thickness, extrusion));
  if (sheet === undefined) return refuse("corner", reach);
  const exits = slots.filter((slot) => slot.chamber === chamber).map(({ exit }) => exit);
  if (axis !== "length" && exits.some((exit) => stands(air.section, axis, at, board.thickness, exit))) {
    return refuse("port", reach);
  }
  const windows = windowsOf(sheet, wanted);
  if (windows.length === 0) return isNot({ what: "brace", index, why: "window", at, sheet });
  const origin = fromList(around, "braces", index);
  const marked = { across: wanted.across, at };
  return {
    fit: [{ chamber, board: { role: `brace.${index + 1}`, from: origin, board, sheet, marked, windows } }],
    unfit: [],
  };
}

/** Whether a board right across a section stands in some part of it. */
function stands(section: Profile, axis: "x" | "y", at: number, thickness: number, place: Profile): boolean {
  const below = leftPart(section, lineAcross(axis, at + thickness), "");
  const footprint = leftPart(below, reversed(lineAcross(axis, at)), "");
  const shared = intersection({ outer: footprint, holes: [] }, { outer: place, holes: [] });
  return shared.some(({ outer }) => areaOf(outer) > tolerance.overlapVolume);
}

/** Where it goes round a port its inside corners take the bit's bite, so that it seats. */
function relieved(sheet: Sheet | undefined): Sheet | undefined {
  return sheet && { ...sheet, outline: relieve(sheet.outline, rules.openingCorner.value, "diagonal").profile };
}

function slotAt(
  index: number,
  spec: EnclosureSpec,
  boards: Boards,
  step: number | undefined,
  around: Around,
  chambers: readonly Chamber[],
): Tried<FittedSlot> {
  const wanted = spec["slot ports"]![index]!;
  const chamber = chamberCalled(wanted.chamber, chambers);
  const face = faceOf(boards, wanted.in);
  if (chamber === undefined) return isNot({ what: "slot", index, why: "chamber" });
  if (face === undefined) return isNot({ what: "slot", index, why: "wall" });
  const board = around.board(wanted.board ?? spec.board);
  const role = `port.${index + 1}`;
  const asked = { role, spec: wanted, thickness: board.thickness, wall: thickOf(face), step };
  const slot = slotIn(chamber.air, asked, boards.extrusion);
  if ("why" in slot) return isNot({ what: "slot", index, no: slot });
  const from = fromList(around, "slot ports", index);
  const own = slot.panels.map(({ role: panel, sheet, beside }): InnerBoard => {
    return { role: panel, sheet, from, board, marked: { beside, gap: wanted.gap }, windows: [] };
  });
  return { fit: [{ ...slot, role, index, chamber, face, boards: own }], unfit: [] };
}

/** The chamber of this name; the only one where none is named. */
export function chamberCalled<T extends Pick<Chamber, "name">>(
  name: string | undefined,
  chambers: readonly T[],
): T | undefined {
  if (name !== undefined) return chambers.find((chamber) => chamber.name === name);
  return chambers.length === 1 ? chambers[0] : undefined;
}

const fromList = ({ origin }: Around, key: string, index: number): Origin => below(origin, key, index);
