import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Show } from "../../src/input/show.js";
import type { Build } from "../../src/model/build.js";
import { featureId, pieceId } from "../../src/model/ids.js";
import type { Feature, Part } from "../../src/model/part.js";
import { sampleBuild, samplePart } from "../fixtures/build.js";
import { circleAt, rectangleAt } from "../fixtures/outlines.js";
import { outsideFrame, overlapsOn, pagesOf, wordsOf } from "./pages.js";

type Hole = { readonly x: number; readonly y: number; readonly d: number };

/** The sample with one part alone: a rectangle with holes. */
function buildOf(
  length: number,
  width: number,
  holes: readonly Hole[],
  show: Show,
  changes: Partial<Part> = {},
): Build {
  const build = sampleBuild(show);
  const base = samplePart("B2");
  const outer = rectangleAt(0, 0, length, width, ["front", "right", "back", "left"]);
  const drilled = holes.map(
    ({ x, y, d }, i): Feature => ({
      id: featureId(base.id, `hole.${i}`),
      from: [],
      side: "face",
      cut: { kind: "hole", at: { x, y }, d, depth: "through" },
      stage: "sheet",
    }),
  );
  const profile = { outer, holes: holes.map(({ x, y, d }) => circleAt(x, y, d, "hole")) };
  const part: Part = { ...base, profile, blank: profile, features: drilled, ...changes };
  const built = { ...build.plan.built, parts: [part] };
  return { ...build, plan: { ...build.plan, built }, layout: { ...build.layout, sheets: [] } };
}

function faults(build: Build): readonly string[] {
  return pagesOf(build).flatMap((page) => [...overlapsOn(page), ...outsideFrame(page)]);
}

const shows: readonly Show[] = [{ unit: "mm" }, { unit: "in", denominator: 32 }];

describe("awkward parts", () => {
  it.each([
    ["a long strip", 2400, 38],
    ["a tall strip", 38, 2400],
    ["a small block", 18, 12],
    ["a whole sheet", 2440, 1220],
  ])("%s is drawn with nothing over anything", (_, length, width) => {
    for (const show of shows) expect(faults(buildOf(length, width, [], show))).toEqual([]);
  });

  it("a part with more holes than numbers find room for gets a table, every hole in it", () => {
    const holes = Array.from({ length: 60 }, (_, i) => ({ x: 7 + ((i * 37) % 386), y: 9 + ((i * 53) % 181), d: 3 }));
    const build = buildOf(400, 200, holes, { unit: "mm" });
    expect(faults(build)).toEqual([]);
    const words = pagesOf(build).flatMap(wordsOf);
    for (const [i, { x, y }] of holes.entries()) {
      expect(words).toContain(`A${i + 1}`);
      expect(words).toContain(`${x}`);
      expect(words).toContain(`${y}`);
    }
  });

  it("holes anywhere in parts of any size have words that neither touch nor leave the frame", () => {
    const size = fc.integer({ min: 20, max: 1500 });
    const place = fc.record({
      x: fc.double({ min: 0.05, max: 0.95, noNaN: true }),
      y: fc.double({ min: 0.05, max: 0.95, noNaN: true }),
    });
    fc.assert(
      fc.property(
        size,
        size,
        fc.array(place, { maxLength: 14 }),
        fc.constantFrom(...shows),
        (length, width, places, show) => {
          const holes = places.map(({ x, y }, i) => ({ x: x * length, y: y * width, d: 3 + (i % 3) }));
          expect(faults(buildOf(length, width, holes, show))).toEqual([]);
        },
      ),
      { seed: 3, numRuns: 40 },
    );
  });

  it("long names are cut short in the title and wrapped in the lists", () => {
    const name = "the very long name of a piece that somebody wrote without thinking of paper ".repeat(3).trim();
    const build = buildOf(300, 200, [], { unit: "mm" }, { piece: pieceId(name), role: "panel" });
    expect(faults(build)).toEqual([]);
    expect(faults(buildOf(300, 200, [], { unit: "mm" }, { piece: pieceId("x".repeat(200)), role: "panel" }))).toEqual(
      [],
    );
  });

  it("an oversize blank is drawn round the outline and its size is told", () => {
    const edge = { bevel: 0, flush: 3, finish: { kind: "bare" as const } };
    const blank = { outer: rectangleAt(-3, -3, 306, 206, ["front", "right", "back", "left"]), holes: [] };
    const build = buildOf(300, 200, [], { unit: "mm" }, { blank, edges: { front: edge } });
    const page = pagesOf(build).find(({ title }) => title.startsWith("B2"))!;
    expect(wordsOf(page).join(" ")).toContain("Cut 306 × 206 first");
    expect(page.items.filter((item) => item.kind === "stroke" && item.line === "phantom").length).toBe(1);
    expect(faults(build)).toEqual([]);
  });
});

describe("a bevelled strip", () => {
  const bevelled = (bevel: number, show: Show): Build => {
    const bare = { finish: { kind: "bare" }, flush: 0 } as const;
    const blank = {
      outer: rectangleAt(0, 0, 900, bevel < 0 ? 64.4 : 60, ["blank", "blank", "blank", "blank"]),
      holes: [],
    };
    return buildOf(900, 60, [], show, { thickness: 12.1, edges: { back: { ...bare, bevel } }, blank });
  };
  const angle = (20 * Math.PI) / 180;

  it("says what to cut first, which edge is sawn at which angle, and how large the back is", () => {
    const words = (bevel: number) =>
      pagesOf(bevelled(bevel, { unit: "mm" }))
        .flatMap(wordsOf)
        .join(" ");
    expect(words(-angle)).toContain("Face 900 × 60 when finished");
    expect(words(-angle)).toContain("Cut square to 900 × 64.4 first, then saw the bevels: back 20°, the back wider");
    expect(words(angle)).toContain("Cut square to 900 × 60 first, then saw the bevels: back 20°, the face wider");
    expect(words(angle)).toContain("The back then measures 900 × 55.6");
    expect(words(angle)).not.toContain("no other work");
  });

  it.each(shows)("keeps its words apart and in the frame, in $unit", (show) => {
    expect([...faults(bevelled(angle, show)), ...faults(bevelled(-angle, show))]).toEqual([]);
  });
});
