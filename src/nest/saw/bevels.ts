import { extentsOf } from "../../geometry/measure.js";
import type { Profile } from "../../geometry/profile.js";
import type { Process } from "../../model/build.js";
import type { Part } from "../../model/part.js";
import type { BevelCut } from "../../model/rip.js";

/**
 * Bevels along the straight sides of parts, sawn when the part is cut free. The blade leans away from the fence, so that
 * what falls off lies above it and is not caught under it: the smaller side lies down, and between fence and blade at the
 * table is the blank less what the bevel takes of that side: a side opposite that is bevelled already still reaches the
 * fence with its larger face. Cuts of one tilt follow one another, then those of one fence setting.
 *
 * Returns: only bevels along whole sides of rectangles; what else is bevelled is for the hand router.
 */
export function bevelCuts(parts: readonly Part[], process: Process, first: number): readonly BevelCut[] {
  const sawn = new Set(
    process.parts
      .filter(({ method, work }) => method !== "cnc" || work.some(({ by }) => by === "saw"))
      .map(({ part }) => part),
  );
  const cuts = parts.filter(({ id }) => sawn.has(id)).flatMap(bevelsOf);
  cuts.sort((a, b) => a.tilt - b.tilt || b.setting - a.setting);
  return cuts.map((cut, i) => {
    const before = cuts[i - 1];
    const fresh = before === undefined || before.tilt !== cut.tilt || Math.abs(before.setting - cut.setting) > 1e-3;
    return { ...cut, number: first + i, fresh };
  });
}

function bevelsOf(part: Part): Omit<BevelCut, "number" | "fresh">[] {
  const { outer } = part.profile;
  if (outer.length !== 4 || outer.some(({ bulge }) => bulge !== 0)) return [];
  const { min, max } = extentsOf(part.blank);
  return outer.flatMap(({ by: edge }, i) => {
    const bevel = part.edges[edge]?.bevel ?? 0;
    if (bevel === 0) return [];
    const across = runsAlongX(outer, i) ? max.y - min.y : max.x - min.x;
    const tilt = Math.abs(bevel);
    const down = bevel > 0 ? ("back" as const) : ("face" as const);
    return [{ part: part.id, edge, tilt, down, setting: across - part.thickness * Math.tan(tilt) }];
  });
}

function runsAlongX(profile: Profile, i: number): boolean {
  const a = profile[i]!;
  const b = profile[(i + 1) % profile.length]!;
  return Math.abs(b.x - a.x) > Math.abs(b.y - a.y);
}
