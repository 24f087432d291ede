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

/** An offcut as a row of the shop file. */
export function offcutRow(offcut: Offcut): Row {
  const { clamps, knots, pins, holes, outline, length, width, "true edge": edge, ...rest } = offcut;
  const size =
    outline === undefined ? lengthsIn({ length, width }, ["length", "width"]) : { outline: cornersRow(outline, edge) };
  const { name, ...more } = rest;
  return {
    name,
    ...size,
    ...(edge !== undefined && { "true edge": edge }),
    ...lengthsIn(more, ["trim", "measured"]),
    ...clearRow({ clamps, knots, pins, holes }),
  };
}

/** The same in one line, to be set under `offcuts:` of a board: "- {name: A, length: 800, width: 300}". */
export function offcutLine(offcut: Offcut): string {
  return `- ${flow(offcutRow(offcut))}`;
}

/** Corners and bows; the true edge keeps its name. */
function cornersRow(outline: Profile, edge: string | undefined): readonly Row[] {
  return outline.map(({ x, y, bulge, by }) => ({
    at: [lengthText(x), lengthText(y)],
    ...(bulge !== 0 && { bulge: Number(formatNumber(bulge, 9)) }),
    ...(by === edge && { side: by }),
  }));
}

/** Zones as rows of the keys they stand under. */
export function clearRow(clear: { readonly [key in keyof KeptClear]: KeptClear[key] | undefined }): Row {
  const kept = Object.entries(clear).flatMap(([key, zones]) =>
    zones === undefined || zones.length === 0 ? [] : [[key, zones.map(zoneRow)] as const],
  );
  return Object.fromEntries(kept);
}

function zoneRow(zone: Profile): Row {
  const round = isCircle(zone);
  if (round)
    return { at: [lengthText(round.center.x), lengthText(round.center.y)], across: lengthText(2 * round.radius) };
  return { outline: zone.map(({ x, y }) => [lengthText(x), lengthText(y)]) };
}
