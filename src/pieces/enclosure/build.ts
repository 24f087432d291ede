import { compose } from "../../geometry/frame.js";
import { below, type Finding, type Outcome, raise, text } from "../../input/finding.js";
import { partId } from "../../model/ids.js";
import type { Axis } from "../../model/joint.js";
import type { Part } from "../../model/part.js";
import type { Air, Around, Built } from "../../model/piece.js";
import { blockJoints, blockParts } from "./backing/blockParts.js";
import { blockFindings } from "./backing/blockRoom.js";
import { type Block, blockSheets, blocksOf, threadsOf } from "./backing/blocks.js";
import { threadAxes, threadFindings } from "./backing/threads.js";
import { battensOf } from "./battens/battens.js";
import { battenFindings } from "./battens/check.js";
import { battenJoints, battenPart } from "./battens/parts.js";
import { buysOf } from "./buys.js";
import { clearPoint } from "./chambers/clearPoint.js";
import { airName, type Chamber } from "./chambers/divide.js";
import { innerBoards } from "./chambers/fitOut.js";
import { innerJoints, innerPart } from "./chambers/innerParts.js";
import { fitOutFindings } from "./chambers/unfit.js";
import { boxNotHeld } from "./findings.js";
import { jointScrewsOf, screwAxes } from "./joints/jointScrews.js";
import { jointsOf } from "./joints/joints.js";
import { roundOverFindings } from "./joints/roundOver.js";
import { screwChoicesOf } from "./joints/screwChoice.js";
import { screwedJoints } from "./joints/screwed.js";
import { mountOf, seatAxes } from "./mounting/drivers.js";
import { mountingFindings } from "./mounting/room.js";
import { seatsOf } from "./mounting/seats.js";
import { liningJoints, panelParts } from "./panelParts.js";
import { channelOf } from "./ports/channel.js";
import { dowelFindings } from "./ports/dowelRoom.js";
import { dowelsOf, tubeOfDowel } from "./ports/dowels.js";
import { portBlockJoints, portBlockParts } from "./ports/portBlockParts.js";
import { blocksRound, portBlocksOf } from "./ports/portBlocks.js";
import { tubeOfPort } from "./ports/roundBody.js";
import { dowelItem, portItems } from "./ports/roundBuys.js";
import { type RoundPort, roundPortsOf } from "./ports/roundPort.js";
import { roundPortFindings } from "./ports/roundRoom.js";
import { barsOf } from "./removable/check.js";
import {
  battenSheets,
  type ComesOff,
  comesOffAxes,
  comesOffBuys,
  comesOffFindings,
  comesOffJoints,
  comesOffOf,
  comesOffParts,
  gasketsOf,
  noWalls,
  outsideParts,
} from "./removable/comesOff.js";
import { allAsks } from "./removable/hatch/hatch.js";
import { cutOutsOf } from "./removable/inTheWay.js";
import type { EnclosureSpec } from "./schema.js";
import { settledShape } from "./settled.js";
import type { Shape } from "./shape.js";
import { spreadOfAir } from "./spread.js";
import { stepsOf } from "./steps.js";
import { volumeTerms, wantedL } from "./volume.js";

/** Everything the box is made of, at its settled size. */
export function buildBox(spec: EnclosureSpec, size: number, around: Around): Outcome<Built> {
  const shape = settledShape(spec, size, around);
  const seats = seatsOf(spec, shape, around);
  const threads = threadsOf(allAsks(spec, shape, around), shape, around.shop);
  const rounds = roundPortsOf(spec, shape, around);
  const portBlocks = portBlocksOf(rounds, spec, shape, around);
  const dowels = dowelsOf(spec, shape, around);
  const loose = comesOffOf(spec, shape, around);
  const battens = battensOf(spec, shape, around);
  const screwed = screwedJoints(around.id, spec, shape);
  const choices = screwChoicesOf(spec, screwed, around);
  const screws = jointScrewsOf(around.id, screwed, choices.choose);
  const screwFrom = [below(around.origin, spec.screws ? "screws" : "board")];
  const fitted = { seats, threads, screws, slots: shape.fitOut.slots, rounds, ...loose };
  const inner = innerBoards(shape.fitOut);
  const blocks = blocksOf(threads, around.board(spec.board).thickness, shape);
  const made = [
    ...shape.faces.flatMap((face) => panelParts(face, fitted, spec, shape, around)),
    ...inner.map((board) => innerPart(board, spec, shape, screws, around)),
    ...blockParts(blocks, spec, around),
    ...portBlockParts(portBlocks, spec, around),
    ...comesOffParts(loose, spec, around),
    ...battens.stand.map((batten) => battenPart(batten, spec, around)),
  ];
  const parts = made.flatMap((outcome) => outcome.value ?? []);
  const boxAxes = [
    ...screwAxes(around.id, screws, screwFrom),
    ...seats.flatMap((seat) => seatAxes(around.id, seat)),
    ...comesOffAxes(loose, parts, spec, around),
  ];
  return {
    value: {
      parts,
      joints: [
        ...jointsOf(around.id, shape, screws),
        ...liningJoints(shape, around),
        ...inner.flatMap((board) => innerJoints(board, shape, screws, around.id)),
        ...blockJoints(blocks, around.id),
        ...portBlockJoints(portBlocks, around.id),
        ...comesOffJoints(loose, shape, around),
        ...battenJoints(battens, around.id),
      ],
      axes: [
        ...boxAxes.map((axis) => inVehicle(axis, shape)),
        ...threadAxes(
          threads,
          parts.filter(({ id }) => !outsideParts(loose, around).includes(id)),
        ),
      ],
      mounts: seats.map((seat) => mountOf(around, seat, shape)),
      tubes: [
        ...rounds.map((port) => tubeOfPort(port, shape, around.id, blocksRound(port, portBlocks, around.id))),
        ...dowels.stand.map((dowel) => tubeOfDowel(dowel, shape, around.id)),
      ],
      channels: shape.fitOut.slots.map((slot) => channelOf(slot, shape, around.id)),
      air: shape.fitOut.chambers.map((chamber) => airOf(chamber, rounds, loose, spec, shape, around, parts, blocks)),
      steps: stepsOf(spec, shape, around, parts, screws.length, threads.length, loose),
      buys: [
        ...buysOf(spec, seats, screws, threads, [...rounds.flatMap(portItems), ...dowels.stand.map(dowelItem)]),
        ...comesOffBuys(loose, spec, around),
      ],
    },
    findings: [
      ...made.flatMap((outcome) => outcome.findings),
      ...choices.findings,
      ...fitOutFindings(spec, shape, around),
      ...mountingFindings(spec, shape, seats, around),
      ...comesOffFindings(loose, fitted, spec, shape, around),
      ...battenFindings(battens, cutOutsOf(fitted, spec, shape, around), around),
      ...roundPortFindings(spec, shape, rounds, seats, around),
      ...dowelFindings(dowels.unfit, spec, shape, around),
      ...threadFindings(threads, around),
      ...blockFindings(blocks, [...inner, ...loose.removables.flatMap(barsOf), ...battens.stand], shape, around),
      ...roundOverFindings(spec, shape, screws, around),
      ...heldFindings(spec, around),
    ],
  };
}

function inVehicle(axis: Axis, shape: Shape): Axis {
  return { ...axis, ray: compose(shape.stands, axis.ray) };
}

function airOf(
  chamber: Chamber,
  rounds: readonly RoundPort[],
  loose: ComesOff,
  spec: EnclosureSpec,
  shape: Shape,
  around: Around,
  parts: readonly Part[],
  blocks: readonly Block[],
): Air {
  const { fitOut } = shape;
  const wanted = wantedL(chamber, spec);
  const key = wanted === undefined ? ["outside"] : chamber.name === undefined ? ["net"] : ["chambers", chamber.name];
  const battens = battensOf(spec, shape, around).stand;
  const portBlocks = portBlocksOf(rounds, spec, shape, around);
  const standing = [
    ...innerBoards(fitOut).map(({ sheet }) => sheet),
    ...blocks.flatMap(blockSheets),
    ...battenSheets(loose),
    ...battens.map(({ sheet }) => sheet),
    ...portBlocks.map(({ sheet }) => sheet),
  ];
  const gaskets = gasketsOf(loose);
  const free = innerBoards({ ...fitOut, dividers: [] }).map(({ role }) => partId(around.id, role));
  const others = [
    ...free,
    ...noWalls(loose, around),
    ...[...battens, ...portBlocks].map(({ role }) => partId(around.id, role)),
  ];
  return {
    name: airName(chamber, around),
    ...(wanted === undefined ? {} : { wantedL: wanted }),
    terms: volumeTerms(chamber, spec, shape, around),
    spread: spreadOfAir(chamber, spec, shape, around),
    from: [below(around.origin, ...key)],
    inside: clearPoint(chamber.air, standing),
    walls: parts.map(({ id }) => id).filter((id) => !others.includes(id)),
    ...(gaskets.length > 0 ? { gaskets } : {}),
    ...([...fitOut.slots, ...rounds].some((port) => port.chamber === chamber) ? { ported: true } : {}),
  };
}

function heldFindings(spec: EnclosureSpec, around: Around): readonly Finding[] {
  if (spec["held by"]) return [];
  return [raise(boxNotHeld, { at: [around.origin], on: [around.id], facts: { piece: text(around.id) } })];
}
