import type { Box } from "./polygons.js";
import type { Place, Step } from "./reader.js";

/** A bit as it cuts: straight down, or with the point of a cone up to its diameter. `angle`: the cone's whole, rad. */
export type Cutter = { readonly d: number; readonly form: "flat" | "cone"; readonly angle: number };

/** A line, or an arc in plan on which z changes evenly; z from the sheet's top, mm. */
export type Piece = Pick<Step, "from" | "to" | "arc">;

/** What one bit does at feed, piece by piece. `box`: of its middle. */
export type Track = { readonly tool: number; readonly pieces: readonly Piece[]; readonly box: Box };

/** The ways of the cutters at feed, without a rapid between the pieces of one. `top`: z of the sheet's top. */
export function tracksOf(steps: readonly Step[], top: number): readonly Track[] {
  const tracks: { readonly tool: number; readonly pieces: Piece[] }[] = [];
  let going = false;
  for (const step of steps) {
    const last = tracks[tracks.length - 1];
    if (step.rapid) going = false;
    else if (going && last?.tool === step.tool) last.pieces.push(below(step, top));
    else {
      tracks.push({ tool: step.tool, pieces: [below(step, top)] });
      going = true;
    }
  }
  return tracks.map((track) => ({ ...track, box: boxAround(track.pieces.map(boxOfPiece)) }));
}

function below({ from, to, arc }: Step, top: number): Piece {
  const down = ([x, y, z]: Place): Place => [x, y, z - top];
  return { from: down(from), to: down(to), ...(arc === undefined ? {} : { arc }) };
}

/** Of an arc the box of its whole circle, or of what it can reach from its ends where that is less. */
export function boxOfPiece({ from, to, arc }: Piece): Box {
  const reach = arc === undefined ? 0 : Math.min(2 * arc.radius, arc.radius * Math.abs(arc.sweep));
  return {
    x0: Math.min(from[0], to[0]) - reach,
    y0: Math.min(from[1], to[1]) - reach,
    x1: Math.max(from[0], to[0]) + reach,
    y1: Math.max(from[1], to[1]) + reach,
  };
}

function boxAround(boxes: readonly Box[]): Box {
  return boxes.reduce((a, b) => ({
    x0: Math.min(a.x0, b.x0),
    y0: Math.min(a.y0, b.y0),
    x1: Math.max(a.x1, b.x1),
    y1: Math.max(a.y1, b.y1),
  }));
}

/** The stretch of a piece between two shares of its way. */
export function stretch(piece: Piece, start: number, end: number): Piece {
  const { arc } = piece;
  return {
    from: along(piece, start),
    to: along(piece, end),
    ...(arc === undefined ? {} : { arc: { ...arc, sweep: arc.sweep * (end - start) } }),
  };
}

function along({ from, to, arc }: Piece, share: number): Place {
  if (share === 0) return from;
  if (share === 1) return to;
  const between = (a: number, b: number) => a + (b - a) * share;
  if (arc === undefined) return [between(from[0], to[0]), between(from[1], to[1]), between(from[2], to[2])];
  const [x, y] = arc.center;
  const angle = Math.atan2(from[1] - y, from[0] - x) + arc.sweep * share;
  return [x + arc.radius * Math.cos(angle), y + arc.radius * Math.sin(angle), between(from[2], to[2])];
}
