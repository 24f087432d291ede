import { offsetEach } from "../geometry/offset.js";
import type { Path, Profile, Vertex } from "../geometry/profile.js";

/** Edges of a profile that follow one another; closed where they are all of it. */
export type EdgeRun = { readonly path: Path; readonly closed: boolean };

/** The edges that `counts` takes by name, joined where one follows another. */
export function runsAlong(profile: Profile, counts: (by: string) => boolean): readonly EdgeRun[] {
  const start = profile.findIndex(({ by }) => !counts(by));
  if (start < 0) return [{ path: profile, closed: true }];
  const runs: Vertex[][] = [];
  let run: Vertex[] = [];
  for (let i = 0; i <= profile.length; i++) {
    const vertex = profile[(start + i) % profile.length]!;
    const goesOn = i < profile.length && counts(vertex.by);
    if (goesOn || run.length > 0) run.push(goesOn ? vertex : { ...vertex, bulge: 0 });
    if (goesOn || run.length === 0) continue;
    runs.push(run);
    run = [];
  }
  return runs.map((path) => ({ path, closed: false }));
}

/** Lines beside the named edges, `distance` mm outside them or, where it is negative, inside. */
export function runsBeside(profile: Profile, names: ReadonlySet<string>, distance: number): readonly EdgeRun[] {
  const counts = (by: string) => by.split("|").every((name) => names.has(name)) || names.has(by);
  const moved = offsetEach(profile, (by) => (counts(by) ? distance : 0), { corners: "sharp" });
  return moved.flatMap((each) => runsAlong(each, counts));
}
