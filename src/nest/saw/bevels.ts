import { extentsOf } from "../../geometry/measure.js";
import type { Process } from "../../model/build.js";
import type { Part } from "../../model/part.js";
import type { Bevel, BevelCut, SawCut } from "../../model/rip.js";
import type { NestItem } from "../engine.js";
import { sameSize, wayFor } from "./handling.js";
import type { Sawing } from "./sawing.js";

/** A bevel of a part that is cut free, before its place in the list is known. */
export type PartBevel = Bevel & { readonly down: "face" | "back" };

/**
 * Bevels along the straight sides of parts that are cut free, less those that are `done` along a strip. The blade leans
 * away from fence and stop block, so that the part lies above it and is not caught below it, and what falls off lies free:
 * the smaller side lies down, and between fence and blade at the table is the blank less what the bevel takes of that
 * side: a side opposite that is bevelled already still reaches the fence with its larger face. A track lies on the larger
 * side, with its edge at the line, and the blade leans in under it.
 *
 * Returns: only bevels along whole sides of rectangles; what else is bevelled is for the hand router.
 * Source: common practice, no source.
 */
export function partBevels(
  parts: readonly Part[],
  process: Pick<Process, "parts">,
  sawing: Sawing,
  done: readonly Bevel[],
): readonly PartBevel[] {
  const sawn = new Set(
    process.parts
      .filter(({ method, work }) => method !== "cnc" || work.some(({ by }) => by === "saw"))
      .map(({ part }) => part),
  );
  const isDone = (part: Part, edge: string) =>
    done.some(({ edges }) => edges.some((each) => each.part === part.id && each.edge === edge));
  return parts
    .filter(({ id }) => sawn.has(id))
    .flatMap((part) => bevelledSides(part).filter(({ edge }) => !isDone(part, edge)))
    .map((side) => bevelOf(side, sawing));
}

/** A side of a part that is bevelled. `i`: the how manieth of its outline. */
export type BevelledSide = { readonly part: Part; readonly edge: string; readonly i: number; readonly bevel: number };

/** The sides of a rectangle that can be bevelled as they should be; none of other outlines. */
export const bevelledSides = (part: Part): readonly BevelledSide[] =>
  wantedSides(part).filter((side) => !leavesNothing(side));

/** The sides of a rectangle whose bevels, with those opposite that lean alike, leave nothing of its face or its back. */
export const impossibleSides = (part: Part): readonly BevelledSide[] => wantedSides(part).filter(leavesNothing);

const leavesNothing = (side: BevelledSide): boolean => takenOf(side) >= blankAlong(side).across - sameSize;

/** What a bevel takes of the smaller side, with the one opposite that leans alike, mm. */
export function takenOf({ part, i, bevel }: BevelledSide): number {
  const alike = wantedSides(part).filter((side) => side.i % 2 === i % 2 && side.bevel * bevel > 0);
  return alike.reduce((sum, side) => sum + part.thickness * Math.tan(Math.abs(side.bevel)), 0);
}

function wantedSides(part: Part): readonly BevelledSide[] {
  const { outer } = part.profile;
  if (outer.length !== 4 || outer.some(({ bulge }) => bulge !== 0)) return [];
  return outer.flatMap(({ by: edge }, i): BevelledSide[] => {
    const bevel = part.edges[edge]?.bevel ?? 0;
    return bevel === 0 ? [] : [{ part, edge, i, bevel }];
  });
}

/** How many sides of a part are bevelled along its length and across; undefined where none is. */
export function bevelsOf(part: Part): NestItem["bevels"] {
  const sides = bevelledSides(part);
  const lengthwise = sides.filter((side) => runsAlongX(side)).length;
  return sides.length === 0 ? undefined : { lengthwise, across: sides.length - lengthwise };
}

function bevelOf(side: BevelledSide, sawing: Sawing): PartBevel {
  const { part, edge, bevel } = side;
  const { run, across } = blankAlong(side);
  const tilt = Math.abs(bevel);
  const down = bevel > 0 ? "back" : "face";
  return { ...bevelAlong(run, across, part.thickness, tilt, sawing), edges: [{ part: part.id, edge }], down };
}

/** A part's blank along a side of it and across, mm. */
export function blankAlong(side: BevelledSide): Pick<Bevel, "run" | "across"> {
  const { min, max } = extentsOf(side.part.blank);
  const [length, width] = [max.x - min.x, max.y - min.y];
  return runsAlongX(side) ? { run: length, across: width } : { run: width, across: length };
}

function runsAlongX({ part, i }: BevelledSide): boolean {
  const { outer } = part.profile;
  const [a, b] = [outer[i]!, outer[(i + 1) % outer.length]!];
  return Math.abs(b.x - a.x) > Math.abs(b.y - a.y);
}

/** A bevel of a piece of board, of a part or of a strip that parts are still in. mm, rad. */
export function bevelAlong(
  run: number,
  across: number,
  thickness: number,
  tilt: number,
  sawing: Sawing,
): Omit<Bevel, "edges"> {
  const less = thickness * Math.tan(tilt);
  const { saw, way, trouble } = wayFor(run, across, across - less, sawing);
  const setting = saw === "track" ? across : across - less;
  return { saw, way, tilt, setting, run, across, less, ...(trouble && { trouble }) };
}

type Set = Pick<Bevel, "saw" | "way" | "tilt" | "setting">;

/** Cuts of one tilt follow one another, then those of one guide, along the track first, and one setting. */
export function inTurn<B extends Set>(bevels: readonly B[]): readonly (B & Pick<BevelCut, "fresh">)[] {
  const all = bevels.toSorted((a, b) => tiltOf(a) - tiltOf(b) || orderOf(a) - orderOf(b) || b.setting - a.setting);
  return all.map((bevel, i) => ({ ...bevel, fresh: !isSetAlready(bevel, all[i - 1]) }));
}

/** In millionths, so that the same tilt worked out two ways is one. */
export const tiltOf = ({ tilt }: Pick<Bevel, "tilt">): number => Math.round(tilt * 1e6);

/** Along the track first, while it is at hand, then at the fence, then at the stop block. */
const orderOf = ({ saw, way }: Pick<SawCut, "saw" | "way">): number => (saw === "track" ? 0 : way === "rip" ? 1 : 2);

const isSetAlready = (cut: Set, before: Set | undefined): boolean =>
  before !== undefined &&
  tiltOf(before) === tiltOf(cut) &&
  orderOf(before) === orderOf(cut) &&
  Math.abs(before.setting - cut.setting) <= 1e-3;
