import type { Point } from "../geometry/profile.js";
import { type Finding, type FindingDef, mm, raise, text } from "../input/finding.js";
import type { PartProcess, Registration } from "../model/build.js";
import type { BoardId } from "../model/ids.js";
import type { Job } from "../model/job.js";
import type { Part } from "../model/part.js";
import type { Shop } from "../model/shop.js";
import { rowOf } from "../shop/lookups.js";
import { rules } from "../shop/rules.js";
import { holeBit } from "./otherTool.js";

export const noPinBit: FindingDef = {
  code: "no-pin-bit",
  severity: "error",
  words: "no bit on hand makes the holes for {d} dowels, {deep} deep, on which sheets of {board} are turned over",
  next: "add a drill of {d}, or a thinner straight bit, with edges of {deep} or more, or leave the second side to the hand router",
  explain:
    "Work on both sides of a part needs two setups. Dowels through the sheet into the spoilboard keep both in register, " +
    "so the machine must be able to make their holes.",
};

/** What keeps the sheets in register of each board that has a part with two setups. */
export function registrationsOf(
  job: Job,
  shop: Shop,
  parts: readonly Part[],
  processes: readonly PartProcess[],
): { readonly registration: readonly Registration[]; readonly findings: readonly Finding[] } {
  const twice = new Set(processes.filter(({ sides }) => sides.length === 2).map(({ part }) => part));
  const turned = parts.filter(({ id }) => twice.has(id));
  const made = [...new Set(turned.map(({ board }) => board))].map((board) => {
    const on = turned.filter((part) => part.board === board);
    return registrationOn(job, shop, board, on);
  });
  return { registration: made.map(({ pins }) => pins), findings: made.flatMap(({ findings }) => findings) };
}

function registrationOn(job: Job, shop: Shop, board: BoardId, parts: readonly Part[]) {
  const thickness = Math.max(...parts.map((part) => part.thickness));
  const d = rules.pin.value;
  const into = rules.pinInto.value;
  const bit = holeBit(shop, d, thickness + into);
  const pins: Registration = {
    board,
    d,
    ...(bit && { tool: bit.name }),
    into,
    fromEnds: [rules.pinFromLeft.value, rules.pinFromRight.value],
    keepOff: d / 2 + rules.pinWall.value,
  };
  const stock = rowOf(job.boards, board)?.stock ?? board;
  const at = [{ file: job.file, path: ["boards", board] }];
  const missing = raise(noPinBit, {
    at,
    on: parts.map(({ id }) => id),
    facts: { d: mm(d), deep: mm(thickness + into), board: text(stock) },
  });
  return { pins, findings: bit ? [] : [missing] };
}

/** Where the dowels stand in a sheet, sheet's frame: the same before and after it is turned over about its long side. */
export function pinsOn(
  { fromEnds: [left, right] }: Registration,
  sheet: { readonly length: number; readonly width: number },
): readonly [Point, Point] {
  return [
    { x: left, y: sheet.width / 2 },
    { x: sheet.length - right, y: sheet.width / 2 },
  ];
}
