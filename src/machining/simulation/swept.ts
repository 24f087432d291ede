import { type Box, bar, disc, meet, type Polygons, sector, union, widened } from "./polygons.js";
import { boxOfPiece, type Cutter, type Piece, stretch, type Track } from "./tracks.js";

/** What the cutters have taken at a depth below the sheet's top, near a box at least. mm. */
export type Swept = (depth: number, near: Box) => Polygons;

/**
 * The cut at a depth: what every bit has reached whose tip was deeper. A bit that goes straight takes a bar, one on an
 * arc a sector of a ring, and a disc at each end; the same piece gone over again counts once.
 */
export function sweeper(tracks: readonly Track[], cutters: ReadonlyMap<number, Cutter>, chord: number): Swept {
  const known = new Map<string, Polygons>();
  const sweep = (depth: number, near: Box): Polygons => {
    const taken = new Map<string, Polygons[number]>();
    for (const track of tracks) {
      const cutter = cutters.get(track.tool);
      if (cutter === undefined || !meet(widened(track.box, cutter.d / 2), near)) continue;
      for (const piece of track.pieces)
        if (meet(widened(boxOfPiece(piece), cutter.d / 2), near))
          for (const cut of cutsBelow(piece, cutter, depth)) take(taken, cut, chord);
    }
    return union([...taken.values()]);
  };
  return (depth, near) => {
    const key = [depth, near.x0, near.y0, near.x1, near.y1].join(" ");
    const found = known.get(key) ?? sweep(depth, near);
    known.set(key, found);
    return found;
  };
}

/** A piece below a depth, and the radius that its bit has there. */
type Cut = { readonly piece: Piece; readonly radius: number };

function cutsBelow(piece: Piece, cutter: Cutter, depth: number): readonly Cut[] {
  const [a, b] = [-piece.from[2] - depth, -piece.to[2] - depth];
  if (a <= 0 && b <= 0) return [];
  const through = a / (a - b);
  const deep = a > 0 && b > 0 ? piece : a > 0 ? stretch(piece, 0, through) : stretch(piece, through, 1);
  return cutter.form === "flat" ? [{ piece: deep, radius: cutter.d / 2 }] : coneCuts(deep, cutter, depth);
}

/** A cone is as wide as its tip is deep: on a slope a few pieces, each as wide as at its deeper end, so that too much is
 *  reckoned as taken, never too little; the way at the slope's foot takes the same again. */
function coneCuts(piece: Piece, { d, angle }: Cutter, depth: number): readonly Cut[] {
  const radiusAt = (z: number) => Math.min(d / 2, (-z - depth) * Math.tan(angle / 2));
  const [a, b] = [radiusAt(piece.from[2]), radiusAt(piece.to[2])];
  const upright = Math.hypot(piece.to[0] - piece.from[0], piece.to[1] - piece.from[1]) < 1e-6 && !piece.arc;
  const pieces = upright || Math.abs(a - b) < 1e-6 ? 1 : onSlope;
  const cuts = Array.from({ length: pieces }, (_, i): Cut => {
    const part = pieces === 1 ? piece : stretch(piece, i / pieces, (i + 1) / pieces);
    return { piece: part, radius: Math.max(radiusAt(part.from[2]), radiusAt(part.to[2])) };
  });
  return cuts.filter(({ radius }) => radius > 1e-4);
}

const onSlope = 8;

function take(taken: Map<string, Polygons[number]>, { piece: { from, to, arc }, radius }: Cut, chord: number): void {
  const [a, b] = [at(from), at(to)];
  const put = (key: string, shape: () => Polygons[number]) => {
    const name = `${key} ${radius.toFixed(5)}`;
    if (!taken.has(name)) taken.set(name, shape());
  };
  for (const end of [a, b]) put(keyOf(end), () => disc(end, radius, chord));
  if (arc !== undefined) {
    const center = { x: arc.center[0], y: arc.center[1] };
    put([keyOf(center), keyOf(a), arc.sweep.toFixed(6)].join(" "), () =>
      sector(center, arc.radius, a, arc.sweep, radius, chord),
    );
  } else if (keyOf(a) !== keyOf(b)) put([keyOf(a), keyOf(b)].sort().join(" "), () => bar(a, b, radius));
}

const at = ([x, y]: Piece["from"]) => ({ x, y });
const keyOf = ({ x, y }: { readonly x: number; readonly y: number }) => `${x.toFixed(5)},${y.toFixed(5)}`;
