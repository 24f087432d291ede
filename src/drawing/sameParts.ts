import { featureName } from "../model/ids.js";
import type { Part } from "../model/part.js";

/** Parts that are cut alike: made as "2 off" from one drawing. `first` is drawn. */
export type SameParts = { readonly first: Part; readonly parts: readonly Part[] };

/** Parts of a job gathered by what is cut: board, outline, features, edges, coverings and grain; order as given. */
export function sameParts(parts: readonly Part[]): readonly SameParts[] {
  const groups = new Map<string, Part[]>();
  for (const part of parts) {
    const key = keyOf(part);
    const group = groups.get(key);
    if (group) group.push(part);
    else groups.set(key, [part]);
  }
  return [...groups.values()].map((group) => ({ first: group[0]!, parts: group }));
}

/** Everything that is cut, without names: of the part, its piece, what it joins or what runs through it. */
function keyOf(part: Part): string {
  const { board, thickness, grain, features, profile, blank, edges, coverings } = part;
  const cuts = features.map(({ id, side, cut, filledBy, stage }) => ({
    name: cut.kind === "hole" ? "" : featureName(id),
    side,
    cut,
    filledBy,
    stage,
  }));
  const finishes = Object.entries(edges)
    .map(([name, { bevel, finish, flush }]) => [name, bevel, flush, finish.kind === "joint" ? "joint" : finish])
    .sort();
  return JSON.stringify([board, thickness, grain, cuts, profile, blank, finishes, coverings], rounded);
}

/** Noise of the last digits makes no other part: everything to a millionth of a millimetre. */
function rounded(_key: string, value: unknown): unknown {
  return typeof value === "number" ? Math.round(value * 1e6) / 1e6 + 0 : value;
}
