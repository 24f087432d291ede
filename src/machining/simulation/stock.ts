import { grown, type Polygons, sweptLine, union, without } from "./polygons.js";

/** Work that does not go through: what may be taken down to a depth. */
export type Blind = {
  readonly name: string;
  /** At the sheet's top. */
  readonly area: Polygons;
  readonly depth: number;
  /** How much its walls come in for each millimetre down: 0 upright, tan of half the angle of a cone. */
  readonly draft: number;
  /** Of a band along open lines: what it is on both sides of, which grows narrower with the draft. */
  readonly band?: { readonly lines: Polygons; readonly width: number };
  /** It may be taken but need not be. */
  readonly need?: false;
};

/** A part as it lies on the sheet: what must be left of it. */
export type Stock = {
  readonly name: string;
  /** Its holes go through, whenever they are cut. */
  readonly blank: Polygons;
  /** Those of its holes that are cut here, counter-clockwise. */
  readonly through: Polygons;
  /** It is cut out of the sheet here. */
  readonly outside: boolean;
  readonly blind: readonly Blind[];
};

/** The sheet and the room the machine has, in the frame of the program. mm. */
export type Room = {
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  /** z of the sheet's top in the program. */
  readonly top: number;
  /** Height over the top at which the cutter may travel. */
  readonly safe: number;
  readonly bed: { readonly length: number; readonly width: number };
  readonly travel: number;
  /** How far it may go below the sheet. */
  readonly below: number;
};

/** What two edges may differ by: the cut's allowance and what chords on both of them lose. mm. */
export const allowed = (chord: number): number => 0.01 + 2 * Math.max(0, chord - 0.001);

/** What may be taken at a depth. */
export function takenAt(blind: readonly Blind[], depth: number, chord: number): Polygons {
  const areas = blind.filter((each) => each.depth > depth).map((each) => areaAt(each, depth, chord));
  return areas.length === 0 ? [] : union(areas.flat());
}

/** A band is swept anew: to move a band's edges in would take too little at a corner of its lines. */
function areaAt({ area, draft, band }: Blind, depth: number, chord: number): Polygons {
  if (band === undefined || draft === 0) return grown(area, -draft * depth, chord);
  return union(band.lines.flatMap((line) => sweptLine(line, band.width - draft * depth, chord)));
}

/** What must be left at a depth, less the allowance at every edge. */
export function leftAt({ blank, blind }: Stock, depth: number, chord: number): Polygons {
  const tolerance = allowed(chord);
  const taken = grown(takenAt(blind, depth, chord), tolerance, chord);
  return without(grown(blank, -tolerance, chord), taken);
}
