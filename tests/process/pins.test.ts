import { describe, expect, it } from "vitest";
import { pinsOn } from "../../src/process/pins.js";
import { bed, feature, panel, processFor, rounded } from "./benchParts.js";

const recess = (side: "face" | "back", x: number) =>
  feature(
    side,
    { kind: "pocket", region: { outer: rounded(x, 50, 80, 60, 10, side), holes: [] }, depth: 6, corner: "bit" },
    { side },
  );
const pinned = { cnc: { ...bed, "second side": "pins" } } as const;

describe("dowels for a sheet that is turned over", () => {
  it("are there for a board with a part that needs two setups, and for no other", () => {
    const both = panel([recess("face", 50), recess("back", 200)]);
    expect(processFor(both, "cnc", pinned).registration).toMatchObject([{ board: "box", d: 8, tool: "8 straight" }]);
    expect(processFor(both, "cnc").registration).toEqual([]);
    expect(processFor(panel([recess("back", 50)]), "cnc", pinned).registration).toEqual([]);
  });

  it("stand where turning the sheet about its long side changes no place, and turning it the wrong way does", () => {
    const both = panel([recess("face", 50), recess("back", 200)]);
    const [pins] = processFor(both, "cnc", pinned).registration;
    const sheet = { length: 2440, width: 1220 };
    const places = pinsOn(pins!, sheet);
    const turned = places.map(({ x, y }) => ({ x, y: sheet.width - y }));
    expect(turned).toEqual(places);
    const wrong = places.map(({ x, y }) => ({ x: sheet.length - x, y }));
    for (const place of wrong) expect(places.some(({ x }) => Math.abs(x - place.x) < pins!.d)).toBe(false);
  });
});
