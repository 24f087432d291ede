import type { Shop } from "../model/shop.js";
import { bits } from "./bits.js";
import { boards } from "./boards.js";
import { bolts } from "./bolts.js";
import { bushes } from "./bushes.js";
import { coverings } from "./coverings.js";
import { inserts } from "./inserts.js";
import { cnc, cutBy, router, saw, trackSaw } from "./machines.js";
import { screws } from "./screws.js";
import { shopYaml } from "./yamlText.js";

/** What stands as the file of the built-in tables in findings and origins. */
export const builtIn = "built-in shop";

/** The shop of the built-in tables, on which every shop file is laid. */
export function starterShop(): Shop {
  return {
    version: 1,
    file: builtIn,
    "cut by": cutBy,
    dxf: "R12",
    saw,
    "track saw": trackSaw,
    router,
    cnc,
    boards,
    bits,
    bushes,
    inserts,
    bolts,
    screws,
    coverings,
  };
}

/** The shop file that holds the built-in tables, to start one's own from: templates/shop.yaml. */
export function starterShopYaml(): string {
  return shopYaml(starterShop());
}
