import type { CoveringStock } from "../model/shop.js";
import { rules } from "./rules.js";

/** Clamped to half of its thickness until somebody measures it. Everything here: common practice, no source. */
function covering(material: string, thick: number, wrap: number, reveal: number, rollWidth: number): CoveringStock {
  const clamped = thick * rules.clampedShare.value;
  return { material, thick, clamped, wrap, reveal, "roll width": rollWidth, source: "common practice, no source" };
}

/** Coverings by the name a fabricator types; thickness as laid, mm. */
export const coverings: Readonly<Record<string, CoveringStock>> = {
  "box-carpet": covering("needle-felt carpet, unbacked", 3, 50, 1, 1830),
  "loop-carpet": covering("automotive loop carpet", 6, 50, 1, 1830),
  vinyl: covering("vinyl, knit-backed", 1, 40, 0.5, 1370),
  "foam-vinyl": covering("vinyl, foam-backed", 3, 40, 0.5, 1370),
  leather: covering("upholstery leather", 1.1, 40, 0.5, 1370),
  microfibre: covering("suede-type microfibre", 0.9, 40, 0.5, 1370),
};
