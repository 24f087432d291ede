import { showLength } from "../input/show.js";
import type { Build, NestedSheet } from "../model/build.js";
import { isBought } from "../nest/bought.js";
import { adhesivesOf } from "./adhesives.js";
import type { Buy } from "./buy.js";
import { type Cloth, clothsOf, rollLength } from "./cloth.js";

/** Everything to buy for a build: sheets, what the pieces ask for, coverings, adhesives. What is in the rack is not. */
export function buysOf(build: Build): readonly Buy[] {
  return [...sheetBuys(build), ...fittingBuys(build), ...coveringBuys(build), ...adhesivesOf(build)].map(withCost);
}

function withCost(buy: Buy): Buy {
  return buy.price === undefined ? buy : { ...buy, cost: Math.round(buy.price * buy.count * 100) / 100 };
}

function sheetBuys(build: Build): readonly Buy[] {
  const wanted = build.layout.sheets.filter(isBought);
  return [...grouped(wanted, (sheet) => sheetName(sheet, build))].map(([item, sheets]) => ({
    kind: "sheet",
    item,
    count: sheets.length,
    ...(sheets[0]!.price === undefined ? {} : { price: sheets[0]!.price }),
    note: `for ${[...new Set(sheets.map(({ board }) => `board ${board}`))].join(", ")}`,
  }));
}

function sheetName({ board, length, width }: NestedSheet, { job, shop }: Build): string {
  const stock = job.boards[board]?.stock ?? board;
  const size = `${showLength(length, job.show)} x ${showLength(width, job.show)}`;
  const material = shop.boards[stock]?.material;
  return `${material === undefined ? stock : `${material}, ${stock}`}, sheet ${size}`;
}

/** Lines for the same thing become one, in the order in which it is first asked for. */
function fittingBuys({ plan }: Build): readonly Buy[] {
  return [...grouped(plan.built.buys, ({ item, unit }) => JSON.stringify([item, unit]))].map(([, same]) => {
    const { item, unit } = same[0]!;
    const count = same.reduce((sum, each) => sum + each.count, 0);
    return { kind: "fitting", item, count, ...(unit === undefined ? {} : { unit }), note: "" };
  });
}

function coveringBuys({ job, shop, plan }: Build): readonly Buy[] {
  const cloths = plan.built.parts.flatMap(clothsOf);
  return [...grouped(cloths, ({ covering }) => job.coverings[covering]?.stock ?? covering)].map(([stock, same]) => {
    const row = shop.coverings[stock];
    return coveringBuy(stock, same, row?.["roll width"], row?.price);
  });
}

function coveringBuy(
  stock: string,
  cloths: readonly Cloth[],
  rollWidth: number | undefined,
  price: number | undefined,
): Buy {
  const squareMetres = cloths.reduce((sum, { length, width }) => sum + (length * width) / 1e6, 0);
  if (rollWidth === undefined) {
    return { kind: "covering", item: stock, count: upToTenth(squareMetres), unit: "m2", note: "roll width not known" };
  }
  const { length, seams } = rollLength(cloths, rollWidth);
  return {
    kind: "covering",
    item: `${stock}, roll ${Math.round(rollWidth)} mm wide`,
    count: upToTenth(length / 1000),
    unit: "m",
    ...(price === undefined ? {} : { price }),
    note: seams > 0 ? "wider than the roll: with a seam" : "laid without regard to the direction of the pile",
  };
}

function upToTenth(value: number): number {
  return Math.ceil(value * 10 - 1e-9) / 10;
}

function grouped<T>(items: readonly T[], key: (item: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const item of items) groups.set(key(item), [...(groups.get(key(item)) ?? []), item]);
  return groups;
}
