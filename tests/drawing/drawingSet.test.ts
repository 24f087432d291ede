import { describe, expect, it } from "vitest";
import type { Page } from "../../src/drawing/page.js";
import type { Build } from "../../src/model/build.js";
import { sampleBuild } from "../fixtures/build.js";
import { outsideFrame, overlapsOn, pagesOf, wordsOf } from "./pages.js";

const metric = pagesOf(sampleBuild());
const inches = pagesOf(sampleBuild({ unit: "in", denominator: 16 }));
const pageOf = (pages: readonly Page[], title: string) => pages.find((page) => page.title.startsWith(title))!;

describe("the drawings of a job", () => {
  it("have no two texts over one another, in millimetres or in inches", () => {
    expect([...metric, ...inches].flatMap(overlapsOn)).toEqual([]);
  });

  it("keep every text inside the frame", () => {
    expect([...metric, ...inches].flatMap(outsideFrame)).toEqual([]);
  });

  it("begin with the cautions and the cut list, then a page for each kind of part, then one for each sheet, and last the order of work", () => {
    const titles = metric.map(({ title }) => title.split("  ")[0]);
    expect(titles).toEqual(
      ["Read before you cut", "Cut list", "B1", "B2", "B3", "B5", "B6", "P1", "P1", "R1", "H1", "Sheet box 1"].concat([
        "Sheet box 1, continued",
        "Sheet plate offcut A",
        "Sheet plate offcut A, continued",
        "Order of work",
      ]),
    );
  });

  it("say on every page which build it belongs to and which sheet of how many it is", () => {
    const { hash } = sampleBuild();
    metric.forEach((page, i) => {
      expect(wordsOf(page)).toContain(hash);
      expect(wordsOf(page)).toContain(`${i + 1} of ${metric.length}`);
      expect(wordsOf(page)).toContain("Measure these bars: if they are wrong, do not scale from this sheet.");
    });
  });

  it("give every position of the box top that its circle of pilots does not give", () => {
    const words = wordsOf(pageOf(metric, "B1"));
    // openings and inserts at 35, 210, 385; joint screws half a board in from the edge, 18.2 / 2 = 9.1
    for (const number of ["420", "9.1", "35", "210", "385", "410.9", "105", "315"]) expect(words).toContain(number);
    expect(words).toContain("A ⌀233");
    expect(words.join(" ")).toContain("on ⌀248, first 22.5° above 3 o'clock");
  });

  it("give the plate's notch, radii and opening, and the groove on the page of its back", () => {
    const face = wordsOf(pageOf(metric, "P1"));
    for (const number of ["1027", "847", "778", "538", "749", "513.5", "233.5", "2 × R53.5", "2 × R15.5"]) {
      expect(face).toContain(number);
    }
    const back = wordsOf(metric.find(({ title }) => title === "P1  plate, back")!);
    expect(back).toContain("Seen from the back, turned over");
    expect(back.join(" ")).toContain("its middle 40 from the edge");
    expect(back).toContain("mark: front this way");
  });

  it("say what a part is made of, how thick that measured, what it weighs and how many there are", () => {
    const words = wordsOf(pageOf(metric, "B3")).join(" ");
    expect(words).toContain("MDF, measured 18.2 thick");
    expect(words).toContain("2 off: B3, B4");
    // 0.420 x 0.1136 x 0.0182 m x 750 kg/m3 = 0.651 kg (computed)
    expect(words).toContain("Mass 0.7 kg each");
  });

  it("show inches as fractions with millimetres in brackets for overall sizes", () => {
    // 1027 / 25.4 = 40.433; 40 7/16 = 40.4375 is the nearest sixteenth
    expect(wordsOf(pageOf(inches, "P1"))).toContain('40 7/16" [1027]');
    // 2.3 mm is nearest to 6/64 = 3/32 (0.09375 in = 2.38 mm)
    expect(wordsOf(pageOf(inches, "B1")).join(" ")).toContain('⌀2.3 mm (3/32")');
  });

  it("give what is sawn in the unit of the saw's step, on the job's paper, whatever the job shows", () => {
    const stepped = (build: Build, step: number): Build => ({
      ...build,
      shop: { ...build.shop, saw: { ...build.shop.saw, step } },
    });
    const sixteenths = pagesOf(stepped(sampleBuild(), 25.4 / 16));
    const bottom = pageOf(sixteenths, "B2");
    // 420 / 25.4 = 16.535; 16 9/16 = 16.5625 is the nearest sixteenth (16 1/2 is further off)
    for (const words of ['16 9/16" [420]', "inches [mm]"]) expect(wordsOf(bottom)).toContain(words);
    expect(bottom.size.paper).toBe("A4");
    expect(wordsOf(pageOf(sixteenths, "P1"))).toContain("1027");
    const halves = pagesOf(stepped(sampleBuild({ unit: "in", denominator: 16 }), 0.5));
    expect(wordsOf(pageOf(halves, "B2"))).toEqual(expect.arrayContaining(["420", "mm"]));
    expect(wordsOf(pageOf(halves, "Cut list"))).toContain("420 mm");
    expect([...sixteenths, ...halves].flatMap((page) => [...overlapsOn(page), ...outsideFrame(page)])).toEqual([]);
  });

  it("are drawn on metric paper for millimetres and on American paper for inches", () => {
    expect(new Set(metric.map(({ size }) => size.paper))).toEqual(new Set(["A4", "A3"]));
    expect(new Set(inches.map(({ size }) => size.paper))).toEqual(new Set(["Letter", "Tabloid"]));
  });
});
