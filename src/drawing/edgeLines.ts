import type { Point } from "../geometry/profile.js";
import type { Cut, Part, Side } from "../model/part.js";
import { type EdgeRun, runsBeside } from "./edgeRuns.js";
import type { Item, LineKind } from "./page.js";
import { lineThrough } from "./shapes.js";
import { pathToPaper, toPaper, type View } from "./view.js";

/** How far a centre line stands out of an edge, mm of paper. */
const beyond = 1.5;
/** From an edge to the line that says it is covered, mm of paper. */
const coveredAway = 1.4;

/** A chamfer, round-over or rebate: a narrow line where it ends on the face or back. */
export function edgeWork(cut: Extract<Cut, { kind: "edge" }>, side: Side, part: Part, view: View): readonly Item[] {
  const names = new Set(cut.along);
  const line = side === view.from ? "narrow" : "hidden";
  return [part.profile.outer, ...part.profile.holes].flatMap((profile, i) =>
    runsBeside(profile, names, i === 0 ? -cut.width : cut.width).map((run): Item => stroke(run, line, view)),
  );
}

/** Where a bevelled edge ends on the back: seen from the side that is smaller it is a line outside the face's outline. */
export function bevelLines(part: Part, view: View): readonly Item[] {
  return Object.entries(part.edges).flatMap(([name, { bevel }]) => {
    if (bevel === 0) return [];
    const seen = view.from === "back" || bevel < 0;
    return runsBeside(part.profile.outer, new Set([name]), -part.thickness * Math.tan(bevel)).map((run) =>
      stroke(run, seen ? "narrow" : "hidden", view),
    );
  });
}

/** A wide chain line beside each edge that a covering goes round. */
export function coveredLines(part: Part, view: View): readonly Item[] {
  const wrapped = Object.entries(part.edges).flatMap(([name, { finish }]) => (finish.kind === "wrapped" ? [name] : []));
  const away = coveredAway / view.scale;
  return wrapped.length === 0
    ? []
    : [part.profile.outer, ...part.profile.holes].flatMap((profile, i) =>
        runsBeside(profile, new Set(wrapped), i === 0 ? away : -away).map((run) => stroke(run, "covered", view)),
      );
}

function stroke(run: EdgeRun, line: LineKind, view: View): Item {
  return { kind: "stroke", path: pathToPaper(view, run.path), closed: run.closed, line };
}

/** A hole in an edge runs into the board unseen, square to the edge. */
export function edgeHole(cut: Extract<Cut, { kind: "hole" }>, edge: string, part: Part, view: View): readonly Item[] {
  const inward = inwardAt(part, edge, cut.at);
  if (inward === undefined || cut.depth === "through") return [];
  const place = (along: number, across: number): Point =>
    toPaper(view, {
      x: cut.at.x + inward.x * along - inward.y * across,
      y: cut.at.y + inward.y * along + inward.x * across,
    });
  const over = beyond / view.scale;
  const half = cut.d / 2;
  const walls = [place(0, half), place(cut.depth, half), place(cut.depth, -half), place(0, -half)];
  const axis = lineThrough([place(-over, 0), place(cut.depth + over, 0)], "centre");
  // Walls that would run into one another are one dashed line, and need no centre line.
  if (cut.d * view.scale < 1) return [lineThrough([place(-over, 0), place(cut.depth, 0)], "hidden")];
  return [lineThrough(walls, "hidden"), axis];
}

/** Into the board, square to the named straight edge that passes nearest to the place. */
function inwardAt(part: Part, edge: string, at: Point): Point | undefined {
  const { outer } = part.profile;
  const candidates = outer.flatMap((from, i) => {
    const to = outer[(i + 1) % outer.length]!;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    if (from.by !== edge || length === 0) return [];
    const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
    const t = Math.max(0, Math.min(length, (at.x - from.x) * along.x + (at.y - from.y) * along.y));
    const away = Math.hypot(from.x + t * along.x - at.x, from.y + t * along.y - at.y);
    return [{ away, inward: { x: -along.y, y: along.x } }];
  });
  return candidates.sort((a, b) => a.away - b.away)[0]?.inward;
}
