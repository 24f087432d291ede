import { extentsOf } from "../geometry/measure.js";
import type { Plan } from "../model/build.js";
import { featureId } from "../model/ids.js";
import type { Job } from "../model/job.js";
import type { Feature, Part } from "../model/part.js";
import type { Shop } from "../model/shop.js";
import { wayOf } from "./method.js";
import { sidesOf } from "./side.js";

/**
 * The plan with each part's number as a mark on it, where the shop has them engraved and the machine cuts the part: in the
 * side that lies up last, in the middle; the machine looks for the nearest place where nothing is cut.
 */
export function numbered(job: Job, shop: Shop, plan: Plan): Plan {
  const { cnc } = shop;
  if (cnc?.numbers !== "engraved") return plan;
  const parts = plan.built.parts.map((part) => {
    if (wayOf(job, shop, part).method !== "cnc") return part;
    const up = sidesOf(part, cnc["second side"]).at(-1)!;
    return { ...part, features: [...part.features, numberOf(part, up)] };
  });
  return { ...plan, built: { ...plan.built, parts } };
}

function numberOf(part: Part, side: "face" | "back"): Feature {
  const { min, max } = extentsOf(part.profile.outer);
  return {
    id: featureId(part.id, "number"),
    from: part.from,
    side,
    stage: "sheet",
    cut: { kind: "mark", text: part.number, at: { x: (min.x + max.x) / 2, y: (min.y + max.y) / 2 } },
  };
}
