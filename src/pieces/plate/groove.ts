import { clipPath } from "../../geometry/path.js";
import type { Path, Profile, Region } from "../../geometry/profile.js";
import { circle } from "../../geometry/shapes.js";
import { type Doubt, sureOffset } from "../../geometry/sure.js";
import type { Origin } from "../../input/finding.js";
import { rules } from "../../shop/rules.js";
import type { Draft } from "../common/part.js";
import type { PlateCovering } from "./covering.js";

/** The back groove at the wrap line: one run a feature, and the names of the holes that it stops short of. */
export type Groove = {
  readonly drafts: readonly Draft[];
  readonly brokenAt: readonly string[];
  readonly depth: number;
  readonly wantedDepth: number;
  /** Where the wrap line is not to be trusted; there is no groove then. */
  readonly doubt?: Doubt;
};

/** A hole on the way, as much as the groove must know of it. */
export type HoleOnBack = { readonly name: string; readonly x: number; readonly y: number; readonly d: number };

/**
 * A shallow groove on the back, `wrap` inside every wrapped edge: the knife runs in it and the cut end of the covering
 * lies in it. As deep as the covering is thick when pressed, never over a third of the board. It runs out to the edge
 * where a bare edge meets a wrapped one, and stops short of holes.
 *
 * Shape: `region` is the plate as cut, with notches and openings but without bolt holes.
 */
export function backGroove(
  region: Region,
  covering: PlateCovering,
  thickness: number,
  holes: readonly HoleOnBack[],
  from: readonly Origin[],
): Groove {
  const width = rules.wrapGroove.value;
  const depth = Math.min(covering.clamped, thickness * rules.backDepth.value);
  const blocked = holes.map((hole) => ({
    name: hole.name,
    region: { outer: circle(hole, hole.d / 2 + width / 2 + rules.grooveStopsShort.value, hole.name), holes: [] },
  }));
  const inside = sureOffset(region, (by) => (covering.over(by) ? -covering.wrap : 0));
  const lines = wrapLines(inside.value ?? [], covering);
  const runs = lines.flatMap((line) =>
    clipLine(
      line,
      blocked.map((b) => b.region),
    ),
  );
  const drafts = runs.map(
    (run, index): Draft => ({
      name: `groove.${index + 1}`,
      from,
      side: "back",
      cut: { kind: "groove", path: run.path, closed: run.closed, width, depth },
    }),
  );
  const brokenAt = blocked.filter((hole) => lines.some((line) => meets(line, hole.region))).map((hole) => hole.name);
  const { doubt } = inside;
  return { drafts, brokenAt, depth, wantedDepth: covering.clamped, ...(doubt && { doubt }) };
}

type Line = { readonly path: Path; readonly closed: boolean };

/** The wrap lines: each loop of what is inside the wrap, where its edges are wrapped. */
function wrapLines(inside: readonly Region[], covering: PlateCovering): readonly Line[] {
  return inside.flatMap((inner) => [inner.outer, ...inner.holes]).flatMap((loop) => wrappedRuns(loop, covering));
}

/** The runs of a loop whose edges are wrapped: the whole loop where all are. */
function wrappedRuns(loop: Profile, covering: PlateCovering): readonly Line[] {
  const wrapped = loop.map((vertex) => covering.over(vertex.by));
  if (wrapped.every(Boolean)) return [{ path: loop, closed: true }];
  const start = wrapped.findIndex((is, index) => is && !wrapped[(index + loop.length - 1) % loop.length]);
  if (start < 0) return [];
  const runs: Line[] = [];
  let run: Profile[number][] = [];
  for (let step = 0; step <= loop.length; step++) {
    const index = (start + step) % loop.length;
    const vertex = loop[index]!;
    if (step < loop.length && wrapped[index]) run.push(vertex);
    else if (run.length > 0) {
      runs.push({ path: [...run, { ...vertex, bulge: 0 }], closed: false });
      run = [];
    }
  }
  return runs;
}

function clipLine(line: Line, regions: readonly Region[]): readonly Line[] {
  const blocking = regions.filter((region) => meets(line, region));
  if (blocking.length === 0) return [line];
  return clipPath(line.path, line.closed, blocking, "outside").map((path) => ({ path, closed: false }));
}

function meets(line: Line, region: Region): boolean {
  return clipPath(line.path, line.closed, [region], "inside").length > 0;
}
