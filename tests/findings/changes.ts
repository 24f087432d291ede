import type { Change } from "../pieces/planned.js";

// Short ways to say what a job changes: one value by its path below a piece, or a piece that comes or goes.

const under =
  (...root: string[]) =>
  (path: string, value: unknown): Change => [[...root, ...path.split(".")], value];

export const box = under("pieces", "box");
export const ring = under("pieces", "ring");
export const plate = under("pieces", "plate");
export const ten = under("drivers", "ten");
export const carpet = under("coverings", "carpet");
export const space = under("space");

/** Takes a piece out. */
export const without = (...pieces: string[]): readonly Change[] => pieces.map((name) => [["pieces", name], undefined]);

/** The box alone, where its driver's line does not matter. */
export const boxAlone = without("ring", "plate");

/** A plain panel called cover, of the plate's board, 12.1 thick. */
export const cover = (spec: object): Change => [
  ["pieces", "cover"],
  { kind: "panel", board: "plate", outline: "60 x 30", ...spec },
];

/** Nothing but that panel. */
export const coverAlone = (spec: object): readonly Change[] => [
  ...without("box", "ring", "plate", "sill strip"),
  cover(spec),
];
