import { widen } from "../geometry/offset.js";
import type { Region } from "../geometry/profile.js";
import type { Cut, Part } from "../model/part.js";
import type { Item } from "./page.js";
import { pathToPaper, type View } from "./view.js";

const sunkGrey = 0.85;

/** Recesses and grooves of the side one sees are tinted; what goes right through is not. */
export function sunkTints(part: Part, view: View): readonly Item[] {
  const areas = part.features.flatMap(({ cut, side }) => (side === view.from ? areasOf(cut) : []));
  if (areas.length === 0) return [];
  const through = part.profile.holes.map((hole): Item => ({ kind: "fill", paths: [pathToPaper(view, hole)], grey: 1 }));
  return [...areas.map((area) => tint(area, view)), ...through];
}

/** What a groove clears: as wide as its bit, round at its ends. */
export function grooveAreas(cut: Extract<Cut, { kind: "groove" }>): readonly Region[] {
  const [first] = cut.path;
  return widen(cut.closed && first ? [...cut.path, first] : cut.path, cut.width / 2);
}

function areasOf(cut: Cut): readonly Region[] {
  if (cut.kind === "pocket") return [cut.region];
  return cut.kind === "groove" ? grooveAreas(cut) : [];
}

function tint(area: Region, view: View): Item {
  const paths = [area.outer, ...area.holes].map((profile) => pathToPaper(view, profile));
  return { kind: "fill", paths, grey: sunkGrey };
}
