import { extentsOf } from "../../geometry/measure.js";
import type { SawnPiece } from "../../model/rip.js";
import { rules } from "../../shop/rules.js";
import type { NestItem, NestResultSheet, NestStock } from "../engine.js";
import { type Lie, liesOf } from "../lies.js";
import type { OpenSheet } from "../rectangles/pack.js";
import { cutUpSheet } from "./cutUp.js";
import { isLargeEnough } from "./handling.js";
import { type Sawing, widestKerf } from "./sawing.js";
import { leastSettings } from "./settings.js";
import { wantedOf } from "./wanted.js";

/** A packed sheet as it is sawn. Nothing lies on it: it stays whole. */
export function sawnSheet(sheet: OpenSheet, row: NestStock, sawing: Sawing): SawnPiece<number> {
  const board = { x: 0, y: 0, length: row.length, width: row.width };
  const wanted = wantedOf(sheet, widestKerf(sawing), sawing.step);
  return wanted ? cutUpSheet(board, row.trim, wanted, sawing).piece : board;
}

/** How many of its cuts are made of pieces too small to hold. */
export function smallCuts(sheet: OpenSheet, row: NestStock, sawing: Sawing): number {
  const board = { x: 0, y: 0, length: row.length, width: row.width };
  const wanted = wantedOf(sheet, widestKerf(sawing), sawing.step);
  return wanted ? cutUpSheet(board, row.trim, wanted, sawing).small : 0;
}

/** Where the items lie on a sheet that is sawn so: each in the middle of its blank. */
export function placedOn(
  sawn: SawnPiece<number>,
  sheet: OpenSheet,
  items: readonly NestItem[],
): NestResultSheet["placed"] {
  const turns = new Map(sheet.laid.map(({ item, turn }) => [item, turn]));
  return leavesOf(sawn).flatMap(({ part, x, y, length, width }) => {
    if (part === undefined) return [];
    const turn = turns.get(part) ?? 0;
    const lie = lieIn(items[part]!, turn);
    return [{ item: part, x: x + (length - lie.w) / 2, y: y + (width - lie.h) / 2, turn }];
  });
}

const lieIn = (item: NestItem, turn: number): Lie => liesOf({ ...item, turns: [turn] })[0]!;

/** What remains of a piece when all cuts are made. */
export function leavesOf<Id>(piece: SawnPiece<Id>): readonly SawnPiece<Id>[] {
  const { cut } = piece;
  if (!cut) return [piece];
  return [...(cut.off ? leavesOf(cut.off) : []), ...(cut.rest ? leavesOf(cut.rest) : [])];
}

/**
 * What sheets that are sawn so are worth, less is better, mm2: the settings and turns they take, each as so much board as
 * the workshop says, and the bevels for which a small part is clamped alone, each as a setting; less the largest piece that
 * stays whole.
 */
export function sawnWorth(sheets: readonly SawnPiece<number>[], sawing: Sawing, items: readonly NestItem[]): number {
  const whole = sheets.flatMap((sheet) => leavesOf(sheet).filter((leaf) => leaf.part === undefined));
  const largest = whole.reduce((most, { length, width }) => Math.max(most, length * width), 0);
  const sheet = sheets.reduce((most, { length, width }) => Math.max(most, length * width), 0);
  const alone = sheets.reduce((sum, each) => sum + bevelsAlone(each, items, sawing), 0);
  const clamped = alone * Math.max(sawing.setting, rules.settingWorth.value);
  return (leastSettings(sheets) * sawing.setting + clamped) * sheet - largest;
}

/** How many bevels of small items run across the strips that these come from, and so are cut of each alone. */
function bevelsAlone({ cut }: SawnPiece<number>, items: readonly NestItem[], sawing: Sawing): number {
  if (!cut) return 0;
  return [cut.off, cut.rest].reduce((sum, each) => {
    if (!each) return sum;
    const bevels = each.part === undefined ? undefined : items[each.part]!.bevels;
    if (bevels === undefined) return sum + bevelsAlone(each, items, sawing);
    if (isLargeEnough(each, sawing.hold)) return sum;
    const { min, max } = extentsOf(items[each.part!]!.shape);
    const isTurned = Math.abs(each.length - max.x + min.x) > Math.abs(each.length - max.y + min.y);
    return sum + (cut.along === isTurned ? bevels.across : bevels.lengthwise);
  }, 0);
}
