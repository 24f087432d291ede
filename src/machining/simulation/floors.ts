import { type Spot, spotsOf } from "./losses.js";
import { both, boxOf, grown, meet, type Polygons, widened, without } from "./polygons.js";
import { type Blind, type Stock, takenAt } from "./stock.js";
import type { Swept } from "./swept.js";
import type { Cutter, Track } from "./tracks.js";

/** Just above a floor, and the edge all round that the wall may stand in, mm. */
const over = 0.01;
const edge = 0.02;

/** What was to be taken and is still there, but for the corners that a round bit leaves. */
export function uncutFloors(
  stock: Stock,
  tracks: readonly Track[],
  cutters: ReadonlyMap<number, Cutter>,
  swept: Swept,
  chord: number,
): readonly Spot[] {
  return stock.blind
    .filter(({ need }) => need !== false)
    .flatMap((blind) =>
      depthsOf(blind).flatMap((depth) => {
        const round = blind.draft > 0 ? blind.draft * (blind.depth - depth) : roundOf(blind, tracks, cutters);
        const wanted = both(reachable(takenAt([blind], depth, chord), round, chord), stock.blank);
        return spotsOf(blind.name, depth, without(wanted, swept(depth, widened(boxOf(blind.area), 1))));
      }),
    );
}

/** An upright wall is looked at just above its floor, a sloping one on its way down too. */
function depthsOf({ depth, draft }: Blind): readonly number[] {
  return draft > 0 ? [over, depth / 2, depth - 0.05].filter((each) => each > 0) : [depth - over];
}

/** What a disc can clear, in from its walls by a hair: opened with a disc that is a little thinner, so that a hole as wide
 *  as the bit counts. Where no disc of that size goes in, all of it is asked for: another bit should have cut it. */
export function reachable(area: Polygons, radius: number, chord: number): Polygons {
  const thin = Math.max(0, radius - edge / 2);
  const ways = grown(area, -Math.max(thin, edge), chord);
  return ways.length === 0 ? grown(area, -edge, chord) : grown(ways, Math.max(0, thin - edge), chord);
}

/** Radius of the smallest straight bit that came down to the floor. */
function roundOf({ area, depth }: Blind, tracks: readonly Track[], cutters: ReadonlyMap<number, Cutter>): number {
  const box = boxOf(area);
  const radii = tracks
    .filter((track) => meet(track.box, box) && track.pieces.some(({ to }) => to[2] < -depth + over))
    .flatMap(({ tool }) => cutters.get(tool) ?? [])
    .map(({ d }) => d / 2);
  return radii.length === 0 ? 0 : Math.min(...radii);
}
