import type { Cut, Feature, Side } from "../../model/part.js";

/** How a layer's lines look: through cuts drawn through, work on the back dashed, what comes later dash-dotted. */
export type LineType = "CONTINUOUS" | "DASHED" | "DASHDOT";
export type Layer = { readonly name: string; readonly colour: number; readonly lineType: LineType };

// Colour numbers of the format. 7 is black on white and white on black; each of the others was chosen to stand at
// 3.5 : 1 or better against both (contrast after WCAG 2.1, 1.4.11, computed).
const colours: Readonly<Record<string, number>> = {
  OUTLINE: 7,
  BLANK: 20,
  OPENING: 1,
  HOLE: 150,
  "HOLE-BLIND": 200,
  SINK: 134,
  POCKET: 94,
  GROOVE: 32,
  "EDGE-WORK": 230,
  MARK: 8,
  SHEET: 8,
  TRIM: 8,
  NAME: 7,
  TABLE: 7,
};

/** The layer of a name that `layerOf` or this file gave. */
export function layerNamed(name: string): Layer {
  const later = name.endsWith("-LATER");
  const back = /-BACK(-LATER)?$/.test(name);
  const stem = name.replace(/(-FACE|-BACK)?(-LATER)?$/, "");
  const lineType = later || name === "TRIM" ? "DASHDOT" : back ? "DASHED" : "CONTINUOUS";
  return { name, colour: colours[stem]!, lineType };
}

/** What goes through has no side; the rest names the side it is cut from. */
export function layerOf({ cut, side, stage }: Pick<Feature, "cut" | "side" | "stage">): string {
  const later = stage === "sheet" ? "" : "-LATER";
  const stem = stemOf(cut);
  return goesThrough(cut) ? `${stem}${later}` : `${stem}-${sideName(side)}${later}`;
}

/** Where the mouth of a countersunk or counterbored hole is drawn. */
export function sinkLayer({ side, stage }: Pick<Feature, "side" | "stage">): string {
  return `SINK-${sideName(side)}${stage === "sheet" ? "" : "-LATER"}`;
}

export function goesThrough(cut: Cut): boolean {
  return (
    cut.kind === "outline" ||
    cut.kind === "notch" ||
    cut.kind === "opening" ||
    (cut.kind === "hole" && cut.depth === "through")
  );
}

function stemOf(cut: Cut): string {
  switch (cut.kind) {
    case "outline":
    case "notch":
      return "OUTLINE";
    case "opening":
      return "OPENING";
    case "hole":
      return cut.depth === "through" ? "HOLE" : "HOLE-BLIND";
    case "pocket":
      return "POCKET";
    case "groove":
      return "GROOVE";
    case "edge":
      return "EDGE-WORK";
    case "mark":
      return "MARK";
  }
}

function sideName(side: Side): string {
  return side === "back" ? "BACK" : "FACE";
}
