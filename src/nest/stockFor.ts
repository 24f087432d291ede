import { extentsOf } from "../geometry/measure.js";
import type { Profile } from "../geometry/profile.js";
import { mirrored, moved, turned } from "../geometry/transform.js";
import { type Finding, type FindingDef, raise, text } from "../input/finding.js";
import type { NestedSheet, Process, Registration } from "../model/build.js";
import type { BoardId } from "../model/ids.js";
import type { Job } from "../model/job.js";
import type { Cnc, Shop } from "../model/shop.js";
import { clearArea } from "../shop/clearArea.js";
import { zonesOf } from "../shop/zones.js";
import { dowelZones, takesDowels } from "./dowelZones.js";
import { sawnRow } from "./sawnRow.js";
import { rowsFor, type StockRow, stockOfBoard } from "./stock.js";

export const notForTheSaw: FindingDef = {
  code: "offcut-not-for-saw",
  severity: "note",
  words: "{row} of {stock} is left alone by the saw: {reason}",
  next: "name a straight side that nothing stands out beyond as its true edge, along the grain where there is one; or give its length and width",
  explain:
    "A saw goes by a straight edge: of an odd offcut it uses the largest rectangle on the side that is named its true " +
    "edge. Knots and holes are kept out of that rectangle. An offcut that has none is for the machine only.",
};

export const notTurnedOver: FindingDef = {
  code: "board-without-dowels",
  severity: "note",
  words:
    "{row} of {stock} is not used for parts that are cut from both sides: it has no board where a dowel would stand",
  next: "cut those parts from a whole sheet, or leave the second side to the hand router",
  explain:
    "Sheets are turned over on two dowels in their long middle line, near both ends. An offcut that has no board there " +
    "cannot be kept in register.",
};

export const underZones: FindingDef = {
  code: "board-under-zones",
  severity: "warning",
  words: "what is kept clear on the machine's bed leaves nothing of {row} of {stock}",
  next: "check the places of clamps and pins under cnc: they are measured from where the machine is zeroed",
  explain:
    "A sheet lies with its lower left corner at the machine's zero, and parts keep clear of clamps and pins there. One " +
    "that lies wholly under them is not used.",
};

export const stockFindings: readonly FindingDef[] = [notForTheSaw, notTurnedOver, underZones];

/** What a group of parts may be laid on, and which stock had to be left alone. */
export type GroupStock = { readonly rows: readonly StockRow[]; readonly findings: readonly Finding[] };

/**
 * The stock for parts of one board that are cut one way. At the machine, zones of its bed and round dowels come to those
 * of the sheets; at the saw, odd offcuts and boards with knots count as the rectangle that a saw has of them.
 */
export function stockFor(
  job: Job,
  shop: Shop,
  { board, byMachine }: { readonly board: BoardId; readonly byMachine: boolean },
  { registration }: Pick<Process, "registration">,
  taken: readonly NestedSheet[],
): GroupStock {
  const rows = rowsFor(job, shop, board, taken);
  const pins = registration.find((each) => each.board === board);
  const grain = stockOfBoard(job, shop, board)?.grain ?? false;
  const tried = rows.map((row) => (byMachine ? atMachine(row, shop.cnc, pins) : atSaw(row, grain, shop.saw.step)));
  const stock = job.boards[board]?.stock ?? board;
  const findings = tried.flatMap((one, i) => {
    if (!("def" in one)) return [];
    const facts = { row: text(rows[i]!.name), stock: text(stock), ...(one.reason && { reason: text(one.reason) }) };
    return [raise(one.def, { at: [{ file: shop.file, path: ["boards", stock] }], facts })];
  });
  return { rows: tried.flatMap((one) => ("def" in one ? [] : [one])), findings };
}

/**
 * The same with what sheets leave that are sawn first, for parts that the machine cuts: among the offcuts, by size. A piece
 * that the machine cannot use is no finding, since it is not the workshop's yet. Nor is one used that would have to be
 * turned over about its shorter side, as it lies.
 */
export function withRests(
  rows: readonly StockRow[],
  rests: readonly StockRow[],
  { cnc }: Pick<Shop, "cnc">,
  { board }: { readonly board: BoardId },
  { registration }: Pick<Process, "registration">,
): readonly StockRow[] {
  const pins = registration.find((each) => each.board === board);
  const turnable = rests.filter(({ length, width }) => pins === undefined || length >= width);
  const usable = turnable.flatMap((row) => {
    const one = atMachine(row, cnc, pins);
    return "def" in one ? [] : [one];
  });
  if (usable.length === 0) return rows;
  const isSmall = ({ offcut }: StockRow) => offcut !== undefined;
  const small = [...usable, ...rows.filter(isSmall)].sort((a, b) => a.length * a.width - b.length * b.width);
  return [...small, ...rows.filter((row) => !isSmall(row))];
}

/** Why a row is left alone. */
type Unused = { readonly def: FindingDef; readonly reason?: string };

function atSaw(row: StockRow, grain: boolean, step: number): StockRow | Unused {
  const sawn = sawnRow(row, grain, step);
  return typeof sawn === "string" ? { def: notForTheSaw, reason: sawn } : sawn;
}

function atMachine(row: StockRow, cnc: Cnc | undefined, pins: Registration | undefined): StockRow | Unused {
  if (pins !== undefined && !takesDowels(row, pins)) return { def: notTurnedOver };
  const bed = cnc === undefined ? [] : zonesOf(cnc);
  const mirror = pins === undefined ? [] : bed.map((zone) => turnedOver(zone, row.width));
  const dowels = pins === undefined ? [] : dowelZones(row, pins);
  const more = [...bed, ...mirror, ...dowels].filter((zone) => meets(zone, row));
  if (more.length === 0) return row;
  const zones = [...(row.zones ?? []), ...more];
  return clearArea(row, zones).length > 0 ? { ...row, zones } : { def: underZones };
}

/** A place of a sheet, or what stands on the bed, seen from the sheet as it lies turned over about its long side. */
export function turnedOver(zone: Profile, width: number): Profile {
  return moved(turned(mirrored(zone), Math.PI), 0, width);
}

function meets(zone: Profile, { length, width }: StockRow): boolean {
  const { min, max } = extentsOf(zone);
  return min.x < length && max.x > 0 && min.y < width && max.y > 0;
}
