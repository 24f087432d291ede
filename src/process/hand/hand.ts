import type { PartProcess } from "../../model/build.js";
import type { Hand } from "../../model/hand.js";
import type { Part } from "../../model/part.js";
import type { Shop } from "../../model/shop.js";
import { circleJigs } from "./jigs.js";
import { handProfile, routedByHand } from "./profiles.js";

/** What one needs at the bench for what is routed by hand: templates for every line, and pivots for circles. */
export function handOf(shop: Shop, parts: readonly Part[], processes: readonly PartProcess[]): Hand {
  const each = parts.map((part) => {
    const process = processes.find((one) => one.part === part.id);
    return { part, routed: process ? routedByHand(part, process) : [] };
  });
  return {
    profiles: each.flatMap(({ part, routed }) => routed.map((line) => handProfile(shop, part, line))),
    jigs: each.flatMap(({ part, routed }) => circleJigs(shop, part, routed)),
  };
}
