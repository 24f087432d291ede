import { partName, roleName } from "../../drawing/partName.js";
import type { Region } from "../../geometry/profile.js";
import type { Part } from "../../model/part.js";
import { labelPlace } from "./labelPlace.js";
import { type Shape, widthOfWords } from "./shape.js";

/** "B1 box top", as the drawings call it. */
export function partTitle(part: Part): string {
  return `${part.number} ${partName(part)}`;
}

/** Text of this height can be read, mm. */
const readable = 4;

/**
 * The part's number and role, as large as there is room for on the part, never over its edges: the number alone, where
 * both would be too small to read. `region`: its profile, where it lies.
 */
export function nameShape(part: Part, region: Region): Shape {
  const { at, clear } = labelPlace(region);
  const heightOf = (text: string) => Math.min(20, clear / 3, (1.8 * clear) / widthOfWords(text, 1));
  const both = `${part.number} ${roleName(part.role)}`;
  const text = heightOf(both) < readable ? part.number : both;
  const height = heightOf(text);
  const x = at.x - widthOfWords(text, height) / 2;
  return { kind: "words", layer: "NAME", at: { x, y: at.y - height / 2 }, height, text };
}
