import { fitWords } from "../drawing/toFit.js";
import { extentsOf } from "../geometry/measure.js";
import type { Extents } from "../geometry/profile.js";
import type { Build } from "../model/build.js";
import type { BoardId, PartId } from "../model/ids.js";
import type { Part } from "../model/part.js";
import type { Method } from "../model/shop.js";
import { alike } from "./alike.js";
import { edgeWords } from "./edgeWords.js";
import { finishedExtents } from "./finishedSize.js";
import { workWords } from "./workWords.js";

/** mm. The length runs with the grain where the part has one, else along the longer way. */
export type Size = { readonly length: number; readonly width: number };

/** Parts that are cut alike, one row: "B3, B4, 2 off". */
export type CutRow = {
  readonly numbers: readonly string[];
  readonly parts: readonly PartId[];
  readonly quantity: number;
  readonly board: BoardId;
  readonly stock: string;
  readonly material: string;
  /** As measured, mm. */
  readonly thickness: number;
  /** The bare board. */
  readonly asCut: Size;
  /** What is cut first, with any allowance that is flushed off later. */
  readonly blank: Size;
  /** With its coverings on. */
  readonly finished: Size;
  /** Whether the board's grain must run along the length. */
  readonly grain: boolean;
  readonly method: Method | undefined;
  readonly why: string;
  readonly edges: readonly string[];
  /** Sheets on which they lie; none: no sheet takes them. */
  readonly sheets: readonly string[];
  readonly notes: readonly string[];
};

/** The cut list, in the order of the parts. Parts are "2 off" by comparing them, whatever piece they belong to. */
export function cutListOf(build: Build): readonly CutRow[] {
  const groups = groupAlike(build);
  return groups.map((group, i) => rowOf(group, oppositesOf(group, groups.slice(0, i)), build));
}

function groupAlike(build: Build): readonly (readonly Part[])[] {
  const groups: Part[][] = [];
  for (const part of build.plan.built.parts) {
    const group = groups.find(
      ([first]) => methodOf(first!, build) === methodOf(part, build) && alike(first!, part) === "same",
    );
    if (group) group.push(part);
    else groups.push([part]);
  }
  return groups;
}

function methodOf(part: Part, { process }: Build): Method | undefined {
  return process.parts.find((each) => each.part === part.id)?.method;
}

function oppositesOf([first]: readonly Part[], before: readonly (readonly Part[])[]): readonly Part[] {
  return before.filter(([other]) => alike(other!, first!) === "opposite hand").flat();
}

function rowOf(parts: readonly Part[], opposites: readonly Part[], build: Build): CutRow {
  const first = parts[0]!;
  const how = build.process.parts.find((each) => each.part === first.id);
  const stock = build.job.boards[first.board]?.stock ?? first.board;
  const size = (box: Extents) => sizeOf(box, first);
  return {
    numbers: parts.map(({ number }) => number),
    parts: parts.map(({ id }) => id),
    quantity: parts.length,
    board: first.board,
    stock,
    material: build.shop.boards[stock]?.material ?? stock,
    thickness: first.thickness,
    asCut: size(extentsOf(first.profile)),
    blank: size(extentsOf(first.blank)),
    finished: size(finishedExtents(first)),
    grain: first.grain !== undefined,
    method: how?.method,
    why: how?.why ?? "",
    edges: edgeWords(first, build),
    sheets: sheetsOf(parts, build),
    notes: notesOf(first, opposites, build),
  };
}

function sizeOf({ min, max }: Extents, { grain }: Part): Size {
  const x = max.x - min.x;
  const y = max.y - min.y;
  const alongX = grain === undefined ? x >= y : Math.abs(Math.cos(grain)) >= Math.SQRT1_2;
  return alongX ? { length: x, width: y } : { length: y, width: x };
}

function sheetsOf(parts: readonly Part[], { layout }: Build): readonly string[] {
  const ids = new Set(parts.map(({ id }) => id));
  return layout.sheets.filter(({ placed }) => placed.some(({ part }) => ids.has(part))).map(({ sheet }) => sheet);
}

function notesOf(part: Part, opposites: readonly Part[], build: Build): readonly string[] {
  const { face, back } = part.coverings;
  const covered = [face && `${face} on the face`, back && `${back} on the back`].filter((words) => words !== undefined);
  return [
    workWords(part),
    fitWords(part, build),
    ...covered,
    opposites.length > 0 ? `opposite hand of ${opposites.map(({ number }) => number).join(", ")}` : "",
  ].filter((note) => note !== "");
}
