import { noise } from "../rest.js";
import type { Tile } from "../tile.js";

/** Tiles that are alike in all their ways to lie: any of them may take the place of another. */
export type Kind = {
  /** One of them, with the kind's own number in place of an item's. */
  readonly tile: Tile;
  readonly items: readonly number[];
};

export function kindsOf(tiles: Iterable<Tile>): readonly Kind[] {
  const byForm = new Map<string, { tile: Tile; items: number[] }>();
  for (const tile of tiles) {
    const form = formOf(tile);
    const kind = byForm.get(form) ?? { tile: { ...tile, item: byForm.size }, items: [] };
    byForm.set(form, kind);
    kind.items.push(tile.item);
  }
  return [...byForm.values()];
}

const formOf = ({ lies }: Tile): string =>
  lies.map(({ turn, w, h, least }) => [turn, ...[w, h, least.w, least.h].map(rounded)].join()).join(" ");

const rounded = (length: number): number => Math.round(length / noise);
