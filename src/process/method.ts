import { areaOf, extentsOf } from "../geometry/measure.js";
import type { Profile } from "../geometry/profile.js";
import { tolerance } from "../geometry/tolerance.js";
import type { Job } from "../model/job.js";
import type { Part } from "../model/part.js";
import type { Method, Shop } from "../model/shop.js";
import { rowOf } from "../shop/lookups.js";

/** How a part is cut, and why, in a few words. */
export type Way = { readonly method: Method; readonly why: string };

/**
 * As the piece says for the panel, else for itself, else the job, else the shop. A part meant for the saw goes to the hand router where its outline is
 * no rectangle; bevels along its sides, and openings, leave it at the saw.
 */
export function wayOf(job: Job, shop: Shop, part: Part): Way {
  const { method, who } = wanted(job, shop, part);
  if (method !== "saw") return { method, why: `as the ${who} says` };
  const odd = oddEdge(part);
  if (odd) return { method: "hand", why: `${odd}: sawn free, then routed by hand` };
  const bevelled = Object.values(part.edges).some((edge) => edge.bevel !== 0);
  const opened = part.features.some(({ cut }) => cut.kind === "opening");
  const outline = bevelled ? "a rectangle with sawn bevels" : "a plain rectangle";
  return { method, why: opened ? `${bevelled ? outline : "sawn outline"}, hand-routed opening` : outline };
}

function wanted(job: Job, shop: Shop, part: Part): { readonly method: Method; readonly who: string } {
  if (part.cutBy) return { method: part.cutBy, who: "panel" };
  const piece: { readonly kind: string; readonly "cut by"?: Method } | undefined = rowOf(job.pieces, part.piece);
  if (piece?.["cut by"]) return { method: piece["cut by"], who: "piece" };
  return job["cut by"] ? { method: job["cut by"], who: "job" } : { method: shop["cut by"], who: "shop" };
}

/** What keeps a part from being sawn to shape. */
function oddEdge(part: Part): string | undefined {
  if (!isRectangle(part.profile.outer) || !isRectangle(part.blank.outer)) return "not a plain rectangle";
  return undefined;
}

/** A profile that fills its extents is the rectangle itself; a sliver along its edges is noise. */
export function isRectangle(profile: Profile): boolean {
  const { min, max } = extentsOf(profile);
  const length = max.x - min.x;
  const width = max.y - min.y;
  return length * width - areaOf(profile) <= tolerance.samePoint * 2 * (length + width);
}
