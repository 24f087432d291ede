import { formatNumber } from "../../input/number.js";
import type { Controller } from "../../model/shop.js";

/** The places a program can name: so many digits after the point of one unit. */
export type Grid = { readonly unit: Controller["units"]; readonly decimals: number };

/** Millimetres in the unit of the program. */
export const scaled = (grid: Grid, mm: number): number => (grid.unit === "mm" ? mm : mm / 25.4);

/** Distance between two neighbouring places, in the unit of the program. */
export const stepOf = ({ decimals }: Grid): number => 10 ** -decimals;

/** A length as it is written, in the unit of the program: always with its point, which some controllers insist on. */
export const written = (grid: Grid, value: number): string => formatNumber(value, grid.decimals, { keepZeros: true });

/** The value that a controller reads for it. */
export const onGrid = (grid: Grid, value: number): number => Number(written(grid, value));

/** A feed, in units a minute. */
export const feedWord = (grid: Grid, mmPerMin: number): string =>
  `F${formatNumber(scaled(grid, mmPerMin), 1, { keepZeros: true })}`;
