import { edgeName } from "../drawing/edgeName.js";
import { degrees } from "../drawing/sizes.js";
import { mm } from "../input/finding.js";
import { type Show, showQuantity } from "../input/show.js";
import type { Build } from "../model/build.js";
import type { Edge, Part } from "../model/part.js";

/** What is done to a part's edges, a line for each way: "bottom, top: butt joint, lapped by part B1". Bare ones say nothing. */
export function edgeWords(part: Part, build: Build): readonly string[] {
  const names = namesInOrder(part);
  const groups = new Map<string, string[]>();
  for (const name of names) {
    const words = wordsOfEdge(part, name, build);
    if (words !== "") groups.set(words, [...(groups.get(words) ?? []), name]);
  }
  return [...groups].map(([words, group]) => `${listed(group, names)}: ${words}`);
}

/** As they are walked: the outline first. */
function namesInOrder(part: Part): readonly string[] {
  const loops = [part.profile.outer, ...part.profile.holes];
  return [...new Set(loops.flatMap((loop) => loop.map(({ by }) => by)))];
}

/** A rounded corner goes without saying where both its sides are in the group. */
function listed(group: readonly string[], names: readonly string[]): string {
  if (group.length === names.length) return "all edges";
  return group
    .filter((name) => !(name.includes("|") && name.split("|").every((side) => group.includes(side))))
    .map(edgeName)
    .join(", ");
}

function wordsOfEdge(part: Part, name: string, build: Build): string {
  const edge = part.edges[name];
  if (edge === undefined) return "";
  const { show } = build.job;
  return [
    finishWords(part, name, edge, build),
    edge.bevel === 0 ? "" : `bevelled ${degrees(Math.abs(edge.bevel))}, back ${edge.bevel > 0 ? "smaller" : "larger"}`,
    edge.flush > 0 ? `${showQuantity(mm(edge.flush), show)} left on, to be flushed off` : "",
  ]
    .filter((words) => words !== "")
    .join("; ");
}

function finishWords(part: Part, name: string, { finish }: Edge, build: Build): string {
  switch (finish.kind) {
    case "bare":
      return "";
    case "wrapped":
      return wrapWords(finish.covering, finish.wrap, build.job.show);
    case "joint":
      return jointWords(part, name, build);
  }
}

function wrapWords(covering: string, wrap: number, show: Show): string {
  return wrap > 0
    ? `${covering} round the edge and ${showQuantity(mm(wrap), show)} on to the back`
    : `${covering} to the edge`;
}

function jointWords(part: Part, name: string, { plan }: Build): string {
  const joints = plan.built.joints.filter(({ into, edges }) => into === part.id && edges.includes(name));
  const words = joints.map(({ form, laps, glue }) => {
    const other = plan.built.parts.find(({ id }) => id === laps);
    return `${form} joint${other === undefined ? "" : `, lapped by part ${other.number}`}${glue ? ", glued" : ""}`;
  });
  return words.length > 0 ? words.join("; ") : "joint";
}
