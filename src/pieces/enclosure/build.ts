import { compose, place } from "../../geometry/frame.js";
import { pointInProfile } from "../../geometry/inside.js";
import { centroidOf } from "../../geometry/measure.js";
import { below, type Finding, type Outcome, raise, text } from "../../input/finding.js";
import type { Axis } from "../../model/joint.js";
import type { Part } from "../../model/part.js";
import type { Air, Around, Built } from "../../model/piece.js";
import { blockJoints, blockParts } from "./backing/blockParts.js";
import { blocksOf, threadsOf } from "./backing/blocks.js";
import { threadAxes, threadFindings } from "./backing/threads.js";
import { buysOf } from "./buys.js";
import { boxNotHeld } from "./findings.js";
import { jointScrewsOf, screwAxes } from "./joints/jointScrews.js";
import { jointsOf } from "./joints/joints.js";
import { roundOverFindings } from "./joints/roundOver.js";
import { screwChoicesOf } from "./joints/screwChoice.js";
import { mountOf, seatAxes } from "./mounting/drivers.js";
import { mountingFindings } from "./mounting/room.js";
import { seatsOf } from "./mounting/seats.js";
import { liningJoints, panelParts } from "./panelParts.js";
import type { EnclosureSpec } from "./schema.js";
import { type Shape, shapeOf } from "./shape.js";
import { stepsOf } from "./steps.js";
import { volumeTerms } from "./volume.js";

/** Everything the box is made of, at its settled size. */
export function buildBox(spec: EnclosureSpec, size: number, around: Around): Outcome<Built> {
  const shape = shapeOf(spec, size, around);
  const seats = seatsOf(spec, shape, around);
  const threads = threadsOf(around.asks, shape, around.shop);
  const choices = screwChoicesOf(spec, shape, around);
  const screws = jointScrewsOf(around.id, shape, choices.choose);
  const screwFrom = [below(around.origin, spec.screws ? "screws" : "board")];
  const fitted = { seats, threads, screws };
  const blocks = blocksOf(threads, around.board(spec.board).thickness, shape);
  const made = [
    ...shape.faces.flatMap((face) => panelParts(face, fitted, spec, shape, around)),
    ...blockParts(blocks, spec, around),
  ];
  const parts = made.flatMap((outcome) => outcome.value ?? []);
  const boxAxes = [...screwAxes(around.id, screws, screwFrom), ...seats.flatMap((seat) => seatAxes(around.id, seat))];
  return {
    value: {
      parts,
      joints: [
        ...jointsOf(around.id, shape, screws),
        ...liningJoints(shape, around),
        ...blockJoints(blocks, around.id),
      ],
      axes: [...boxAxes.map((axis) => inVehicle(axis, shape)), ...threadAxes(threads, parts)],
      mounts: seats.map((seat) => mountOf(around.id, seat, shape)),
      air: [airOf(spec, shape, around, parts)],
      steps: stepsOf(spec, shape, around, parts, screws.length, threads.length),
      buys: buysOf(spec, seats, screws, threads),
    },
    findings: [
      ...made.flatMap((outcome) => outcome.findings),
      ...choices.findings,
      ...mountingFindings(spec, shape, seats, around),
      ...threadFindings(threads, around),
      ...roundOverFindings(spec, shape, screws, around),
      ...heldFindings(spec, around),
    ],
  };
}

function inVehicle(axis: Axis, shape: Shape): Axis {
  return { ...axis, ray: compose(shape.stands, axis.ray) };
}

function airOf(spec: EnclosureSpec, shape: Shape, around: Around, parts: readonly Part[]): Air {
  return {
    name: around.id,
    ...(spec.net === undefined ? {} : { wantedL: spec.net }),
    terms: volumeTerms(spec, shape, around),
    from: [below(around.origin, spec.net === undefined ? "outside" : "net")],
    inside: pointInside(shape),
    walls: parts.map((part) => part.id),
  };
}

/** A place in the air: over the centre of the section, or over the middle of one of its diagonals where that lies outside. */
function pointInside({ inside: { section, from, to, frame } }: Shape): Air["inside"] {
  const n = section.length;
  const middles = section.map((_, i) => centroidOf([section[(i + n - 1) % n]!, section[i]!, section[(i + 1) % n]!]));
  const { x, y } = [centroidOf(section), ...middles].find((p) => pointInProfile(section, p)) ?? centroidOf(section);
  return place(frame, [x, y, (from + to) / 2]);
}

function heldFindings(spec: EnclosureSpec, around: Around): readonly Finding[] {
  if (spec["held by"]) return [];
  return [raise(boxNotHeld, { at: [around.origin], on: [around.id], facts: { piece: text(around.id) } })];
}
