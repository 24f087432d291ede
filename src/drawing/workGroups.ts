import type { FeatureWork, PartProcess } from "../model/build.js";
import { featureName } from "../model/ids.js";
import type { Part } from "../model/part.js";
import { methodWords } from "./methodWords.js";
import { countedWork } from "./workNouns.js";

/** Features of a part that are cut at one place with one tool for one reason. */
export type WorkGroup = Pick<FeatureWork, "by" | "setup" | "tool" | "why"> & { readonly features: readonly string[] };

/** Who cuts what of a part, in the order of its features. */
export function workGroups(work: PartProcess["work"]): readonly WorkGroup[] {
  const groups = new Map<string, WorkGroup>();
  for (const { feature, ...how } of work) {
    const key = JSON.stringify([how.by, how.setup, how.tool, how.why]);
    const features = [...(groups.get(key)?.features ?? []), featureName(feature)];
    groups.set(key, { ...how, features });
  }
  return [...groups.values()];
}

/** "CNC router, setup 2", "hand router", "bench". */
export function placeWords({ by, setup }: Pick<FeatureWork, "by" | "setup">): string {
  if (by === "bench") return "bench";
  return setup === 2 ? `${methodWords[by]}, second setup` : methodWords[by];
}

/**
 * What is cut elsewhere than the part itself, a sentence each: "At the bench: 8 holes into an edge, 2.3 drill". What is
 * done to the outline afterwards, bevels and flush edges, has notes of its own.
 */
export function elsewhereNotes(part: Part, { work, method }: PartProcess): readonly string[] {
  const first = work.filter(({ feature }, i) => work.findIndex((each) => each.feature === feature) === i);
  return workGroups(first)
    .filter(({ by, setup }) => by !== method || setup === 2)
    .map((group) => {
      const features = part.features.filter(({ id }) => group.features.includes(featureName(id)));
      const what = countedWork(features) || "the outline";
      const tool = group.tool === undefined ? "" : `, ${group.tool}`;
      return `At the ${placeWords(group)}: ${what}${tool} (${group.why})`;
    });
}
