import { compose, cross, type Frame, frameFromAxes, shifted, type Vector } from "../../../geometry/frame.js";
import { areaOf } from "../../../geometry/measure.js";
import { circle, rectangle } from "../../../geometry/shapes.js";
import { below, type Origin } from "../../../input/finding.js";
import { type PartId, type PieceId, partId } from "../../../model/ids.js";
import type { Around } from "../../../model/piece.js";
import { upToStep } from "../../common/method.js";
import type { Sheet } from "../form/face.js";
import { thickOf } from "../form/face.js";
import type { EnclosureSpec } from "../schema.js";
import { frameOn, type Shape } from "../shape.js";
import { acrossAt, middleOf, ways } from "./roundBody.js";
import type { RoundPortSpec } from "./roundKeys.js";
import type { RoundPort } from "./roundPort.js";

export const portEnds = ["outer", "inner"] as const;
export type PortEnd = (typeof portEnds)[number];

type BlockSpec = NonNullable<NonNullable<RoundPortSpec["blocks"]>[PortEnd]>;

/** A block of board round a port's tube: glued behind the wall it goes through, or flush with the end of the tube. */
export type PortBlock = {
  readonly role: string;
  readonly from: Origin;
  readonly port: RoundPort;
  readonly end: PortEnd;
  readonly board: ReturnType<Around["board"]>;
  /** Its side or its diameter, and the diameter of the hole in its middle, mm. */
  readonly across: number;
  readonly hole: number;
  /** The outer one's face lies on the back of its wall; the inner one's looks out of the end of the tube. */
  readonly sheet: Sheet;
};

/** The blocks of these ports, port after port, the outer one first. */
export function portBlocksOf(
  ports: readonly RoundPort[],
  spec: EnclosureSpec,
  { step }: Pick<Shape, "step">,
  around: Around,
): readonly PortBlock[] {
  const wanted = ports.flatMap((port) =>
    portEnds.flatMap((end) => {
      const block = port.spec.blocks?.[end];
      return block === undefined ? [] : [{ port, end, block }];
    }),
  );
  return wanted.map(({ port, end, block }, i): PortBlock => {
    const board = around.board(block.board ?? spec.board);
    const [first, last] =
      end === "outer" ? [port.wall, port.wall + board.thickness] : [port.long - board.thickness, port.long];
    const widest = Math.max(acrossAt(port, first), acrossAt(port, last), end === "outer" ? port.hole : 0);
    return {
      role: `port block.${i + 1}`,
      from: below(port.from, "blocks", end),
      port,
      end,
      board,
      across: block.across,
      hole: upToStep(widest, step),
      sheet: sheetOf(port, end, block, board.thickness),
    };
  });
}

function sheetOf(port: RoundPort, end: PortEnd, spec: BlockSpec, thickness: number): Sheet {
  const { across, round } = spec;
  const half = across / 2;
  const outline = round ? circle({ x: half, y: half }, half, "outline") : rectangle(0, 0, across, across, "outline");
  const middle = end === "outer" ? behindWall(port) : atEnd(port);
  return { frame: compose(middle, shifted(-half, -half, 0)), outline, bevels: {}, thickness };
}

/** On the back of the wall, seen as the wall is. */
const behindWall = ({ face, at }: RoundPort): Frame => frameOn(face, at, -thickOf(face));

/** At the end of the tube, seen from inside the box: its sides run with those of the face, or with the elbow. */
function atEnd(port: RoundPort): Frame {
  const { at, along } = middleOf(port, port.long);
  const [x, y] = port.elbow ? ways[port.elbow.to] : [0, 1];
  const side: Vector = [Math.abs(y), Math.abs(x), 0];
  return compose(frameOn(port.face, port.at), frameFromAxes(at, side, cross(along, side)));
}

/** What a block takes of the air beside its tube, L. */
export function portBlockL({ sheet, hole }: PortBlock): number {
  return ((areaOf(sheet.outline) - (Math.PI * hole ** 2) / 4) * sheet.thickness) / 1e6;
}

/** The blocks round a port, as parts. */
export const blocksRound = (port: RoundPort, blocks: readonly PortBlock[], piece: PieceId): readonly PartId[] =>
  blocks.filter((block) => block.port === port).map(({ role }) => partId(piece, role));
