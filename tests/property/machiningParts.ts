import fc from "fast-check";
import { difference } from "../../src/geometry/boolean.js";
import { relieve } from "../../src/geometry/corners.js";
import type { Profile, Region } from "../../src/geometry/profile.js";
import { circle, rectangle } from "../../src/geometry/shapes.js";
import { featureId, partId, pieceId } from "../../src/model/ids.js";
import type { Cut, Feature, Part } from "../../src/model/part.js";
import { panel, rounded } from "../process/benchParts.js";

// Parts of a workshop's kinds in odd sizes, each with work of every kind somewhere in the set, four to a sheet.

/** The bit that goes round the parts: what it measures. */
export const bits = {
  six: { kind: "straight", d: 6, measured: 5.97, flutes: 2, "cutting length": 25 },
  twelve: { kind: "straight", d: 12, flutes: 2, "cutting length": 40 },
  compressing: { kind: "compression", d: 8, measured: 8.03, flutes: 2, "cutting length": 32, "up-cut": 9 },
} as const;
export type Round = keyof typeof bits;

const size = (min: number, max: number) => fc.integer({ min: min * 4, max: max * 4 }).map((quarters) => quarters / 4);

type Outline = { readonly outer: Profile; readonly features: readonly [string, Cut][] };

const sides = ["front", "right", "back", "left"] as const;

/** A rectangle, one with a rounded or a relieved notch, one with rounded corners, a disc. */
function outlineOf(kind: number, w: number, h: number, radius: number): Outline {
  if (kind === 1) return { outer: rounded(0, 0, w, h, Math.min(w, h) / 5, "front"), features: [] };
  if (kind === 2) return { outer: circle({ x: w / 2, y: w / 2 }, w / 2, "front"), features: [] };
  const plain = rectangle(0, 0, w, h, [...sides]);
  if (kind === 0) return { outer: plain, features: [] };
  const notch = { outer: rounded(w - 40, h / 4, 80, h / 3, radius, "notch"), holes: [] };
  const [cut] = difference({ outer: plain, holes: [] }, [notch]);
  return { outer: cut!.outer, features: [["notch", { kind: "notch", region: notch, corner: "bit" }]] };
}

/** An opening: round, rounded, relieved for what seats in it, or a slot just as wide as the bit. */
function openingOf(kind: number, w: number, h: number, radius: number): Profile {
  const [x, y] = [w / 2 - 25, h / 2 - 20];
  if (kind === 0) return circle({ x: w / 2, y: h / 2 }, 22, "window");
  if (kind === 1) return rounded(x, y, 50, 40, radius, "window");
  if (kind === 2) return relieve(rectangle(x, y, x + 50, y + 40, "window"), radius, "diagonal", "outside").profile;
  return rounded(x, y, 50, 2 * radius, radius, "window");
}

const region = (outer: Profile): Region => ({ outer, holes: [] });

type Sketch = {
  readonly w: number;
  readonly h: number;
  readonly outline: number;
  readonly opening: number;
  readonly more: number;
  readonly glued: number;
};

function partOf({ w, h, outline, opening, more, glued }: Sketch, index: number, radius: number): Part {
  const id = partId(pieceId("set"), `p${index}`);
  const made = outlineOf(outline, w, outline === 2 ? w : h, radius);
  const tall = outline === 2 ? w : h;
  const drafts: [string, Cut][] = [
    ["outline", { kind: "outline", region: region(made.outer), corner: "bit" }],
    ...made.features,
    ...extra(more, w, tall),
  ];
  const holes: Profile[] = [];
  if (opening < 4) {
    const loop = openingOf(opening, w, tall, radius);
    holes.push(loop);
    drafts.push(["window", { kind: "opening", region: region(loop), corner: "bit" }]);
  }
  const features = drafts.map(
    ([name, cut]): Feature => ({
      id: featureId(id, name),
      from: [{ file: "job.yaml", path: [name] }],
      side: "face",
      stage: "sheet",
      cut,
    }),
  );
  const profile = { outer: made.outer, holes };
  const joint = { bevel: 0, flush: 0, finish: { kind: "joint" as const, joint: "set" } };
  const edges = Object.fromEntries(sides.slice(0, glued).map((name) => [name, joint]));
  return { ...panel(), id, role: `p${index}`, profile, blank: profile, features, edges };
}

/** Work that does not go through, in the corner at the origin that every outline has room for. */
function extra(kind: number, w: number, h: number): [string, Cut][] {
  const at = { x: w / 2, y: h / 2 - 36 };
  const line = [-14, 14].map((dx) => ({ x: w / 2 + dx, y: h / 2 + 34, bulge: 0, by: "groove" }));
  const all: [string, Cut][] = [
    ["hole", { kind: "hole", at, d: 5, depth: "through", sink: { d: 9, depth: 2, angle: Math.PI / 2 } }],
    ["bore", { kind: "hole", at, d: 17.3, depth: 9 }],
    ["groove", { kind: "groove", path: line, closed: false, width: 6.4, depth: 5 }],
    [
      "pocket",
      {
        kind: "pocket",
        region: region(rounded(w / 2 - 15, h / 2 - 46, 30, 18, 6.1, "pocket")),
        depth: 6,
        corner: "bit",
      },
    ],
    ["rebate", { kind: "edge", form: "rebate", along: ["front"], width: 9, depth: 5, angle: 0 }],
    ["chamfer", { kind: "edge", form: "chamfer", along: ["front"], width: 4, depth: 4, angle: Math.PI / 4 }],
  ];
  return all
    .filter((_, i) => kind & (1 << i))
    .filter(([name], i, kept) => name !== "bore" || kept.length === 1 || i === 0);
}

const sketch: fc.Arbitrary<Sketch> = fc.record({
  w: size(130, 420),
  h: size(130, 300),
  outline: fc.integer({ min: 0, max: 3 }),
  opening: fc.integer({ min: 0, max: 5 }),
  more: fc.integer({ min: 0, max: 63 }),
  glued: fc.integer({ min: 0, max: 4 }),
});

/** Up to eight parts and how they are cut. */
export const sets = fc
  .record({
    sketches: fc.array(sketch, { minLength: 1, maxLength: 8 }),
    round: fc.constantFrom<Round>("six", "twelve", "compressing"),
    direction: fc.constantFrom("climb" as const, "conventional" as const),
    hold: fc.constantFrom("tabs" as const, "tabs" as const, "skin" as const),
    share: fc.constantFrom(0.5, 1),
    turn: fc.constantFrom(0, Math.PI / 2, Math.PI),
    backUp: fc.boolean(),
    side: fc.constantFrom<1 | 2>(1, 1, 2),
  })
  .map(({ sketches, ...how }) => {
    const bit: { readonly d: number; readonly measured?: number } = bits[how.round];
    const radius = (bit.measured ?? bit.d) / 2;
    return { ...how, radius, parts: sketches.map((one, i) => partOf(one, i, radius)) };
  });

/** Parts for timing, the same in every run, for a bit of 12. */
export const benchParts = (count: number): readonly Part[] =>
  fc.sample(sketch, { seed: 20310409, numRuns: count }).map((one, i) => partOf(one, i, 6));
