import { difference } from "../../../geometry/boolean.js";
import { areaOfRegion, extentsOf } from "../../../geometry/measure.js";
import type { Profile } from "../../../geometry/profile.js";
import { tolerance } from "../../../geometry/tolerance.js";
import { below, type Finding, mm, type Origin, raise, text } from "../../../input/finding.js";
import { partId } from "../../../model/ids.js";
import type { Around } from "../../../model/piece.js";
import { rules } from "../../../shop/rules.js";
import type { Draft } from "../../common/part.js";
import { behind } from "../chambers/behind.js";
import {
  cutOutOffFace,
  cutOutWiderThanFace,
  driversTouch,
  recessNeedsFrame,
  recessTooDeepInPanel,
} from "../findings.js";
import { faceOf } from "../form/box.js";
import { type Face, offSheet, onSheet, type Sheet } from "../form/face.js";
import type { EnclosureSpec } from "../schema.js";
import { pointOn, type Shape } from "../shape.js";
import { seatDrafts } from "./drivers.js";
import { entriesOf, type Seat } from "./seats.js";
import { terminalDrafts, terminalsOf } from "./terminal.js";

/** What is wrong with where drivers and terminal sit. */
export function mountingFindings(
  spec: EnclosureSpec,
  shape: Shape,
  seats: readonly Seat[],
  around: Around,
): readonly Finding[] {
  return [
    ...seats.flatMap((seat) => {
      const air = behind(seat.face, seat.at, shape)?.air;
      return offAir("driver cut-out", seat.face, air, seatDrafts(around.id, seat)[0], seat.from, around);
    }),
    ...terminalOff(spec, shape, around),
    ...touching(seats, around),
    ...recesses(spec, seats, around),
  ];
}

function terminalOff(spec: EnclosureSpec, shape: Shape, around: Around): readonly Finding[] {
  return terminalsOf(spec).flatMap(({ name, spec: terminal, path }) => {
    const face = faceOf(shape, terminal.in);
    if (face === undefined) return [];
    const draft = terminalDrafts(spec, face, face.panel, around).find((each) => each.name === `opening.${name}`);
    const air = behind(face, pointOn(face, terminal.at), shape)?.air;
    return offAir("terminal cut-out", face, air, draft, below(around.origin, ...path), around);
  });
}

/** A cut-out that runs over a neighbouring panel instead of opening into the air. */
export function offAir(
  what: string,
  face: Face,
  air: Sheet | undefined,
  draft: Draft | undefined,
  from: Origin,
  around: Around,
): readonly Finding[] {
  if (air === undefined || draft?.cut.kind !== "opening") return [];
  const onAir = draft.cut.region.outer.map((corner) => {
    return { ...corner, ...onSheet(face, air, offSheet(face, face.panel, corner)) };
  });
  const out = beyond(onAir, air.outline);
  if (out <= tolerance.samePoint) return [];
  const where = { at: [from], on: [partId(around.id, face.name)] };
  const about = { what: text(what), face: text(face.name) };
  const wide = widerThan(onAir, air.outline);
  if (wide === undefined) return [raise(cutOutOffFace, { ...where, facts: { ...about, out: mm(out) } })];
  const facts = { ...about, across: mm(wide.across), room: mm(wide.room), more: mm(wide.across - wide.room) };
  return [raise(cutOutWiderThanFace, { ...where, facts })];
}

/** How wide a loop is and an outline, along the axis on which it is too wide for any place in it; none where it is not. */
function widerThan(loop: Profile, outline: Profile): { across: number; room: number } | undefined {
  const [own, free] = [extentsOf(loop), extentsOf(outline)];
  return (["x", "y"] as const)
    .map((axis) => ({ across: own.max[axis] - own.min[axis], room: free.max[axis] - free.min[axis] }))
    .filter(({ across, room }) => across > room + tolerance.samePoint)
    .sort((a, b) => b.across - b.room - (a.across - a.room))[0];
}

/** How far a loop runs out over an outline, mm: 0 where it stays inside. */
export function beyond(loop: Profile, outline: Profile): number {
  const n = outline.length;
  const out = difference({ outer: loop, holes: [] }, [{ outer: outline, holes: [] }]);
  if (out.every((region) => areaOfRegion(region) < tolerance.samePoint)) return 0;
  // to the far side of each piece that is out, square to the edge that it crosses
  return Math.max(
    ...outline.map((a, i) => {
      const b = outline[(i + 1) % n]!;
      const length = Math.hypot(b.x - a.x, b.y - a.y);
      const turned = out.flatMap(({ outer }) => {
        const seen = outer.map((p) => ({
          ...p,
          x: ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / length,
          y: ((p.y - a.y) * (b.x - a.x) - (p.x - a.x) * (b.y - a.y)) / length,
        }));
        const { min, max } = extentsOf(seen);
        return max.x < 0 || min.x > length ? [] : [-min.y];
      });
      return Math.max(0, ...turned);
    }),
  );
}

/** Two drivers of one face whose frames, or whose cut-outs and the board between them, need the same place. */
function touching(seats: readonly Seat[], around: Around): readonly Finding[] {
  return seats.flatMap((one, i) =>
    seats.slice(i + 1).flatMap((other): readonly Finding[] => {
      if (one.face !== other.face) return [];
      const apart = Math.hypot(one.at.x - other.at.x, one.at.y - other.at.y);
      const frames = (acrossOf(one) + acrossOf(other)) / 2;
      const least = Math.max(frames, (one.cutOut + other.cutOut) / 2 + rules.web.value);
      if (apart >= least - tolerance.samePoint) return [];
      const facts = {
        face: text(one.face.name),
        apart: mm(apart),
        least: mm(least),
        more: mm(least - apart),
        driver: text(calledIn(one)),
        other: text(calledIn(other)),
      };
      return [raise(driversTouch, { at: [one.from, other.from], on: [partId(around.id, one.face.name)], facts })];
    }),
  );
}

/** "driver 1 (ten)" */
const calledIn = ({ name, is }: Seat) => `${name.replaceAll(".", " ")} (${is})`;

const acrossOf = ({ recess, driver, cutOut }: Seat) => recess?.across ?? driver.frame ?? cutOut;

function recesses(spec: EnclosureSpec, seats: readonly Seat[], around: Around): readonly Finding[] {
  return entriesOf(spec).flatMap(({ name, spec: wanted, path }): readonly Finding[] => {
    const seat = seats.find((each) => each.name === name);
    if (seat === undefined || wanted.recess === undefined) return [];
    const at = [below(around.origin, ...path, "recess")];
    const on = [partId(around.id, seat.face.name)];
    if (seat.recess === undefined) {
      const missing = seat.driver.frame === undefined ? "frame" : "flange";
      return [raise(recessNeedsFrame, { at, on, facts: { driver: text(wanted.is), missing: text(missing) } })];
    }
    const most = seat.face.panel.thickness - rules.tipFloor.value;
    if (seat.recess.deep <= most) return [];
    const facts = { face: text(seat.face.name), deep: mm(seat.recess.deep), most: mm(Math.max(0, most)) };
    return [raise(recessTooDeepInPanel, { at, on, facts })];
  });
}
