import { tolerance } from "../../../geometry/tolerance.js";
import { rules } from "../../../shop/rules.js";
import type { RoundPortSpec } from "./roundKeys.js";

/** Outside diameter of a port's tube, mm; none where the job does not tell, or contradicts itself. */
export function outsideOf({ outside, inside, wall }: RoundPortSpec): number | undefined {
  const summed = inside === undefined || wall === undefined ? undefined : inside + 2 * wall;
  if (outside === undefined || summed === undefined) return outside ?? summed;
  return Math.abs(outside - summed) <= tolerance.contact ? outside : undefined;
}

/** As wide as what has to pass it, mm. */
export function holeFor({ hole, flares }: RoundPortSpec, outside: number): number {
  return hole ?? Math.max(outside, flares?.outer?.mouth ?? 0);
}

/** A size of a port that is less than others of its sizes ask. `key`: where the job gives it. */
export type SizeFault = {
  readonly what: string;
  readonly key: readonly string[];
  readonly size: number;
  readonly least: number;
};

/** How thick the blocks at a port's ends are, mm; 0 where there is none. */
export type Blocked = { readonly outer: number; readonly inner: number };

/** Which of a port's sizes do not go together; `depth`: of the wall it stands in, mm. */
export function sizeFaults(
  spec: RoundPortSpec,
  outside: number,
  depth: number,
  blocked: Blocked,
): readonly SizeFault[] {
  const { hole, flange, flares, elbow, long, blocks } = spec;
  const of = (what: string, key: readonly string[], size: number | undefined, least: number): readonly SizeFault[] =>
    size === undefined || size >= least - tolerance.samePoint ? [] : [{ what, key, size, least }];
  const [outer, inner] = [flares?.outer, flares?.inner];
  const bend = elbow === undefined ? 0 : elbow.radius * (elbow.turns ?? Math.PI / 2);
  const begins = Math.max(depth + blocked.outer, outer?.long ?? 0);
  const before = elbow === undefined ? begins : Math.max(begins, elbow.after);
  const after = Math.max(inner?.long ?? 0, blocked.inner, leastInside);
  const around = (across: number) => across + 2 * rules.web.value;
  return [
    ...of("outer flare", ["flares", "outer", "mouth"], outer?.mouth, outside),
    ...of("inner flare", ["flares", "inner", "mouth"], inner?.mouth, outside),
    ...of("hole", ["hole"], hole, outside),
    ...of("flange", ["flange", "across"], flange?.across, around(holeFor(spec, outside))),
    ...of("outer block", ["blocks", "outer", "across"], blocks?.outer?.across, around(holeFor(spec, outside))),
    ...of("inner block", ["blocks", "inner", "across"], blocks?.inner?.across, around(inner?.mouth ?? outside)),
    ...of("radius of the elbow", ["elbow", "radius"], elbow?.radius, outside / 2),
    ...of("straight before the elbow", ["elbow", "after"], elbow?.after, begins),
    ...of("length", ["long"], long, before + bend + after),
  ];
}

/** A port that ends nearer to its wall, or to its elbow, is none, mm. */
const leastInside = 1;
