import type { AddCommand } from "./command.js";
import { addBuy } from "./commands/buy.js";
import { addCheck } from "./commands/check.js";
import { addExplain } from "./commands/explain.js";
import { addMake } from "./commands/make.js";
import { addNest } from "./commands/nest.js";
import { addNew } from "./commands/new.js";
import { addSchema } from "./commands/schema.js";
import { addShop } from "./commands/shop.js";

/** Every command, in the order in which the help lists them. */
export const commands: readonly AddCommand[] = [
  addNew,
  addCheck,
  addMake,
  addNest,
  addBuy,
  addSchema,
  addExplain,
  addShop,
];
