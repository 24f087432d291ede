import { compose, shifted } from "../../../geometry/frame.js";
import type { PieceId } from "../../../model/ids.js";
import type { Channel } from "../../../model/piece.js";
import type { FittedSlot } from "../chambers/fitOut.js";
import type { Shape } from "../shape.js";

/** The air in a slot port, which reaches through all of its chamber; vehicle frame. */
export function channelOf({ role, boards, chamber, channel }: FittedSlot, { stands }: Shape, piece: PieceId): Channel {
  const { frame, from, to } = chamber.air;
  return {
    name: role.replace(".", " "),
    piece,
    from: boards.slice(0, 1).map((board) => board.from),
    at: compose(stands, compose(frame, shifted(0, 0, to))),
    region: { outer: channel, holes: [] },
    thickness: to - from,
  };
}
