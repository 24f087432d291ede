import { flareAcross } from "../../../acoustics/flare.js";
import { compose, dot, type Frame, frameAlong, place, turn, type Vector } from "../../../geometry/frame.js";
import type { PartId, PieceId } from "../../../model/ids.js";
import type { Tube } from "../../../model/piece.js";
import { frameOn, type Shape } from "../shape.js";
import { portName, type RoundPort, straightsOf } from "./roundPort.js";

/** Where the middle of a port lies after so much of its length, and which way it runs: in the frame of its place, z out. */
type Middle = { readonly at: Vector; readonly along: Vector };

export const ways = { up: [0, 1], down: [0, -1], left: [-1, 0], right: [1, 0] } as const;

export function middleOf({ elbow }: RoundPort, s: number): Middle {
  if (elbow === undefined || s <= elbow.after) return { at: [0, 0, -s], along: [0, 0, -1] };
  const { after, radius, turn: angle } = elbow;
  const turned = Math.min(angle, (s - after) / radius);
  const [x, y] = ways[elbow.to];
  const [sin, cos] = [Math.sin(turned), Math.cos(turned)];
  const on = s - after - turned * radius;
  const side = radius * (1 - cos) + on * sin;
  return { at: [x * side, y * side, -after - radius * sin - on * cos], along: [x * sin, y * sin, -cos] };
}

/** How wide a port is after so much of its length, mm. */
export function acrossAt({ outside, long, flares: { outer, inner } }: RoundPort, s: number): number {
  if (outer && s < outer.length) return flareAcross(outside, outer.mouth, 1 - s / outer.length);
  if (inner && s > long - inner.length) return flareAcross(outside, inner.mouth, 1 - (long - s) / inner.length);
  return outside;
}

/** An elbow is taken for straight pieces that turn this much, rad: of a radius of 200 they stand off by 0.2 mm. */
const pieceTurn = Math.PI / 36;
/** A flare is taken for so many cones. */
const cones = 12;

/** Where a port changes its width or its way, from the inside of its wall to its end, mm of its length. */
function stations({ wall, long, flares: { outer, inner }, elbow }: RoundPort): readonly number[] {
  // finer towards the mouth, where it widens fastest
  const shares = Array.from({ length: cones + 1 }, (_, i) => 1 - Math.sin((i * Math.PI) / 2 / cones));
  const pieces = Math.ceil((elbow?.turn ?? 0) / pieceTurn);
  const bend = Array.from({ length: pieces + 1 }, (_, i) =>
    elbow === undefined ? wall : elbow.after + (i / Math.max(1, pieces)) * elbow.turn * elbow.radius,
  );
  const all = [
    wall,
    ...(outer ? shares.map((share) => share * outer.length) : []),
    ...bend,
    ...(inner ? shares.map((share) => long - share * inner.length) : []),
    long,
  ];
  const sorted = all.filter((s) => s >= wall && s <= long).sort((a, b) => a - b);
  return sorted.filter((s, i) => i === 0 || s - sorted[i - 1]! > shortest);
}

/** Stretches shorter than this are none, mm. */
const shortest = 1e-6;

/** A port as the room that it takes behind its wall, vehicle frame. `through`: the blocks round it. */
export function tubeOfPort(
  port: RoundPort,
  { stands }: Pick<Shape, "stands">,
  piece: PieceId,
  through: readonly PartId[],
): Tube {
  const frame = compose(stands, frameOn(port.face, port.at));
  const run = straightsOf(port).at(-1) ?? 0;
  const at = seenOut(frame, middleOf(port, port.long));
  return {
    name: portName(port),
    piece,
    from: [port.from],
    stretches: stretchesOf(port).map((stretch) => ({ ...stretch, at: seenOut(frame, stretch.at) })),
    through,
    end: { at, d: port.outside, run, long: port.long },
  };
}

/** Straight pieces from station to station. Where they turn each is carried on until the outsides of the two meet. */
function stretchesOf(port: RoundPort) {
  const places = stations(port).map((s) => ({ d: acrossAt(port, s), at: middleOf(port, s).at }));
  const pieces = places.slice(1).map((to, i) => {
    const from = places[i]!;
    const way: Vector = [to.at[0] - from.at[0], to.at[1] - from.at[1], to.at[2] - from.at[2]];
    const length = Math.hypot(...way);
    const along: Vector = [way[0] / length, way[1] / length, way[2] / length];
    return { from, to, length, along };
  });
  const longer = (i: number): number => {
    const [one, two] = [pieces[i - 1], pieces[i]];
    const turned = one && two ? Math.acos(Math.min(1, dot(one.along, two.along))) : 0;
    return turned < 1e-6 ? 0 : (places[i]!.d / 2) * Math.tan(turned / 2);
  };
  return pieces.map(({ from, to, length, along }, i) => {
    const before = longer(i);
    const [x, y, z] = from.at;
    const at: Vector = [x - along[0] * before, y - along[1] * before, z - along[2] * before];
    return { at: { at, along }, length: length + before + longer(i + 1), d: from.d, dTo: to.d };
  });
}

function seenOut(frame: Frame, { at, along }: Middle): Frame {
  return frameAlong(place(frame, at), turn(frame.quat, along));
}
