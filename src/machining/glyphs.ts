import type { Point } from "../geometry/profile.js";

/** Strokes of the signs, drawn for this: places on a grid 4 wide and 6 high, "04" is x 0, y 4; a stroke ends at "|". */
const signs: Readonly<Record<string, string>> = {
  "0": "10 01 05 16 36 45 41 30 10",
  "1": "05 26 20 | 10 30",
  "2": "05 16 36 45 44 00 40",
  "3": "06 46 23 33 42 41 30 10 01",
  "4": "30 36 02 42",
  "5": "46 06 03 33 42 41 30 10 01",
  "6": "36 16 05 01 10 30 41 42 33 03",
  "7": "06 46 10",
  "8": "13 04 05 16 36 45 44 33 13 02 01 10 30 41 42 33",
  "9": "10 30 41 45 36 16 05 04 13 43",
  A: "00 26 40 | 12 32",
  B: "03 33 44 45 36 06 00 30 41 42 33",
  C: "45 36 16 05 01 10 30 41",
  D: "00 06 26 44 42 20 00",
  E: "46 06 00 40 | 03 33",
  F: "46 06 00 | 03 33",
  G: "45 36 16 05 01 10 30 41 43 23",
  H: "00 06 | 40 46 | 03 43",
  I: "10 30 | 20 26 | 16 36",
  J: "46 41 30 10 01",
  K: "00 06 | 46 03 40",
  L: "06 00 40",
  M: "00 06 23 46 40",
  N: "00 06 40 46",
  O: "10 01 05 16 36 45 41 30 10",
  P: "00 06 36 45 44 33 03",
  Q: "10 01 05 16 36 45 41 30 10 | 22 40",
  R: "00 06 36 45 44 33 03 | 23 40",
  S: "45 36 16 05 04 13 33 42 41 30 10 01",
  T: "06 46 | 26 20",
  U: "06 01 10 30 41 46",
  V: "06 20 46",
  W: "06 10 23 30 46",
  X: "00 46 | 06 40",
  Y: "06 23 46 | 23 20",
  Z: "06 46 00 40",
  "-": "13 33",
  ".": "20 21",
  "/": "00 46",
};

const grid = { width: 4, height: 6, next: 6 } as const;

/** Whether there are strokes for all of a text; small letters are written as capitals. */
export function hasSigns(text: string): boolean {
  return [...text.toUpperCase()].every((sign) => sign === " " || Object.hasOwn(signs, sign));
}

/** How wide a text is when its capitals are this high, mm. */
export function textWidth(text: string, height: number): number {
  return (([...text].length * grid.next - (grid.next - grid.width)) * height) / grid.height;
}

/** The strokes of a text of this height, mm, its lower left corner at the origin; signs without strokes are left out. */
export function textStrokes(text: string, height: number): readonly (readonly Point[])[] {
  const scale = height / grid.height;
  return [...text.toUpperCase()].flatMap((sign, i) => {
    const written = Object.hasOwn(signs, sign) ? signs[sign]! : "";
    const strokes = written.split("|").map((stroke) => stroke.trim().split(" "));
    return strokes
      .filter((places) => places.length > 1)
      .map((places) => places.map((xy) => ({ x: (Number(xy[0]) + i * grid.next) * scale, y: Number(xy[1]) * scale })));
  });
}
