import { nearestOn } from "../../../geometry/distance.js";
import { pointInProfile } from "../../../geometry/inside.js";
import type { Point, Profile } from "../../../geometry/profile.js";
import { circle } from "../../../geometry/shapes.js";
import { tolerance } from "../../../geometry/tolerance.js";
import { below, type Finding, mm, raise, text } from "../../../input/finding.js";
import { partId } from "../../../model/ids.js";
import type { Around } from "../../../model/piece.js";
import { rules } from "../../../shop/rules.js";
import type { FittedSlot } from "../chambers/fitOut.js";
import { recessTooDeepInPanel } from "../findings.js";
import { faceOf } from "../form/box.js";
import { onSheet, thickOf } from "../form/face.js";
import { offAir } from "../mounting/room.js";
import type { Seat } from "../mounting/seats.js";
import { terminalDrafts } from "../mounting/terminal.js";
import type { EnclosureSpec } from "../schema.js";
import type { Shape } from "../shape.js";
import { mouthDraft, mouthOn } from "./mouth.js";
import { portBlockFindings } from "./portBlockRoom.js";
import { portBlocksOf } from "./portBlocks.js";
import * as say from "./roundFindings.js";
import { holeDraft } from "./roundHole.js";
import { blockedBy, portName, type RoundPort, roundRole } from "./roundPort.js";
import { outsideOf, sizeFaults } from "./roundSizes.js";

/** What is wrong with round ports, their sizes and where their holes are. */
export function roundPortFindings(
  spec: EnclosureSpec,
  shape: Shape,
  ports: readonly RoundPort[],
  seats: readonly Seat[],
  around: Around,
): readonly Finding[] {
  return [
    ...(spec["round ports"] ?? []).flatMap((_, index) => sizeFindings(index, spec, shape, around)),
    ...ports.flatMap((port) =>
      offAir(`hole of ${portName(port)}`, port.face, port.air, holeDraft(port, port.face.panel), port.from, around),
    ),
    ...ports.flatMap((port) => recessFindings(port, around)),
    ...portBlockFindings(portBlocksOf(ports, spec, shape, around), around),
    ...ports.flatMap((port, i) => {
      const others = [
        ...neighbours(port, spec, shape, seats, around),
        ...ports.slice(i + 1).flatMap(asNeighbour(port)),
      ];
      return others.flatMap((other) => touching(port, other, around));
    }),
  ];
}

function sizeFindings(index: number, spec: EnclosureSpec, shape: Shape, around: Around): readonly Finding[] {
  const { origin, id } = around;
  const wanted = spec["round ports"]![index]!;
  const port = text(portName({ role: roundRole(spec, index) }));
  const outside = outsideOf(wanted);
  const path = ["round ports", index] as const;
  if (outside === undefined) {
    const given = (["outside", "inside", "wall"] as const).filter((key) => wanted[key] !== undefined);
    const why = ["no diameter is given", `${given[0]} alone does not tell`][given.length];
    const facts = { port, given: text(why ?? "`outside` is not `inside` and twice `wall`") };
    return [raise(say.portTubeSize, { at: [below(origin, ...path)], on: [id], facts })];
  }
  const face = faceOf(shape, wanted.in);
  if (face === undefined) return [];
  return sizeFaults(wanted, outside, thickOf(face), blockedBy(wanted, spec, around)).map(
    ({ what, key, size, least }) => {
      const facts = { what: text(what), port, size: mm(size), least: mm(least) };
      return raise(say.portSizes, { at: [below(origin, ...path, ...key)], on: [id], facts });
    },
  );
}

function recessFindings({ face, recess, from }: RoundPort, { id }: Around): readonly Finding[] {
  const most = face.panel.thickness - rules.tipFloor.value;
  if (recess === undefined || recess.deep <= most) return [];
  const facts = { face: text(face.name), deep: mm(recess.deep), most: mm(Math.max(0, most)) };
  return [raise(recessTooDeepInPanel, { at: [below(from, "flange", "thick")], on: [partId(id, face.name)], facts })];
}

/** Something else that is cut out of the face, in its panel's axes. */
type Neighbour = { readonly name: string; readonly outline: Profile };

function neighbours(
  { face }: RoundPort,
  spec: EnclosureSpec,
  { fitOut }: Shape,
  seats: readonly Seat[],
  around: Around,
): readonly Neighbour[] {
  const onFace = (at: Point) => onSheet(face, face.panel, at);
  const drivers = seats
    .filter((seat) => seat.face === face)
    .map(({ is, at, recess, driver, cutOut }) => {
      const across = Math.max(recess?.across ?? 0, driver.frame ?? 0, cutOut);
      return { name: `driver ${is}`, outline: circle(onFace(at), across / 2, is) };
    });
  return [
    ...drivers,
    ...terminalDrafts(spec, face, face.panel, around).flatMap(({ cut }) => outlineOf("the terminal", cut)),
    ...fitOut.slots.filter((slot) => slot.face === face).flatMap(mouthAsNeighbour),
  ];
}

function mouthAsNeighbour({ role, face, mouth, chamber, boards }: FittedSlot): readonly Neighbour[] {
  const { cut } = mouthDraft(role, face, face.panel, mouthOn(face, mouth, chamber.air), boards[0]!.from);
  return outlineOf(portName({ role }), cut);
}

function outlineOf(name: string, cut: ReturnType<typeof holeDraft>["cut"]): readonly Neighbour[] {
  return cut.kind === "opening" ? [{ name, outline: cut.region.outer }] : [];
}

const asNeighbour =
  (port: RoundPort) =>
  (other: RoundPort): readonly Neighbour[] =>
    other.face === port.face
      ? [{ name: portName(other), outline: circle(onSheet(port.face, port.face.panel, other.at), reachOf(other), "") }]
      : [];

/** From the middle of a port to the edge of its hole, or of its flange, mm. */
const reachOf = ({ hole, recess }: RoundPort) => Math.max(hole, recess?.across ?? 0) / 2;

function touching(port: RoundPort, { name, outline }: Neighbour, { id }: Around): readonly Finding[] {
  const { face } = port;
  const middle = onSheet(face, face.panel, port.at);
  const off = (nearestOn(outline, middle)?.distance ?? 0) * (pointInProfile(outline, middle) ? -1 : 1);
  const [apart, least] = [off - reachOf(port), rules.web.value];
  if (apart >= least - tolerance.samePoint) return [];
  const facts = {
    port: text(portName(port)),
    other: text(name),
    face: text(face.name),
    apart: mm(Math.max(0, apart)),
    least: mm(least),
    missing: mm(least - apart),
  };
  return [raise(say.cutOutsTouch, { at: [port.from], on: [partId(id, face.name)], facts })];
}
