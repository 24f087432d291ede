import { sagittaOf } from "../../geometry/arc.js";
import type { Move } from "../../model/program.js";
import type { Controller } from "../../model/shop.js";
import { centreOffset } from "./centre.js";
import { feedWord, type Grid, onGrid, scaled, stepOf, written } from "./grid.js";
import { asLines, type Stroke, strokesOf } from "./strokes.js";

type Place = Move["to"];

/**
 * The lines of a run of moves. It owns what the controller remembers from line to line: where it stands, in the unit of
 * the program and on its grid, and the feed. What is the same as on the line before is not said again, but for the
 * ends of arcs; `forget` makes it say all, after anything that may have moved the machine.
 */
export class Motion {
  readonly lines: string[] = [];
  private at: readonly (number | undefined)[] = [undefined, undefined, undefined];
  private feed = "";
  private readonly grid: Grid;

  /** `top`: z of the sheet's top where the machine's z is zeroed, mm. */
  constructor(
    private readonly controller: Controller,
    private readonly top: number,
  ) {
    this.grid = { unit: controller.units, decimals: controller.decimals };
  }

  forget(): void {
    this.at = [undefined, undefined, undefined];
    this.feed = "";
  }

  /** Straight up or down as fast as it goes, to a height above the sheet's top, mm. */
  lift(height: number): void {
    const z = this.places([0, 0, height])[2];
    this.lines.push(`G0 Z${written(this.grid, z)}`);
    this.at = [this.at[0], this.at[1], z];
  }

  follow(moves: readonly Move[]): void {
    for (const stroke of strokesOf(moves, this.controller)) this.write(stroke);
  }

  private write(stroke: Stroke): void {
    if (stroke.kind === "straight") this.straight(stroke);
    else if (stroke.kind === "circle") this.circle(stroke);
    else this.arc(stroke);
  }

  private straight({ to, feed }: Extract<Stroke, { kind: "straight" }>): void {
    const place = this.places(to);
    const words = place.flatMap((value, i) =>
      value === this.at[i] ? [] : [`${"XYZ"[i]}${written(this.grid, value)}`],
    );
    if (words.length === 0) return;
    this.lines.push(
      [feed === "rapid" ? "G0" : "G1", ...words, ...(feed === "rapid" ? [] : this.feedWords(feed))].join(" "),
    );
    this.at = place;
  }

  /** From where the machine really stands, which is on the grid; too small or too flat for that, it is a line. */
  private arc(stroke: Extract<Stroke, { kind: "arc" }>): void {
    const [x, y] = this.at;
    const to = this.places(stroke.to);
    const line =
      x === undefined ||
      y === undefined ||
      sagittaOf(Math.hypot(to[0] - x, to[1] - y), stroke.bulge) < stepOf(this.grid);
    const offset = line ? undefined : centreOffset(this.grid, [x, y], to, stroke.bulge);
    if (line) this.straight({ ...stroke, kind: "straight" });
    else if (offset !== undefined) this.bend(stroke.bulge > 0, to, offset, stroke.feed);
    else for (const piece of asLines(stroke, this.controller.chord)) this.write(piece);
  }

  private circle({ from, to, center, left, feed }: Extract<Stroke, { kind: "circle" }>): void {
    const [x, y] = this.at;
    const offset = [center.x - from[0], center.y - from[1]].map((mm) => onGrid(this.grid, scaled(this.grid, mm)));
    if (x === undefined || y === undefined || offset.every((value) => value === 0))
      this.straight({ kind: "straight", to, feed });
    else this.bend(left, [x, y, this.places(to)[2]], [offset[0]!, offset[1]!], feed);
  }

  private bend(left: boolean, to: Place, [i, j]: readonly [number, number], feed: number): void {
    const say = (letter: string, value: number) => `${letter}${written(this.grid, value)}`;
    const z = to[2] === this.at[2] ? [] : [say("Z", to[2])];
    const ends = [say("X", to[0]), say("Y", to[1]), ...z];
    this.lines.push([left ? "G3" : "G2", ...ends, say("I", i), say("J", j), ...this.feedWords(feed)].join(" "));
    this.at = to;
  }

  private feedWords(feed: number): readonly string[] {
    const word = feedWord(this.grid, feed);
    if (word === this.feed) return [];
    this.feed = word;
    return [word];
  }

  private places([x, y, z]: Place): Place {
    const place = (mm: number) => onGrid(this.grid, scaled(this.grid, mm));
    return [place(x), place(y), place(z + this.top)];
  }
}
