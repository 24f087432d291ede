import { extentsOf } from "../../geometry/measure.js";
import type { Profile } from "../../geometry/profile.js";
import type { Process } from "../../model/build.js";
import type { Part } from "../../model/part.js";
import type { BevelCut } from "../../model/rip.js";
import { wayFor } from "./handling.js";
import type { Sawing } from "./sawing.js";

/**
 * Bevels along the straight sides of parts, sawn when the part is cut free. The blade leans away from fence and stop
 * block, so that the part lies above it and is not caught below it, and what falls off lies free: the smaller side lies
 * down, and between fence and blade at the table is the blank less what the bevel takes of that side: a side opposite that
 * is bevelled already still reaches the fence with its larger face. A track lies on the larger side, with its edge at the
 * line, and the blade leans in under it. Cuts of one tilt follow one another, then those of one guide and one setting.
 *
 * Returns: only bevels along whole sides of rectangles; what else is bevelled is for the hand router.
 * Source: common practice, no source.
 */
export function bevelCuts(
  parts: readonly Part[],
  process: Process,
  sawing: Sawing,
  first: number,
): readonly BevelCut[] {
  const sawn = new Set(
    process.parts
      .filter(({ method, work }) => method !== "cnc" || work.some(({ by }) => by === "saw"))
      .map(({ part }) => part),
  );
  const cuts = parts.filter(({ id }) => sawn.has(id)).flatMap((part) => bevelsOf(part, sawing));
  cuts.sort((a, b) => tiltOf(a) - tiltOf(b) || orderOf(a) - orderOf(b) || b.setting - a.setting);
  return cuts.map((cut, i) => ({ ...cut, number: first + i, fresh: !isSetAlready(cut, cuts[i - 1]) }));
}

/** In millionths, so that the same tilt worked out two ways is one. */
const tiltOf = ({ tilt }: Bevel): number => Math.round(tilt * 1e6);

type Bevel = Omit<BevelCut, "number" | "fresh">;

/** Along the track first, while it is at hand, then at the fence, then at the stop block. */
const orderOf = ({ saw, way }: Bevel): number => (saw === "track" ? 0 : way === "rip" ? 1 : 2);

const isSetAlready = (cut: Bevel, before: Bevel | undefined): boolean =>
  before !== undefined &&
  tiltOf(before) === tiltOf(cut) &&
  orderOf(before) === orderOf(cut) &&
  Math.abs(before.setting - cut.setting) <= 1e-3;

function bevelsOf(part: Part, sawing: Sawing): Bevel[] {
  const { outer } = part.profile;
  if (outer.length !== 4 || outer.some(({ bulge }) => bulge !== 0)) return [];
  const { min, max } = extentsOf(part.blank);
  const [length, width] = [max.x - min.x, max.y - min.y];
  return outer.flatMap(({ by: edge }, i): Bevel[] => {
    const bevel = part.edges[edge]?.bevel ?? 0;
    if (bevel === 0) return [];
    const [run, across] = runsAlongX(outer, i) ? [length, width] : [width, length];
    const tilt = Math.abs(bevel);
    const down = bevel > 0 ? ("back" as const) : ("face" as const);
    const smaller = across - part.thickness * Math.tan(tilt);
    const { saw, way, trouble } = wayFor(run, across, smaller, sawing);
    const setting = saw === "track" ? across : smaller;
    return [{ part: part.id, edge, saw, way, tilt, down, setting, run, across, ...(trouble && { trouble }) }];
  });
}

function runsAlongX(profile: Profile, i: number): boolean {
  const a = profile[i]!;
  const b = profile[(i + 1) % profile.length]!;
  return Math.abs(b.x - a.x) > Math.abs(b.y - a.y);
}
