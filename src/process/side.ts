import type { Feature, Part } from "../model/part.js";

/**
 * The sides that must lie up at the machine, the face first. What goes through the board, work on its edges, marks, and
 * what is done at the bench or after glue-up ask for none; where nothing asks, the face lies up.
 */
export function sidesOf(part: Part): readonly ("face" | "back")[] {
  const asked = part.features.filter(asksForSide).map((feature) => feature.side);
  const sides = (["face", "back"] as const).filter((side) => asked.includes(side));
  return sides.length > 0 ? sides : ["face"];
}

function asksForSide({ stage, cut }: Feature): boolean {
  if (stage !== "sheet") return false;
  if (cut.kind === "pocket" || cut.kind === "groove") return true;
  return cut.kind === "hole" && (cut.depth !== "through" || cut.sink !== undefined);
}
