import type { FeatureWork } from "../model/build.js";
import type { Cut, Feature } from "../model/part.js";
import type { Method, Shop } from "../model/shop.js";
import { bitsOf } from "./bits.js";
import { chamferBit } from "./chamferBit.js";

/** Where a feature is cut, and why there. */
export type Place = Pick<FeatureWork, "by" | "setup" | "why">;

/** How a part is cut: the method for its outline, and the sides that lie up at the machine, by setup. */
export type How = { readonly method: Method; readonly sides: readonly ("face" | "back")[] };

/**
 * Where a feature is cut. Only what a bit can do from above on a flat sheet goes to the machine: what is drilled into an
 * edge, rounded over, or done on the loose part or after glue-up never does. Holes that the machine does not drill are
 * drilled at the bench; everything else it does not cut is for the hand router.
 */
export function placeOf(shop: Shop, feature: Feature, { method, sides }: How): Place {
  const { cut, side, stage } = feature;
  if (stage === "assembled") return byHand(cut, "after glue-up");
  if (typeof side !== "string") return byHand(cut, "into an edge of the loose part");
  if (stage === "bench") return byHand(cut, "on the loose part");
  if (method === "saw" && cut.kind === "outline") return { by: "saw", why: "straight, square edges" };
  if (method === "saw") return byHand(cut, "in the sawn part");
  if (method === "hand") return byHand(cut, "the part is cut by hand");
  return atMachine(shop, { ...feature, side }, sides);
}

function atMachine(
  shop: Shop,
  { cut, side }: Feature & { readonly side: "face" | "back" },
  sides: How["sides"],
): Place {
  const last: Place = { by: "cnc", setup: sides.length === 2 ? 2 : 1, why: "cut through the board" };
  if (cut.kind === "outline" || cut.kind === "notch" || cut.kind === "opening") return last;
  if (cut.kind === "hole" && cut.depth === "through" && cut.sink === undefined) return last;
  if (cut.kind === "edge" && cut.form === "roundOver") return byHand(cut, "its bit runs on a bearing along the edge");
  if (cut.kind === "mark" && bitsOf(shop, ["v"]).length === 0) return byHand(cut, "no v bit on hand to engrave it");
  if (isChamfer(cut) && chamferBit(shop, cut, "cnc") === undefined)
    return byHand(cut, "no cone without a bearing on hand that reaches as far in");
  const setup = sides.indexOf(side) + 1;
  if (setup === 0) return byHand(cut, `on the ${side}, which lies down at the machine`);
  return { by: "cnc", setup: setup === 2 ? 2 : 1, why: `on the ${side}, which lies up` };
}

const isChamfer = (cut: Cut): cut is Extract<Cut, { kind: "edge" }> => cut.kind === "edge" && cut.form === "chamfer";

const byHand = (cut: Cut, why: string): Place => ({
  by: cut.kind === "hole" || cut.kind === "mark" ? "bench" : "hand",
  why,
});
