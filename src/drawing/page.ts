import type { Point } from "../geometry/profile.js";

// The one drawing model: plain data in millimetres of paper, y up, origin at the lower left corner of the sheet. It
// knows no file format; each writer turns it into its own.

export type Paper = "A4" | "A3" | "Letter" | "Tabloid";

/** A sheet lying on its long side, mm. */
export type PageSize = { readonly paper: Paper; readonly width: number; readonly height: number };

/** By meaning, after ISO 128; `covered` is the wide long-dash dot line that says an edge gets a treatment. */
export type LineKind = "frame" | "visible" | "narrow" | "hidden" | "centre" | "phantom" | "covered";

/** A corner of a drawn chain; bulge is tan(sweep / 4) of the edge that leaves it. */
export type Bend = Point & { readonly bulge: number };

export type Stroke = {
  readonly kind: "stroke";
  readonly path: readonly Bend[];
  readonly closed: boolean;
  readonly line: LineKind;
};

/** An area in a grey: 0 black, 1 white. Areas inside one another by turns are filled and empty. */
export type Fill = { readonly kind: "fill"; readonly paths: readonly (readonly Bend[])[]; readonly grey: number };

/** One line of text. `at` lies on the base line; `height` is that of a capital letter; `turn` 0 or a quarter left, rad. */
export type Text = {
  readonly kind: "text";
  readonly at: Point;
  readonly text: string;
  readonly height: number;
  readonly anchor: "start" | "middle" | "end";
  readonly turn: number;
  readonly bold: boolean;
};

export type Item = Stroke | Fill | Text;

export type Page = { readonly title: string; readonly size: PageSize; readonly items: readonly Item[] };

/** ISO 216 and ASME Y14.1 (Letter is its A, Tabloid its B). */
export const pageSizes: Readonly<Record<Paper, PageSize>> = {
  A4: { paper: "A4", width: 297, height: 210 },
  A3: { paper: "A3", width: 420, height: 297 },
  Letter: { paper: "Letter", width: 279.4, height: 215.9 },
  Tabloid: { paper: "Tabloid", width: 431.8, height: 279.4 },
};

/** Heights of capitals, mm: of the rows of ISO 3098-1 (from memory) those that are read at arm's length. */
export const textHeight = { small: 2.5, main: 3.5, large: 5 } as const;
