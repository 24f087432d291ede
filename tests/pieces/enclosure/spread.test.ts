import { describe, expect, it } from "vitest";
import { volumeInWords } from "../../../src/model/volume.js";
import { thicknessOff } from "../../../src/pieces/enclosure/spread.js";
import { starterShop } from "../../../src/shop/starter.js";
import { type Change, planned } from "../planned.js";

const box = (path: string, value: unknown): Change => [["pieces", "box", ...path.split(".")], value];
const alone: readonly Change[] = [
  [["pieces", "plate"], undefined],
  [["pieces", "ring"], undefined],
  box("driver", undefined),
  box("terminal", undefined),
  box("net", undefined),
  box("outside", { width: 536.4, depth: 436.4, height: 186.4 }),
  box("stands", { x: 100, y: 100 }),
  [["boards", "plate", "measured"], 12],
];
/** A board that is measured as other thickness or not at all. */
const board = (measured: number | undefined): Change => [["boards", "box", "measured"], measured];

function airOf(changes: readonly Change[], shop = starterShop()) {
  return planned([...alone, ...changes], shop).plan.built.air;
}

const net = (changes: readonly Change[]) => airOf(changes)[0]!.terms.reduce((sum, { litres }) => sum + litres, 0);

describe("how far a box's volume may be off", () => {
  it("is that of its walls by the reading and of its sizes by the cut, worked by hand", () => {
    // inside 500 x 400 x 150 with board of 18.2: walls 2 x (0.2 + 0.075 + 0.06) m2 = 0.67 m2, 0.67 L for each mm
    // read to 0.05: 0.0335 L; cut by the machine to 0.1: section 0.9 m x 0.15 m = 0.135 L/mm, length 0.2 L/mm
    const { worst, likely } = airOf([])[0]!.spread!;
    expect(worst).toBeCloseTo(0.0335 + 0.0135 + 0.02, 9);
    expect(likely).toBeCloseTo(Math.hypot(0.0335, 0.0135, 0.02), 9);
  });

  it("covers the box whose boards are really off, to first order", () => {
    const step = 0.05;
    const [thin, thick] = [net([board(18.2 - step)]), net([board(18.2 + step)])];
    const cutting = 0.0135 + 0.02;
    expect(airOf([])[0]!.spread!.worst - cutting).toBeCloseTo((thin - thick) / 2, 5);
  });

  it("counts a double wall for both of its boards, each by its own batch", () => {
    const front = box("panels", { front: { double: "plate" } });
    const both =
      airOf([front])[0]!.spread!.worst - airOf([front, [["boards", "plate", "measured"], undefined]])[0]!.spread!.worst;
    // the front's inside, 500 x 150, of unmeasured 12 mm MDF, 0.2 instead of the reading's 0.05
    expect(-both).toBeCloseTo((0.2 - 0.05) * 0.075, 9);
  });

  it("lets a divider take from the chamber on its far side only, and from both where it stands in the middle", () => {
    const at = (place: unknown) =>
      airOf([box("dividers", [{ across: "width", at: place }])]).map((air) => air.spread!.worst);
    const grown = (place: unknown) => {
      const inner = box("dividers", [{ across: "width", at: place, board: "plate" }]);
      const loose = airOf([inner, [["boards", "plate", "measured"], undefined]]).map((air) => air.spread!.worst);
      return loose.map((worst, i) => worst - airOf([inner])[i]!.spread!.worst);
    };
    expect(at(200)).toHaveLength(2);
    // the divider is 400 x 150
    const more = (0.2 - 0.05) * 0.06;
    expect(grown(200)[0]).toBeCloseTo(0, 9);
    expect(grown(200)[1]).toBeCloseTo(more, 9);
    for (const each of grown("middle")) expect(each).toBeCloseTo(more / 2, 9);
  });

  it("takes half of the saw's step for what the saw cuts", () => {
    const shop = starterShop();
    const sawn = airOf([[["cut by"], "saw"]], { ...shop, saw: { ...shop.saw, step: 2 } })[0]!;
    const machined = airOf([])[0]!;
    // 1 mm instead of 0.1 on sizes that are nearly the same
    expect(sawn.spread!.worst - machined.spread!.worst).toBeCloseTo(0.9 * (0.135 + 0.2), 1);
  });

  it("believes a measured board to the reading, and any other as far as its standard lets it go", () => {
    const { job, shop } = planned(alone);
    const off = (stock: string, measured?: number) =>
      thicknessOff("b", { job: { ...job, boards: { b: { stock, ...(measured && { measured }) } } }, shop });
    // EN 622-1 (from memory): 0.2 to 19 mm, 0.3 over it; EN 315 (from memory): 0.4 + 0.03 t below
    expect(off("mdf-18", 18.1)).toBe(0.05);
    expect(off("mdf-18")).toBe(0.2);
    const [thick] = Object.entries(shop.boards).find(([, row]) => row.material === "MDF" && row.thickness > 19)!;
    expect(off(thick)).toBe(0.3);
    const [ply, row] = Object.entries(shop.boards).find(([, each]) => each.material === "birch plywood")!;
    expect(off(ply)).toBeCloseTo(0.4 + 0.03 * row.thickness, 9);
  });

  it("is told with the volume", () => {
    const [air] = airOf([box("net", "30 L")]);
    expect(volumeInWords(air!, { unit: "mm" })).toBe("30 L net, 30 L wanted, ±0.07 L at worst, ±0.04 L likely");
    expect(volumeInWords(air!, { unit: "in", denominator: 16 })).toContain("±0.002 ft3 at worst");
  });
});
