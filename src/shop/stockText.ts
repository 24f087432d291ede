import { isCircle } from "../geometry/measure.js";
import type { Profile } from "../geometry/profile.js";
import { formatNumber } from "../input/number.js";
import type { KeptClear, Offcut, SheetSize } from "../model/shop.js";
import { lengthText } from "./lengthText.js";
import { flow, lengthsIn, type Row } from "./rowText.js";

/** A sheet size as a row of the shop file. */
export function sheetRow({ clamps, knots, pins, holes, ...sheet }: SheetSize): Row {
  return { ...lengthsIn(sheet, ["length", "width", "trim", "measured"]), ...clearRow({ clamps, knots, pins, holes }) };
}

/** An offcut as a row of the shop file; `length`: how a length is written. */
export function offcutRow(offcut: Offcut, write = lengthText): Row {
  const { name, clamps, knots, pins, holes, outline, length, width, trim, measured, "true edge": edge } = offcut;
  const size =
    outline === undefined
      ? { length: write(length), width: write(width) }
      : { outline: cornersRow(outline, edge, write) };
  return {
    name,
    ...size,
    ...(edge !== undefined && { "true edge": edge }),
    ...(trim !== 0 && { trim: write(trim) }),
    ...(measured !== undefined && { measured: write(measured) }),
    ...clearRow({ clamps, knots, pins, holes }, write),
  };
}

/**
 * The same in one line, to be set under `offcuts:` of a board, whatever the units of the file: "- {name: A, length:
 * 800mm, width: 300mm}".
 */
export function offcutLine(offcut: Offcut): string {
  return `- ${flow(offcutRow(offcut, withUnit))}`;
}

function withUnit(length: number): string {
  const written = lengthText(length);
  return written.endsWith("in") ? written : `${written}mm`;
}

/** Corners and bows; the true edge keeps its name. */
function cornersRow(outline: Profile, edge: string | undefined, write: typeof lengthText): readonly Row[] {
  return outline.map(({ x, y, bulge, by }) => ({
    at: [write(x), write(y)],
    ...(bulge !== 0 && { bulge: Number(formatNumber(bulge, 9)) }),
    ...(by === edge && { side: by }),
  }));
}

type Clear = { readonly [key in keyof KeptClear]: KeptClear[key] | undefined };

/** Zones as rows of the keys they stand under. */
export function clearRow(clear: Clear, write = lengthText): Row {
  const kept = Object.entries(clear).flatMap(([key, zones]) =>
    zones === undefined || zones.length === 0 ? [] : [[key, zones.map((zone) => zoneRow(zone, write))] as const],
  );
  return Object.fromEntries(kept);
}

function zoneRow(zone: Profile, write: typeof lengthText): Row {
  const round = isCircle(zone);
  if (round) return { at: [write(round.center.x), write(round.center.y)], across: write(2 * round.radius) };
  return { outline: zone.map(({ x, y }) => [write(x), write(y)]) };
}
