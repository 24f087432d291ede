import { boardId, type PieceId } from "../model/ids.js";
import type { Job } from "../model/job.js";
import type { Around, Ask, Offer } from "../model/piece.js";
import type { Shop } from "../model/shop.js";
import type { Named } from "./references.js";

/** What a piece may look at while it is planned. */
export function aroundOf(
  piece: Named,
  job: Job,
  shop: Shop,
  offers: ReadonlyMap<PieceId, Offer>,
  asks: readonly Ask[],
): Around {
  return {
    job,
    shop,
    id: piece.id,
    origin: piece.origin,
    board: (name) => ({ id: boardId(name), thickness: thicknessOf(name, job, shop) }),
    offers,
    asks: asks.filter((ask) => ask.of === piece.id),
  };
}

/** Measured beats nominal: what the job measured, else what the shop measured, else what the board is sold as. */
export function thicknessOf(name: string, job: Job, shop: Shop): number {
  const choice = job.boards[name];
  const stock = choice && shop.boards[choice.stock];
  if (choice === undefined || stock === undefined) throw new Error(`board ${name}: names are looked up before plans`);
  return choice.measured ?? stock.measured ?? stock.thickness;
}
