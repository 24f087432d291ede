import type { Extents } from "../../geometry/profile.js";
import type { Show } from "../../input/show.js";
import type { DxfFormat } from "../../model/shop.js";
import type { LineType } from "../shapes/layers.js";
import type { Shape } from "../shapes/shape.js";
import { place, real, type Tag, whole } from "./tag.js";

// What both forms of the file say alike.

/**
 * A drawing in mm, to be written in the job's unit. `notes` stand as comments at the head of the file.
 * `format`: R12 where nothing is said.
 */
export type DxfDrawing = {
  readonly shapes: readonly Shape[];
  readonly notes: readonly string[];
  readonly show: Show;
  readonly format?: DxfFormat | undefined;
};

/** Drawing units in a millimetre. */
export const scaleOf = (show: Show): number => (show.unit === "mm" ? 1 : 1 / 25.4);

/** The variables of the header; `version`: AC1009 is R12, AC1015 is 2000. */
export function header(version: string, show: Show, { min, max }: Extents): readonly Tag[] {
  const metric = show.unit === "mm";
  return [
    ...variable("$ACADVER", [[1, version]]),
    ...variable("$INSUNITS", [whole(70, metric ? 4 : 1)]),
    ...variable("$MEASUREMENT", [whole(70, metric ? 1 : 0)]),
    ...variable("$LUNITS", [whole(70, 2)]),
    ...variable("$LUPREC", [whole(70, 4)]),
    ...variable("$INSBASE", place(10, 0, 0)),
    ...variable("$EXTMIN", place(10, min.x, min.y)),
    ...variable("$EXTMAX", place(10, max.x, max.y)),
    ...variable("$LIMMIN", flat(min.x, min.y)),
    ...variable("$LIMMAX", flat(max.x, max.y)),
    ...variable("$LTSCALE", [real(40, 1)]),
  ];
}

export function variable(name: string, value: readonly Tag[]): readonly Tag[] {
  return [[9, name], ...value];
}

export const flat = (x: number, y: number): readonly Tag[] => [real(10, x), real(20, y)];

/** What a viewer shows first: all of it. */
export function viewOf({ min, max }: Extents): readonly Tag[] {
  const width = max.x - min.x;
  const height = max.y - min.y;
  return [
    [2, "*ACTIVE"],
    whole(70, 0),
    ...flat(0, 0),
    ...[real(11, 1), real(21, 1)],
    ...[real(12, (min.x + max.x) / 2), real(22, (min.y + max.y) / 2)],
    ...place(16, 0, 0).slice(0, 2),
    real(36, 1),
    real(40, Math.max(height, width / 1.5) * 1.05),
    real(41, 1.5),
  ];
}

/** Dashes (+) and spaces (-), mm. */
export const lineTypes: readonly (readonly [LineType, string, readonly number[]])[] = [
  ["CONTINUOUS", "Solid line", []],
  ["DASHED", "Dashes", [6, -3]],
  ["DASHDOT", "Dash and dot", [9, -3, 0, -3]],
];

/** The only text style, without its type. */
export const textStyle: readonly Tag[] = [
  [2, "STANDARD"],
  whole(70, 0),
  real(40, 0),
  real(41, 1),
  real(50, 0),
  whole(71, 0),
  real(42, 1),
  [3, "txt"],
  [4, ""],
];

/** A line type, without its type, in drawing units. `each`: what follows a dash. */
export function lineTypeTags(
  name: string,
  words: string,
  dashes: readonly number[],
  scale: number,
  each: readonly Tag[] = [],
): readonly Tag[] {
  return [
    [2, name],
    whole(70, 0),
    [3, words],
    whole(72, 65), // "A": the only alignment the format knows
    whole(73, dashes.length),
    real(40, dashes.reduce((sum, dash) => sum + Math.abs(dash), 0) * scale),
    ...dashes.flatMap((dash) => [real(49, dash * scale), ...each]),
  ];
}

export function scaled({ min, max }: Extents, scale: number): Extents {
  return { min: { x: min.x * scale, y: min.y * scale }, max: { x: max.x * scale, y: max.y * scale } };
}
