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
  TOOL: 134,
  PIN: 8,
  SHEET: 8,
  TRIM: 8,
  "KEEP-CLEAR": 20,
  NAME: 7,
  TABLE: 7,
};

/** The colour number of a layer: one for each kind of work, whatever its side and stage. */
export function colourOf(layer: string): number {
  return colours[layer.replace(/^TOOL-.*/, "TOOL").replace(/(-FACE|-BACK)?(-LATER)?$/, "")]!;
}
