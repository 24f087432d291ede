import { eachEdge } from "../geometry/measure.js";
import type { Path, Profile } from "../geometry/profile.js";
import { circle } from "../geometry/shapes.js";
import { tessellate, tessellatePath } from "../geometry/tessellate.js";
import type { FeatureWork, Layout, Plan, Process } from "../model/build.js";
import { featureName } from "../model/ids.js";
import type { Feature, Cut as PartCut } from "../model/part.js";
import type { Setup } from "../model/program.js";
import type { Cnc, Shop } from "../model/shop.js";
import { cutOf, rowOf } from "../shop/lookups.js";
import { rules } from "../shop/rules.js";
import type { Lying } from "./bench.js";
import { clampingsOf } from "./clampings.js";
import { boxOf, type Polygon, type Polygons, sweptLine, union, without } from "./simulation/polygons.js";
import type { Blind, Room, Stock } from "./simulation/stock.js";
import type { Cutter } from "./simulation/tracks.js";

type Built = { readonly shop: Shop; readonly plan: Plan; readonly process: Process; readonly layout: Layout };

/** What must be left of each part in a setup: from the part's own features, never from the paths that cut them. */
export function stocksOf(built: Built, setup: Setup, chord: number): readonly Stock[] {
  const clamping = clampingsOf(built.plan, built.process, built.layout).find(({ name }) => name === setup.name);
  return (clamping?.lying ?? []).map((lying) => stockOf(built.shop, lying, setup, chord));
}

/** The bits of a setup by their number. */
export function cuttersOf({ shop }: Built, setup: Setup): ReadonlyMap<number, Cutter> {
  return new Map(
    setup.runs.map(({ number, tool, d }) => {
      const bit = rowOf(shop.bits, tool);
      const pointed = bit?.kind === "v" || bit?.kind === "chamfer";
      return [number, { d, form: pointed ? "cone" : "flat", angle: bit?.angle ?? Math.PI / 2 }] as const;
    }),
  );
}

export function roomOf(setup: Setup, cnc: Cnc): Room {
  const deepest = Math.max(0, ...setup.pins.map(({ depth }) => depth - setup.thickness));
  return {
    length: setup.length,
    width: setup.width,
    thickness: setup.thickness,
    top: cnc.zero === "bed" ? setup.thickness : 0,
    safe: setup.safe,
    bed: { length: cnc.length, width: cnc.width },
    travel: cnc.travel,
    below: Math.max(rules.intoSpoilboard.value, deepest),
  };
}

function stockOf(shop: Shop, lying: Lying, setup: Setup, chord: number): Stock {
  const here = lying.work.flatMap((work): readonly Task[] => {
    const feature = lying.part.features.find(({ id }) => id === work.feature);
    return feature === undefined || setup.withheld.includes(feature.id) ? [] : [{ feature, work }];
  });
  const polygon = (profile: Profile): Polygon => tessellate(profile, chord);
  const openings = lying.profile.holes.filter((loop) => here.some(({ feature }) => made(feature, loop))).map(polygon);
  const bored = here.flatMap((task) => boredBy(shop, lying, task).map(polygon));
  const holes = [...lying.profile.holes.map(polygon), ...bored];
  return {
    name: lying.part.id,
    blank: without([polygon(lying.blank.outer)], holes),
    through: [...openings, ...bored],
    outside: here.some(({ feature }) => feature.cut.kind === "outline"),
    blind: here.flatMap((task) => blindOf(lying, task, setup, chord)),
  };
}

type Task = { readonly feature: Feature; readonly work: FeatureWork };

function made({ id, cut }: Feature, loop: Profile): boolean {
  if (cut.kind !== "opening") return false;
  const names = new Set([featureName(id), ...cut.region.outer.map(({ by }) => by)]);
  return loop.some(({ by }) => by.split("|").some((name) => names.has(name)));
}

/** A hole as wide as its drill, which may differ by a tenth. */
function boredBy(shop: Shop, lying: Lying, { feature: { cut }, work }: Task): readonly Profile[] {
  if (cut.kind !== "hole" || cut.depth !== "through") return [];
  return [circle(lying.to.point(cut.at), widthBy(shop, work, cut.d) / 2, "hole")];
}

function widthBy(shop: Shop, { tool }: FeatureWork, d: number): number {
  const bit = rowOf(shop.bits, tool ?? "");
  return bit?.kind === "drill" ? cutOf(bit) : d;
}

function blindOf(lying: Lying, { feature: { id, cut } }: Task, setup: Setup, chord: number): readonly Blind[] {
  const name = featureName(id);
  const polygon = (profile: Profile): Polygon => tessellate(profile, chord);
  const line = (path: Path, closed: boolean): Polygon => tessellatePath(closed ? [...path, path[0]!] : path, chord);
  switch (cut.kind) {
    case "pocket": {
      const { outer, holes } = lying.to.region(cut.region);
      return [{ name, area: without([polygon(outer)], holes.map(polygon)), depth: cut.depth, draft: 0 }];
    }
    case "groove":
      return [
        {
          name,
          area: sweptLine(line(lying.to.path(cut.path), cut.closed), cut.width / 2, chord),
          depth: cut.depth,
          draft: 0,
        },
      ];
    case "hole": {
      const at = lying.to.point(cut.at);
      const hole = { name, area: [polygon(circle(at, cut.d / 2, name))], draft: 0 };
      const blind = cut.depth === "through" ? [] : [{ ...hole, depth: cut.depth }];
      return cut.sink === undefined
        ? blind
        : [...blind, sunk(name, polygon(circle(at, cut.sink.d / 2, name)), cut.sink)];
    }
    case "edge":
      return edgeBlind(lying, name, cut, chord);
    case "mark":
      return engraved(setup, id, name);
    default:
      return [];
  }
}

function sunk(
  name: string,
  mouth: Polygon,
  { d, depth, angle }: { readonly d: number; readonly depth: number; readonly angle: number },
): Blind {
  const draft = Math.tan(angle / 2);
  return { name, area: [mouth], depth: angle > 0 ? d / 2 / draft : depth, draft: angle > 0 ? draft : 0 };
}

/** A band along the named edges; it reaches past the part, where nothing is asked. */
function edgeBlind(
  lying: Lying,
  name: string,
  cut: Extract<PartCut, { kind: "edge" }>,
  chord: number,
): readonly Blind[] {
  const lines: Polygons[number][] = [];
  for (const loop of [lying.profile.outer, ...lying.profile.holes])
    eachEdge(loop, (a, b) => {
      if (a.by.split("|").every((each) => cut.along.includes(each)))
        lines.push(tessellatePath([a, { ...b, bulge: 0, by: "" }], chord));
    });
  if (lines.length === 0) return [];
  const area = union(lines.flatMap((line) => sweptLine(line, cut.width, chord)));
  const draft = cut.form === "chamfer" ? cut.width / cut.depth : 0;
  return [{ name, area, depth: cut.depth, draft, band: { lines, width: cut.width } }];
}

/** Where the engraving's own strokes are, in a box: their form is the machine's affair, their depth is not. */
function engraved(setup: Setup, feature: Feature["id"], name: string): readonly Blind[] {
  const strokes = setup.runs.flatMap(({ operations }) => operations.filter((each) => each.feature === feature));
  if (strokes.length === 0) return [];
  const { x0, y0, x1, y1 } = boxOf([strokes.flatMap(({ moves }) => moves.map(({ to: [x, y] }) => ({ x, y })))]);
  const off = 1.5;
  const box = [
    { x: x0 - off, y: y0 - off },
    { x: x1 + off, y: y0 - off },
    { x: x1 + off, y: y1 + off },
    { x: x0 - off, y: y1 + off },
  ];
  return [{ name, area: [box], depth: 0.5, draft: 0, need: false }];
}
