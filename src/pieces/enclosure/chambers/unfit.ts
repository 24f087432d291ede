import { extentsOf } from "../../../geometry/measure.js";
import { tolerance } from "../../../geometry/tolerance.js";
import { all, below, type Finding, list, mm, radians, raise, text } from "../../../input/finding.js";
import { partId } from "../../../model/ids.js";
import type { Around } from "../../../model/piece.js";
import { rules } from "../../../shop/rules.js";
import { onSheet } from "../form/face.js";
import { mouthOn } from "../ports/mouth.js";
import type { EnclosureSpec } from "../schema.js";
import type { Shape } from "../shape.js";
import { usualBrace } from "./braces.js";
import { namesOf, type Refused } from "./divide.js";
import * as say from "./findings.js";
import { type FittedSlot, innerBoards, type Unfit } from "./fitOut.js";
import type { InnerBoard } from "./innerBoard.js";

/** What cannot stand inside the box as the job has it, and what stands there badly. */
export function fitOutFindings(spec: EnclosureSpec, shape: Shape, around: Around): readonly Finding[] {
  const { unfit } = shape.fitOut;
  // chambers that are missing for want of a divider are not told again
  const first = unfit.filter(({ what }) => what === "divider");
  return [
    ...(first.length > 0 ? first : unfit).map((each) => unfitFinding(each, spec, shape, around)),
    ...innerBoards(shape.fitOut).flatMap((inner) => steep(inner, around)),
    ...shape.fitOut.slots.flatMap((slot) => [...nearEnd(slot, spec, around), ...coveredMouth(slot, shape, around)]),
  ];
}

function unfitFinding(unfit: Unfit, spec: EnclosureSpec, shape: Shape, around: Around): Finding {
  if (unfit.what === "divider") return dividerFinding(unfit.refused, shape, around);
  if (unfit.what === "brace") return braceFinding(unfit, spec, shape, around);
  return slotFinding(unfit, spec, shape, around);
}

function dividerFinding({ wanted, why, reach }: Refused, shape: Shape, around: Around): Finding {
  const at = [below(around.origin, "dividers", wanted.index)];
  const [one, other] = namesOf(wanted.spec);
  if (why === "names") {
    const facts = { one: text(one), other: text(other), chambers: text(chamberWords(shape)) };
    return raise(say.dividerNames, { at, on: [around.id], facts });
  }
  const chamber = around.id;
  return placeFinding("divider", why, { at: wanted.at, reach, thickness: wanted.board.thickness, chamber }, at, around);
}

type BraceUnfit = Extract<Unfit, { what: "brace" }>;

function braceFinding(unfit: BraceUnfit, spec: EnclosureSpec, shape: Shape, around: Around): Finding {
  const { index } = unfit;
  const wanted = spec.braces![index]!;
  const at = [below(around.origin, "braces", index)];
  const on = [around.id];
  if (unfit.why === "chamber") return chamberFinding("brace", "in", wanted.in, at, shape, around);
  if (unfit.why === "window") {
    const { min, max } = extentsOf(unfit.sheet.outline);
    const { border = usualBrace.border, round = usualBrace.round } = wanted;
    const size = { across: mm(max.x - min.x), up: mm(max.y - min.y) };
    const facts = { at: mm(unfit.at), ...size, border: mm(border), round: mm(round) };
    return raise(say.braceWithoutWindow, { at, on, facts });
  }
  const { why, reach } = unfit;
  const { thickness } = around.board(wanted.board ?? spec.board);
  const place = wanted.at === "middle" ? (reach[0] + reach[1] - thickness) / 2 : wanted.at;
  if (why === "port") return raise(say.braceShutsPort, { at, on, facts: { at: mm(place) } });
  return placeFinding("brace", why, { at: place, reach, thickness, chamber: wanted.in ?? around.id }, at, around);
}

type Place = {
  readonly at: number;
  readonly reach: readonly [number, number];
  readonly thickness: number;
  readonly chamber: string;
};

function placeFinding(
  what: string,
  why: "outside" | "corner",
  { at: place, reach: [from, to], thickness, chamber }: Place,
  at: Finding["at"],
  { id }: Around,
): Finding {
  const facts = { what: text(what), at: mm(place), chamber: text(chamber) };
  if (why === "corner") return raise(say.standsInCorner, { at, on: [id], facts });
  const most = Math.max(from, to - thickness);
  const limits = { from: mm(from), to: mm(to), least: mm(from), most: mm(most) };
  return raise(say.outsideChamber, { at, on: [id], facts: { ...facts, ...limits } });
}

type SlotUnfit = Extract<Unfit, { what: "slot" }>;

function slotFinding(unfit: SlotUnfit, spec: EnclosureSpec, shape: Shape, around: Around): Finding {
  const wanted = spec["slot ports"]![unfit.index]!;
  const at = [below(around.origin, "slot ports", unfit.index)];
  const on = [around.id];
  if ("why" in unfit && unfit.why === "chamber") {
    return chamberFinding("slot port", "chamber", wanted.chamber, at, shape, around);
  }
  const port = text(`port ${unfit.index + 1}`);
  if ("why" in unfit || unfit.no.why === "wall") {
    const walls = list(shape.extrusion.section.map(({ by }) => by));
    return raise(say.slotWalls, { at, on, facts: { port, face: text(wanted.in), beside: text(wanted.beside), walls } });
  }
  const { why, limit } = unfit.no;
  const facts = { port, long: mm(wanted.long) };
  if (why === "tight") {
    return raise(say.slotTurnTight, { at, on, facts: { port, beside: text(wanted.beside), least: mm(limit) } });
  }
  if (why === "wide") {
    return raise(say.slotTooWide, { at, on, facts: { port, beside: text(wanted.beside), takes: mm(limit) } });
  }
  if (why === "turn") return raise(say.slotTurnShort, { at, on, facts: { ...facts, least: mm(limit) } });
  const best = mm(Math.max(0, limit - wanted.gap));
  return raise(say.slotTooLong, { at, on, facts: { ...facts, most: mm(limit), best } });
}

export function chamberFinding(
  what: string,
  key: string,
  found: string | undefined,
  at: Finding["at"],
  shape: Shape,
  { id }: Around,
): Finding {
  const names = shape.fitOut.chambers.flatMap(({ name }) => (name === undefined ? [] : [name]));
  const chambers = names.length > 0 ? list(names) : text("none: without dividers the box is one chamber");
  const piece = text(id);
  if (found !== undefined)
    return raise(say.noSuchChamber, { at, on: [id], facts: { piece, found: text(found), chambers } });
  const facts = { what: text(what), piece, found: text("no"), key: text(key), chambers };
  return raise(say.chamberNotNamed, { at, on: [id], facts });
}

const chamberWords = ({ fitOut }: Shape): string =>
  fitOut.chambers.map(({ name }) => name ?? "the whole box").join(", ");

/** A board inside that meets a wall at more than a blade tilts. */
function steep({ role, from, sheet }: InnerBoard, { id }: Around): readonly Finding[] {
  const most = (rules.bladeTiltDeg.value * Math.PI) / 180;
  const edges = Object.entries(sheet.bevels).filter(([, bevel]) => Math.abs(bevel) > most + 1e-6);
  return edges.map(([wall, bevel]) => {
    const facts = {
      board: text(role.replace(".", " ")),
      wall: text(wall),
      tilt: radians(Math.abs(bevel)),
      most: radians(most),
    };
    return raise(say.innerTooSteep, { at: [from], on: [partId(id, role)], facts });
  });
}

function nearEnd({ index, room }: FittedSlot, spec: EnclosureSpec, around: Around): readonly Finding[] {
  const { gap, long } = spec["slot ports"]![index]!;
  if (room >= gap - tolerance.samePoint) return [];
  const at = [below(around.origin, "slot ports", index)];
  const best = mm(Math.max(0, long - (gap - room)));
  const facts = { port: text(`port ${index + 1}`), room: mm(room), gap: mm(gap), best };
  return [raise(say.slotEndNear, { at, on: [around.id], facts })];
}

/** A mouth that is not a hole in its panel: a neighbour covers the edge it runs to. */
function coveredMouth(slot: FittedSlot, { meetings }: Shape, around: Around): readonly Finding[] {
  const { face, mouth, chamber, index } = slot;
  const { min, max } = mouthOn(face, mouth, chamber.air);
  const [a, b] = [onSheet(face, face.panel, min), onSheet(face, face.panel, max)];
  const board = extentsOf(face.panel.outline);
  const web = rules.web.value;
  const inside =
    a.x >= board.min.x + web && a.y >= board.min.y + web && b.x <= board.max.x - web && b.y <= board.max.y - web;
  if (inside) return [];
  const over = meetings
    .filter(({ into, form }) => into === face.name && form !== "mitre")
    .map((meeting) => meeting.over);
  const facts = { port: text(`port ${index + 1}`), face: text(face.name), over: all(over) };
  const at = [below(around.origin, "slot ports", index, "in")];
  return [raise(say.mouthUnderNeighbour, { at, on: [partId(around.id, face.name)], facts })];
}
