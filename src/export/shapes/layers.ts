import type { Cut, Feature, Side } from "../../model/part.js";

/** How a layer's lines look: through cuts drawn through, work on the back dashed, what comes later dash-dotted. */
export type LineType = "CONTINUOUS" | "DASHED" | "DASHDOT";

/** How lines are drawn on the layer of this name, one that `layerOf` or `partShapes` gave. */
export function lineTypeOf(layer: string): LineType {
  if (layer.endsWith("-LATER") || layer === "TRIM" || layer.startsWith("TOOL-")) return "DASHDOT";
  if (layer === "LEFT-OVER-RECTANGLE") return "DASHED";
  return layer.endsWith("-BACK") ? "DASHED" : "CONTINUOUS";
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
