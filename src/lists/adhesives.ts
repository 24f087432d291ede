import { eachEdge, edgeLength } from "../geometry/measure.js";
import { formatNumber } from "../input/number.js";
import type { Build } from "../model/build.js";
import type { Buy } from "./buy.js";
import { clothsOf } from "./cloth.js";

// How far adhesives go; all common practice, no source. The low end of each range: running out costs more than a rest.
/** m2 of one surface that a litre of contact adhesive covers, brushed (2.5 to 3). Two surfaces make a bond. */
const contactM2PerL = 2.5;
/** m of joint that a 295 mL tube lays at a bead of 6 mm. */
const beadMPerTube = 10.4;

/** What the joints and coverings of a build take in adhesive. */
export function adhesivesOf(build: Build): readonly Buy[] {
  return [...jointGlue(build), ...contactAdhesive(build)];
}

function jointGlue({ plan }: Build): readonly Buy[] {
  const metres = plan.built.joints
    .filter(({ glue }) => glue)
    .reduce((sum, { into, edges }) => sum + edgesLength(plan, into, edges) / 1000, 0);
  if (metres === 0) return [];
  return [
    {
      kind: "adhesive",
      item: "adhesive for joints, 295 mL tube",
      count: Math.ceil(metres / beadMPerTube),
      note: `${formatNumber(metres, 1)} m of joint at a 6 mm bead`,
    },
  ];
}

function edgesLength({ built }: Build["plan"], id: string, names: readonly string[]): number {
  const part = built.parts.find((each) => each.id === id);
  let sum = 0;
  eachEdge(part?.profile.outer ?? [], (a, b) => {
    if (names.includes(a.by)) sum += edgeLength(a, b);
  });
  return sum;
}

function contactAdhesive({ plan }: Build): readonly Buy[] {
  const cloths = plan.built.parts.flatMap(clothsOf);
  const m2 = cloths.reduce((sum, { length, width }) => sum + (length * width) / 1e6, 0);
  if (m2 === 0) return [];
  return [
    {
      kind: "adhesive",
      item: "contact adhesive, rated 80 °C or more",
      count: Math.ceil(((2 * m2) / contactM2PerL) * 10) / 10,
      unit: "L",
      note: `${formatNumber(m2, 2)} m2 bonded, two surfaces, brushed`,
    },
  ];
}
