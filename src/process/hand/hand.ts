import type { PartProcess } from "../../model/build.js";
import type { Hand } from "../../model/hand.js";
import type { Part } from "../../model/part.js";
import type { Shop } from "../../model/shop.js";
import { circleJigs } from "./jigs.js";
import { handProfile, routedByHand, waysWith } from "./profiles.js";

/** The processes with the bits that lead best along their templates; a notch is cut with its outline. */
export function withBestBits(
  processes: readonly PartProcess[],
  parts: readonly Part[],
  hand: Hand,
): readonly PartProcess[] {
  const best = new Map(hand.profiles.map(({ feature, templates }) => [feature, templates[0]?.bit]));
  const byId = new Map(parts.map((part) => [part.id, part]));
  return processes.map((process) => {
    const features = byId.get(process.part)?.features ?? [];
    const outline = features.find(({ cut }) => cut.kind === "outline")?.id;
    const notches = new Set(features.filter(({ cut }) => cut.kind === "notch").map(({ id }) => id));
    const seen = new Set<string>();
    const work = process.work.map((each) => {
      const line = notches.has(each.feature) ? outline : each.feature;
      const tool = line && best.get(line);
      const first = !seen.has(each.feature);
      seen.add(each.feature);
      return first && each.by === "hand" && tool !== undefined ? { ...each, tool } : each;
    });
    return { ...process, work };
  });
}

/** What one needs at the bench for what is routed by hand: templates for every line, and pivots for circles. */
export function handOf(shop: Shop, parts: readonly Part[], processes: readonly PartProcess[]): Hand {
  const ways = waysWith(shop);
  const byPart = new Map(processes.map((process) => [process.part, process]));
  const each = parts.map((part) => {
    const process = byPart.get(part.id);
    return { part, routed: process ? routedByHand(part, process) : [] };
  });
  return {
    profiles: each.flatMap(({ part, routed }) => routed.map((line) => handProfile(shop, part, line, ways))),
    jigs: each.flatMap(({ part, routed }) => circleJigs(shop, part, routed)),
  };
}
