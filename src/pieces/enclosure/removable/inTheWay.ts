import { intersection } from "../../../geometry/boolean.js";
import { inverse, place } from "../../../geometry/frame.js";
import { areaOfRegion } from "../../../geometry/measure.js";
import type { Point, Region } from "../../../geometry/profile.js";
import { polygon } from "../../../geometry/shapes.js";
import { samePoint, tolerance } from "../../../geometry/tolerance.js";
import { type Finding, type Origin, raise, text } from "../../../input/finding.js";
import { partId } from "../../../model/ids.js";
import type { Around } from "../../../model/piece.js";
import type { Draft } from "../../common/part.js";
import { depthOf, type Face, onSheet, type Sheet } from "../form/face.js";
import { seatDrafts } from "../mounting/drivers.js";
import type { Seat } from "../mounting/seats.js";
import { terminalDrafts } from "../mounting/terminal.js";
import { holeDraft } from "../ports/roundHole.js";
import type { RoundPort } from "../ports/roundPort.js";
import type { EnclosureSpec } from "../schema.js";
import type { Shape } from "../shape.js";
import { cornersOf } from "./corners.js";
import { boardInWay } from "./findings.js";
import type { Hatch } from "./hatch/hatch.js";

/** A bar that is glued inside the box. */
export type Bar = { readonly role: string; readonly sheet: Sheet; readonly from: Origin };

/** What has holes in a box's faces, besides its terminals. */
export type Holed = {
  readonly seats: readonly Seat[];
  readonly rounds: readonly RoundPort[];
  readonly hatch: Hatch | undefined;
};

/** A hole in a face, in the axes of its panel. */
export type CutOut = { readonly what: string; readonly face: Face; readonly region: Region; readonly from: Origin };

/** A finding for every cut-out behind which a bar lies. */
export function inTheWay(bars: readonly Bar[], cutOuts: readonly CutOut[], around: Around): readonly Finding[] {
  return cutOuts.flatMap(({ what, face, region, from }) =>
    bars.flatMap((bar): readonly Finding[] => {
      const lies = footprint(bar, face);
      if (lies === undefined) return [];
      const shared = intersection(region, lies).reduce((sum, each) => sum + areaOfRegion(each), 0);
      if (shared <= tolerance.overlapVolume) return [];
      const facts = { what: text(what), face: text(face.name), board: text(bar.role.replaceAll(".", " ")) };
      return [raise(boardInWay, { at: [from, bar.from], on: [partId(around.id, face.name)], facts })];
    }),
  );
}

/** Every hole that something is put into from outside, and the hatch. */
export function cutOutsOf(
  { seats, rounds, hatch }: Holed,
  spec: EnclosureSpec,
  { faces }: Shape,
  around: Around,
): readonly CutOut[] {
  const opening = (what: string, face: Face, drafts: readonly Draft[]): readonly CutOut[] =>
    drafts.flatMap(({ cut, from: [from = around.origin] }) =>
      cut.kind === "opening" ? [{ what: `${what} cut-out`, face, region: cut.region, from }] : [],
    );
  return [
    ...seats.flatMap((seat) => opening("driver", seat.face, seatDrafts(around.id, seat))),
    ...rounds.flatMap((port) => opening("port", port.face, [holeDraft(port, port.face.panel)])),
    ...(hatch ? [hatchCutOut(hatch)] : []),
    ...faces.flatMap((face) => opening("terminal", face, terminalDrafts(spec, face, face.panel, around))),
  ];
}

export function hatchCutOut({ face, opening, from }: Hatch): CutOut {
  const outer = opening.map((corner) => ({ ...corner, ...onSheet(face, face.panel, corner) }));
  return { what: "hatch opening", face, region: { outer, holes: [] }, from };
}

/** Where a bar lies against the inside of a face, in its panel's axes; none where it does not. */
function footprint({ sheet }: Bar, face: Face): Region | undefined {
  const seen = inverse(face.frame);
  // the frame of a face that is set in lies on its panel
  const inside = face.skin.setIn - depthOf(face.skin);
  const corners = cornersOf(sheet).map((corner) => place(seen, corner));
  const touching = corners.filter(([, , z]) => Math.abs(z - inside) < touches);
  if (touching.length < 3) return undefined;
  const points = touching.map(([x, y]) => onSheet(face, face.panel, { x, y }));
  return { outer: polygon(roundTheMiddle(points), "batten"), holes: [] };
}

/** mm: a bar this near to a face is glued to it. */
const touches = 0.2;

/** Corners of something that bows out, each once, in the order in which they lie round it. */
function roundTheMiddle(corners: readonly Point[]): readonly Point[] {
  const points = corners.filter((point, i) => !corners.slice(0, i).some((other) => samePoint(point, other)));
  const sum = points.reduce((so, { x, y }) => ({ x: so.x + x, y: so.y + y }), { x: 0, y: 0 });
  const [x, y] = [sum.x / points.length, sum.y / points.length];
  return points.toSorted((a, b) => Math.atan2(a.y - y, a.x - x) - Math.atan2(b.y - y, b.x - x));
}
