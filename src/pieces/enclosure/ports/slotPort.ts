import { difference } from "../../../geometry/boolean.js";
import { areaOf, areaOfRegion } from "../../../geometry/measure.js";
import type { Profile } from "../../../geometry/profile.js";
import { againstTheClock, polygon } from "../../../geometry/shapes.js";
import { tolerance } from "../../../geometry/tolerance.js";
import { rules } from "../../../shop/rules.js";
import { downToStep, snap } from "../../common/method.js";
import { freeEdge } from "../chambers/innerBoard.js";
import { type Lie, type Upright, uprightSheet } from "../chambers/innerSheet.js";
import type { SlotPortSpec } from "../chambers/keys.js";
import { edgeLine, meetsAt, offLine, squareTo } from "../chambers/section.js";
import type { Sheet } from "../form/face.js";
import { alongTo, crossing, inward, type Line, lineThrough } from "../form/lines.js";
import type { Inside } from "../inside.js";

/**
 * What a slot port is made of, all sizes mm. `wall`: from the outside of the wall it opens through to the air. `step`: of
 * the saw that cuts its panels, where there is one.
 */
export type SlotAsked = {
  readonly role: string;
  readonly spec: SlotPortSpec;
  readonly thickness: number;
  readonly wall: number;
  readonly step: number | undefined;
};

/** A port as it lies in the section of its chamber, as wide as that is long. */
export type Slot = {
  /** One panel, or two where it turns: the second stands on the first. */
  readonly panels: readonly { readonly role: string; readonly sheet: Sheet; readonly beside: string }[];
  /** The air in it from the inside of the wall it opens through to its end. */
  readonly channel: Profile;
  /** What the port takes of the section, panels and all: their names on the sides that look into the box. */
  readonly taken: Profile;
  /** Before its end, as deep as its gap: what the air needs to get round it. */
  readonly exit: Profile;
  /** Where it opens, along the inside of its wall: the two corners in the section. */
  readonly mouth: Profile;
  /** From its end on along its middle to the next wall, mm. */
  readonly room: number;
};

/**
 * `wall`: the two walls are not neighbours in the section; `turn`: shorter than the limit, so that nothing is left after
 * the turn; `long`: longer than the limit; `tight`: the wall it runs along is shorter inside than the limit; `wide`: gap and
 * panel together are the limit, and do not fit beside the wall, mm.
 */
export type NoSlot = { readonly why: "wall" | "turn" | "long" | "tight" | "wide"; readonly limit: number };

/** A panel shorter than this after the turn is none, mm. */
const leastTurn = 20;

/**
 * A port made of panels: it runs along a wall with that as one side, a panel of its own as the other, and shares the two
 * walls at its ends. It may turn the corner at the end of its wall and go on along the next.
 *
 * Length: along the middle, from the outside of the wall it opens through; round the corner by the crossing of the two
 *         middles (common practice, no source; for a square corner the air is then gap x length, as elementary geometry
 *         has it). The panel that ends free is cut to the nearest whole step, and the port is so much longer or shorter;
 *         the one before a turn, down to a step: it ends a little before the other's face, glued to its back.
 */
export function slotIn(air: Inside, asked: SlotAsked, lie: Lie): Slot | NoSlot {
  const way = wayOf(air.section, asked.spec);
  if (way === undefined) return { why: "wall", limit: 0 };
  const slot = asked.spec.turns ? turned(air, asked, way, lie) : straight(air, asked, way, lie);
  if ("why" in slot || isWithin(slot.taken, air.section)) return slot;
  return { why: "wide", limit: asked.spec.gap + asked.thickness };
}

function isWithin(taken: Profile, section: Profile): boolean {
  const out = difference({ outer: taken, holes: [] }, [{ outer: section, holes: [] }]);
  return out.every((region) => areaOfRegion(region) <= tolerance.overlapVolume);
}

/** The walls that a port runs along, as lines of the section, and whether that is the way the section runs. */
type Way = {
  readonly forward: boolean;
  readonly mouth: Line;
  readonly along: Line;
  readonly next: Line;
  readonly nextName: string;
};

function wayOf(section: Profile, spec: SlotPortSpec): Way | undefined {
  const n = section.length;
  const [f, w] = [spec.in, spec.beside].map((name) => section.findIndex(({ by }) => by === name)) as [number, number];
  const forward = w === (f + 1) % n;
  if (f < 0 || w < 0 || (!forward && f !== (w + 1) % n)) return undefined;
  const edge = (i: number) => edgeLine(section, (i + n) % n);
  const after = (forward ? w + 1 : w - 1 + n) % n;
  const way = { forward, mouth: edge(f), along: edge(w), next: edge(after), nextName: section[after]!.by };
  const corners = forward ? [way.mouth, way.along, way.next] : [way.next, way.along, way.mouth];
  const goesIn = (i: number) => turnOf(corners[i]!, corners[i + 1]!) <= 0;
  return goesIn(forward ? 0 : 1) || (spec.turns && goesIn(forward ? 1 : 0)) ? undefined : way;
}

const turnOf = (a: Line, b: Line) => a.along.x * b.along.y - a.along.y * b.along.x;

function straight(air: Inside, { role, spec, thickness, wall, step }: SlotAsked, way: Way, lie: Lie): Slot | NoSlot {
  const { gap } = spec;
  const [middle, own] = [inward(way.along, gap / 2), inward(way.along, gap)];
  const begins = meetsAt(middle, inward(way.mouth, -wall));
  const at = (distance: number) => squareTo(middle, begins + (way.forward ? distance : -distance));
  const asked = spanOf(own, thickness, way.mouth, at(spec.long), way);
  const long = spec.long + snap(asked, step) - asked;
  const room = ahead(air.section, middle, begins, way.forward) - long;
  if (room <= 0) return { why: "long", limit: long + room };
  const end = at(long);
  const sheet = panel({ line: own, thickness, from: way.mouth, to: end, way, names: [spec.in, freeEdge] }, air, lie);
  const back = inward(own, thickness);
  return {
    panels: [{ role, sheet, beside: spec.beside }],
    channel: between([way.along, end, own, way.mouth]),
    taken: between([way.along, end, back, way.mouth], ["", freeEdge, role, ""]),
    exit: between([way.along, at(long + gap), own, end]),
    mouth: mouthOf(way, own),
    room,
  };
}

function turned(air: Inside, { role, spec, thickness, wall, step }: SlotAsked, way: Way, lie: Lie): Slot | NoSlot {
  const { gap } = spec;
  const [middle, onward] = [inward(way.along, gap / 2), inward(way.next, gap / 2)];
  const corner = crossing(middle, onward);
  const before = Math.abs(alongTo(middle, corner) - meetsAt(middle, inward(way.mouth, -wall)));
  const turn = alongTo(onward, corner);
  const [own, other] = [inward(way.along, gap), inward(way.next, gap)];
  const stands = inward(own, thickness);
  const at = (distance: number) => squareTo(onward, turn + (way.forward ? distance : -distance));
  const asked = spanOf(other, thickness, stands, at(spec.long - before), way);
  const long = spec.long + snap(asked, step) - asked;
  const room = ahead(air.section, onward, turn, way.forward) - (long - before);
  if (room <= 0) return { why: "long", limit: long + room };
  const tight = gap + thickness + rules.leastInside.value;
  if (Math.abs(meetsAt(own, way.next) - meetsAt(own, way.mouth)) < tight) return { why: "tight", limit: tight };
  const turnRole = role.replace("port.", "port turn.");
  const end = at(long - before);
  const second = Math.abs(meetsAt(other, end) - meetsAt(other, stands));
  const backwards = meetsAt(other, end) > meetsAt(other, stands) !== way.forward;
  if (backwards || second < leastTurn) {
    return { why: "turn", limit: long + (backwards ? second : -second) + leastTurn };
  }
  const full = spanOf(own, thickness, way.mouth, other, way);
  const short = full - downToStep(full, step);
  const stop = short === 0 ? other : along(other, own, way.forward ? -short : short);
  const first = panel({ line: own, thickness, from: way.mouth, to: stop, way, names: [spec.in, freeEdge] }, air, lie);
  const next = panel({ line: other, thickness, from: stands, to: end, way, names: [role, freeEdge] }, air, lie);
  return {
    panels: [
      { role, sheet: first, beside: spec.beside },
      { role: turnRole, sheet: next, beside: way.nextName },
    ],
    channel: between([way.along, way.next, end, other, ...(short === 0 ? [] : [stands, stop]), own, way.mouth]),
    taken: between(
      [way.along, way.next, end, inward(other, thickness), stands, way.mouth],
      ["", "", freeEdge, turnRole, role, ""],
    ),
    exit: between([way.next, at(long - before + gap), other, end]),
    mouth: mouthOf(way, own),
    room,
  };
}

/** How long a panel is cut whose face runs along a line between two planes, the first nearer to the mouth. */
function spanOf(line: Line, thickness: number, from: Line, to: Line, { forward }: Way): number {
  const back = inward(line, thickness);
  const [a, b] = [from, to].map((plane) => [meetsAt(line, plane), alongTo(line, crossing(back, plane))]) as [
    number[],
    number[],
  ];
  return forward ? Math.max(...b) - Math.min(...a) : Math.max(...a) - Math.min(...b);
}

/** A plane moved along a line. */
const along = ({ at, along: way }: Line, line: Line, by: number): Line => {
  return { at: { x: at.x + line.along.x * by, y: at.y + line.along.y * by }, along: way };
};

type Panel = {
  readonly line: Line;
  readonly thickness: number;
  readonly from: Line;
  readonly to: Line;
  readonly way: Way;
  readonly names: readonly [string, string];
};

/** A port's panel between two planes, the first nearer to the mouth; its face looks into the port. */
function panel({ line, thickness, from, to, way, names }: Panel, air: Inside, lie: Lie): Sheet {
  const [low, high] = air.ends;
  const upright: Upright = way.forward
    ? { line, thickness, start: from, end: to, bounds: { before: names[0], after: names[1], low, high } }
    : { line, thickness, start: to, end: from, bounds: { before: names[1], after: names[0], low, high } };
  return uprightSheet(upright, air, lie);
}

const mouthOf = (way: Way, own: Line): Profile =>
  polygon([crossing(way.mouth, way.along), crossing(way.mouth, own)], "mouth");

/** What these lines close in, one after the other; each edge has its line's name. */
function between(lines: readonly Line[], names: readonly string[] = []): Profile {
  const n = lines.length;
  const corner = (line: Line, i: number) => ({
    ...crossing(lines[(i + n - 1) % n]!, line),
    bulge: 0,
    by: names[i] ?? "",
  });
  const loop = lines.map(corner);
  return areaOf(loop) < 0 ? againstTheClock(loop) : loop;
}

/** From a place on a line, inside the section or just before it, on to the wall where the line leaves it, mm. */
function ahead(section: Profile, line: Line, from: number, forward: boolean): number {
  const way = forward ? 1 : -1;
  const leaves = section.flatMap((corner, i) => {
    const next = section[(i + 1) % section.length]!;
    const [a, b] = [offLine(line, corner), offLine(line, next)];
    const outward = forward ? a <= 0 && b > 0 : a > 0 && b <= 0;
    return outward ? [(meetsAt(line, lineThrough(corner, next)) - from) * way] : [];
  });
  return Math.min(...leaves.filter((distance) => distance > 0), Number.POSITIVE_INFINITY);
}
