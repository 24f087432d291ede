import type { Random } from "../random.js";
import type { Tile } from "./tile.js";

/** Measures by which tiles are called large. */
export const sizes: readonly [(tile: Tile) => number, ...((tile: Tile) => number)[]] = [
  (tile) => tile.long * tile.short,
  (tile) => tile.long,
  (tile) => tile.short,
  (tile) => tile.long + tile.short,
];

/** Tiles from the first by a measure, what is measured of each blurred by up to this share of itself. */
export function largestFirst(
  tiles: readonly Tile[],
  measure: (tile: Tile) => number,
  blur: number,
  random: Random,
): Tile[] {
  const keyed = tiles.map((tile) => ({ tile, key: measure(tile) * (1 + blur * (2 * random() - 1)) }));
  return keyed.sort((a, b) => b.key - a.key || a.tile.item - b.tile.item).map(({ tile }) => tile);
}
