import type { Profile } from "../geometry/profile.js";
import { raise, text } from "../input/finding.js";
import type { FeatureWork } from "../model/build.js";
import { featureName } from "../model/ids.js";
import type { Feature } from "../model/part.js";
import { nameOf } from "../plan/standing.js";
import { type Bench, type Done, type Lying, nothingDone, type Tool, together } from "./bench.js";
import { cutChamfer, cutRebate } from "./edges.js";
import { engrave } from "./engrave.js";
import { cannot, withheld } from "./faults.js";
import { noTurningSpeed, notAtTheMachine } from "./findings.js";
import { cutGroove } from "./groove.js";
import { makeHole, makeSink } from "./holes.js";
import { clearPocket } from "./pocket.js";
import { sinkTool, type Toolbox } from "./toolbox.js";
import { type Way, type Ways, waysInside, waysOutside } from "./ways.js";

/** A feature and the bit that cuts it here. */
type Task = { readonly feature: Feature; readonly tool: Tool };

/**
 * Everything that is cut of a part in one setup, and the ways that go through the board: how those are held depends on
 * the parts beside it. What cannot be cut as it should is left out, with a finding each; the rest is cut.
 */
export function cutPart(
  bench: Bench,
  lying: Lying,
  toolbox: Toolbox,
): { readonly done: Done; readonly ways: readonly Way[] } {
  const found = lying.work.map((work) => taskOf(lying, work, toolbox));
  const tasks = found.flatMap((one) => ("tool" in one ? [one] : []));
  const without = found.flatMap((one) => ("tool" in one ? [] : [one]));
  const outside = tasks.filter(({ feature }) => isOutside(lying, feature));
  const openings = tasks.filter(({ feature }) => feature.cut.kind === "opening" && !isOutside(lying, feature));
  const others = tasks.filter(({ feature }) => !isThroughCut(feature));
  const through = [...openings.map((task) => waysOf(bench, lying, task, openings)), wayRound(bench, lying, outside)];
  const done = together([
    ...without,
    ...others.map((task) => cutOther(bench, lying, task, toolbox)),
    ...through.flatMap(({ left }) => left ?? []),
  ]);
  return { done, ways: through.flatMap(({ ways }) => ways) };
}

function taskOf(lying: Lying, { feature: id, tool: name }: FeatureWork, toolbox: Toolbox): Task | Done {
  const feature = lying.part.features.find((each) => each.id === id);
  if (feature === undefined) return nothingDone;
  const tool = toolbox.tools.get(name ?? "");
  if (tool) return { feature, tool };
  const where = { at: feature.from, on: [lying.part.id, feature.id] };
  const slow = toolbox.unable.get(name ?? "");
  if (slow) {
    const facts = { bit: text(name!), limit: text(String(slow.limit)), least: text(String(slow.least)) };
    return withheld(feature, raise(noTurningSpeed, { ...where, facts }));
  }
  const facts = {
    bit: text(name ?? "no bit"),
    feature: text(featureName(feature.id)),
    part: text(nameOf(lying.part)),
    why: text("the shop file has no such bit"),
  };
  return withheld(feature, raise(notAtTheMachine, { ...where, facts }));
}

const isThroughCut = ({ cut }: Feature): boolean =>
  cut.kind === "outline" || cut.kind === "notch" || cut.kind === "opening";

/** Whether a feature is cut with the way round the part: its outline, notches, and openings that broke out at the edge. */
function isOutside({ profile }: Lying, feature: Feature): boolean {
  const { cut } = feature;
  if (cut.kind === "outline" || cut.kind === "notch") return true;
  return cut.kind === "opening" && made(feature, profile.outer) && !profile.holes.some((hole) => made(feature, hole));
}

/** Whether a loop has an edge that this feature made. */
function made({ id, cut }: Feature, loop: Profile): boolean {
  const own = cut.kind === "opening" || cut.kind === "notch" ? cut.region.outer.map((vertex) => vertex.by) : [];
  const names = new Set([featureName(id), ...own]);
  return loop.some((vertex) => vertex.by.split("|").some((name) => names.has(name)));
}

/** One way round the part with the thinnest of the bits that its outline and notches ask for. */
function wayRound(bench: Bench, lying: Lying, outside: readonly Task[]): Ways {
  const outline = outside.find(({ feature }) => feature.cut.kind === "outline");
  if (outline === undefined) {
    const why = "the outline is not cut there";
    return { ways: [], left: together(outside.map(({ feature, tool }) => cannot(lying, feature, tool, why))) };
  }
  const tool = outside.reduce((thin, task) => (task.tool.d < thin.d ? task.tool : thin), outline.tool);
  const { ways, left } = waysOutside(bench, lying, outline.feature, tool);
  return left ? { ways, left: { ...left, withheld: outside.map(({ feature }) => feature.id) } } : { ways };
}

/** Along the loops that an opening made; where two openings run into one, the first one cuts both. */
function waysOf(bench: Bench, lying: Lying, { feature, tool }: Task, openings: readonly Task[]): Ways {
  if (feature.cut.kind !== "opening") return { ways: [] };
  const { holes } = lying.profile;
  const first = (hole: Profile) => openings.find((task) => made(task.feature, hole))?.feature;
  const named = holes.filter((hole) => made(feature, hole));
  const own = named.filter((hole) => first(hole) === feature);
  const loops = named.length > 0 ? own : [lying.to.region(feature.cut.region).outer];
  const found = loops.map((loop) => waysInside(bench, lying, feature, tool, loop));
  const left = found.flatMap((one) => one.left ?? []);
  return left.length > 0 ? { ways: [], left: left[0]! } : { ways: found.flatMap(({ ways }) => ways) };
}

function cutOther(bench: Bench, lying: Lying, { feature, tool }: Task, toolbox: Toolbox): Done {
  const { cut } = feature;
  switch (cut.kind) {
    case "hole": {
      const hole = makeHole(bench, lying, feature, tool, cut);
      if (cut.sink === undefined || hole.withheld.length > 0) return hole;
      return together([hole, makeSink(bench, lying, feature, sinkTool(toolbox, cut.sink), cut, cut.sink)]);
    }
    case "pocket": {
      const openings = lying.profile.holes.filter((hole) =>
        lying.part.features.some((each) => each.cut.kind === "opening" && made(each, hole)),
      );
      const area = lying.to.region(cut.region);
      return clearPocket(bench, lying, feature, tool, { area, depth: cut.depth, kind: "pocket", openings });
    }
    case "groove":
      return cutGroove(bench, lying, feature, tool, cut);
    case "edge":
      if (cut.form === "rebate") return cutRebate(bench, lying, feature, tool, cut);
      if (cut.form === "chamfer") return cutChamfer(bench, lying, feature, tool, cut);
      return cannot(lying, feature, tool, "a round-over is run along the edge by hand");
    case "mark":
      return engrave(bench, lying, feature, tool, cut);
    default:
      return nothingDone;
  }
}
