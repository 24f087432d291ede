import { all, type Finding, type FindingDef, raise, text } from "../input/finding.js";
import type { BoardId } from "../model/ids.js";
import type { Job } from "../model/job.js";
import type { Part } from "../model/part.js";
import { nameOf } from "../plan/standing.js";

export const boardWithoutSheets: FindingDef = {
  code: "board-without-sheets",
  severity: "error",
  words: "no sheet and no offcut of board {board} ({stock}) is in the shop file, for {parts}",
  next: "give {stock} a sheet size in the shop file, or choose another stock for the board",
  explain:
    "A part is nested on the sheets and offcuts of its own board only: one material, one batch, one measured thickness. " +
    "Parts of a board that has none are left out; everything else is laid.",
};

export const stockUsedUp: FindingDef = {
  code: "stock-used-up",
  severity: "error",
  words:
    "nothing in the rack has a place left for {parts}, and the shop file names no sheet of {stock} to buy that has",
  next: "give {stock} a sheet size that can be bought and takes them, or add an offcut",
  explain:
    "Offcuts and sheets on hand are used up, or are too small for what is left over. The shop file gives this stock no " +
    "sheet size that could be bought for it.",
};

/** The finding for parts of a board that found no place. */
export function shortOf(def: FindingDef, job: Job, board: BoardId, parts: readonly Part[]): Finding {
  return raise(def, {
    at: [{ file: job.file, path: ["boards", board] }],
    on: parts.map((part) => part.id),
    facts: {
      board: text(board),
      stock: text(job.boards[board]?.stock ?? board),
      parts: all(parts.map(nameOf)),
    },
  });
}
