import { type Cut, type Held, heldInside, heldOutside } from "./bridges.js";
import { uncutFloors } from "./floors.js";
import { lossesOf, type Spot } from "./losses.js";
import { areaOf, separate } from "./polygons.js";
import { type Fault, readProgram } from "./reader.js";
import type { Room, Stock } from "./stock.js";
import { sweeper } from "./swept.js";
import { type Cutter, tracksOf } from "./tracks.js";
import { faultsOfWays } from "./ways.js";

/** What became of one part. `waste`: how the waste in each opening is held that a bit does not clear whole. */
export type PartReport = {
  readonly name: string;
  readonly lost: readonly Spot[];
  readonly uncut: readonly Spot[];
  /** Absent where it is not cut out here. */
  readonly held?: Held;
  readonly waste: readonly Held[];
};

export type Report = { readonly faults: readonly Fault[]; readonly parts: readonly PartReport[] };

/**
 * Cuts the parts out of the sheet, from the text of the programs of one setup in the order in which they are run, and
 * says what was wrongly taken, what was left, and what still holds. It knows nothing of how the text came about.
 *
 * `cutters`: by their number in the machine's table. `chord`: how far arcs may stand off the lines they are reckoned
 * as, mm; 0.001 for a proof, ten times that for a look.
 */
export function simulate(
  texts: readonly string[],
  cutters: ReadonlyMap<number, Cutter>,
  stock: readonly Stock[],
  room: Room,
  chord: number,
): Report {
  const read = texts.map(readProgram);
  const steps = read.flatMap((each) => each.steps);
  const tracks = tracksOf(steps, room.top);
  const cut: Cut = { tracks, cutters, swept: sweeper(tracks, cutters, chord), room, chord };
  const unknown = [...new Set(tracks.map(({ tool }) => tool))].filter((tool) => !cutters.has(tool));
  return {
    faults: [
      ...read.flatMap(({ faults }) => faults),
      ...unknown.map((tool) => ({ line: 0, words: `tool ${tool} is not known` })),
      ...faultsOfWays(steps, room),
    ],
    parts: stock.map((part) => reportOf(part, cut)),
  };
}

function reportOf(part: Stock, cut: Cut): PartReport {
  const [outer] = separate(part.blank).reduce((a, b) => (areaOf(b) > areaOf(a) ? b : a));
  const inside = part.through.map((hole, i) => heldInside(hole, `opening ${i + 1}`, cut));
  return {
    name: part.name,
    lost: lossesOf(part, cut.swept, cut.room.thickness, cut.chord),
    uncut: [
      ...uncutFloors(part, cut.tracks, cut.cutters, cut.swept, cut.chord),
      ...inside.flatMap(({ uncut }) => uncut),
    ],
    ...(part.outside ? { held: heldOutside(outer!, cut) } : {}),
    waste: inside.flatMap(({ held }) => held ?? []),
  };
}
