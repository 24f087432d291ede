import fc from "fast-check";
import type { BoxSpec } from "./boxes.js";
import { boxes } from "./boxes.js";
import { endsOf, namedWalls } from "./boxFaces.js";

const whole = (min: number, max: number) => fc.integer({ min, max });

const flare = fc.option(fc.record({ widens: whole(4, 30), long: whole(5, 40) }), { freq: 2 });

const block = fc.option(fc.record({ wider: whole(6, 40), round: fc.boolean() }), { freq: 2 });

const tube = fc.record({
  face: whole(0, 20),
  outside: whole(30, 60),
  wall: fc.option(whole(2, 5), { freq: 2 }),
  rest: whole(10, 90),
  outer: flare,
  inner: flare,
  elbow: fc.option(
    fc.record({
      after: whole(30, 60),
      bends: whole(50, 90),
      turns: whole(20, 100),
      to: fc.constantFrom("up", "down", "left", "right"),
    }),
    { freq: 2 },
  ),
  blocks: fc.record({ outer: block, inner: block }),
});

const bar = fc.record({
  across: fc.constantFrom("width", "depth", "height"),
  at: fc.tuple(whole(80, 160), whole(80, 160)),
  thick: whole(8, 30),
});

type Tube = typeof tube extends fc.Arbitrary<infer T> ? T : never;

/** Wider by so much than what stands in it. */
function blockOf(wanted: Tube["blocks"]["outer"], holed: number) {
  return wanted && { across: holed + wanted.wider, ...(wanted.round ? { round: true } : {}) };
}

function portOf({ outside, wall, rest, outer, inner, elbow, blocks }: Tube, face: string) {
  const widened = (end: Tube["outer"]) => end && { mouth: outside + end.widens, long: end.long };
  const [first, last] = [widened(outer), widened(inner)];
  const [behind, atEnd] = [
    blockOf(blocks.outer, first?.mouth ?? outside),
    blockOf(blocks.inner, last?.mouth ?? outside),
  ];
  const bend = elbow ? elbow.after + (((outside * elbow.bends) / 100) * elbow.turns * Math.PI) / 180 : 40;
  const long = Math.ceil(bend) + (last?.long ?? 0) + rest;
  return {
    in: face,
    ...(wall === null ? { outside } : { inside: outside - 2 * wall, wall }),
    long,
    ...(first || last ? { flares: { ...(first ? { outer: first } : {}), ...(last ? { inner: last } : {}) } } : {}),
    ...(behind || atEnd
      ? { blocks: { ...(behind ? { outer: behind } : {}), ...(atEnd ? { inner: atEnd } : {}) } }
      : {}),
    ...(elbow
      ? {
          elbow: {
            after: elbow.after,
            radius: (outside * elbow.bends) / 100,
            turns: `${elbow.turns}deg`,
            to: elbow.to,
          },
        }
      : {}),
  };
}

/** Boxes of all forms with a port of tube in the middle of a face, and perhaps a dowel. What does not fit is refused. */
export const portedBoxes: fc.Arbitrary<BoxSpec> = fc
  .tuple(boxes, tube, fc.option(bar, { freq: 2 }))
  .map(([drawn, port, dowel]): BoxSpec => {
    const { box, walls } = namedWalls(drawn);
    const faces = [...walls, ...endsOf(box)];
    return {
      ...box,
      "round ports": [portOf(port, faces[port.face % faces.length]!)],
      ...(dowel ? { dowels: [dowel] } : {}),
    };
  });
