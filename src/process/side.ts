import type { Cut, Feature, Part } from "../model/part.js";
import type { Cnc } from "../model/shop.js";

type Up = "face" | "back";

/**
 * The sides that lie up at the machine, in the order of its setups.
 *
 * One setup: the side with more to cut into it, so that a shallow groove on the back and no work on the face means back
 * up; the face where both are alike. What is left on the other side is for the hand router and the bench.
 * Two setups, where both sides are worked and the shop turns sheets over on pins: the side with less to cut first, then
 * the other, in which the part is also cut out: so it agrees best with what the outline must agree with.
 */
export function sidesOf(part: Part, secondSide: Cnc["second side"]): readonly Up[] {
  const [face, back] = [workOn(part, "face"), workOn(part, "back")];
  const main: Up = back > face ? "back" : "face";
  if (secondSide === "hand" || face === 0 || back === 0) return [main];
  return main === "face" ? ["back", "face"] : ["face", "back"];
}

const workOn = (part: Part, side: Up): number =>
  part.features.filter((feature) => feature.side === side && asksForSide(feature)).length;

/** What goes through the board, work on its edges, marks, and what is done at the bench or after glue-up ask for none. */
export function asksForSide({ stage, cut }: Feature): boolean {
  return stage === "sheet" && (cut.kind === "pocket" || cut.kind === "groove" || isBlind(cut));
}

const isBlind = (cut: Cut): boolean => cut.kind === "hole" && (cut.depth !== "through" || cut.sink !== undefined);
