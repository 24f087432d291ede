import { createRequire } from "node:module";
import type * as dxf from "dxf-parser";

// The package is one function to require(), whatever its types say of a default.
const DxfParser: typeof dxf.DxfParser = createRequire(import.meta.url)("dxf-parser");

/** A closed or open line as the independent reader gave it; a circle as a line of two half circles. */
export type ReadLine = {
  readonly layer: string;
  readonly closed: boolean;
  readonly round: boolean;
  readonly vertices: readonly { readonly x: number; readonly y: number; readonly bulge: number }[];
};

export type ReadDrawing = {
  readonly text: string;
  readonly header: Readonly<Record<string, unknown>>;
  readonly layers: readonly string[];
  readonly colours: Readonly<Record<string, number>>;
  readonly lines: readonly ReadLine[];
  readonly words: readonly { readonly layer: string; readonly text: string }[];
};

/** Reads a file through dxf-parser, which knows nothing of this project. */
export function readDxf(bytes: Uint8Array): ReadDrawing {
  const text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  const read = new DxfParser().parseSync(text);
  if (read === null) throw new Error("no drawing");
  const layers = Object.values(read.tables.layer.layers);
  return {
    text,
    header: read.header,
    layers: layers.map(({ name }) => name),
    colours: Object.fromEntries(layers.map(({ name, colorIndex }) => [name, colorIndex])),
    lines: read.entities.flatMap(lineOf),
    words: read.entities.flatMap((entity) => (isText(entity) ? [{ layer: entity.layer, text: entity.text }] : [])),
  };
}

const isText = (entity: dxf.IEntity): entity is dxf.ITextEntity => entity.type === "TEXT";
const isCircle = (entity: dxf.IEntity): entity is dxf.ICircleEntity => entity.type === "CIRCLE";
const isPolyline = (entity: dxf.IEntity): entity is dxf.IPolylineEntity =>
  entity.type === "POLYLINE" || entity.type === "LWPOLYLINE";

function lineOf(entity: dxf.IEntity): readonly ReadLine[] {
  const { layer } = entity;
  if (isCircle(entity)) {
    const { center, radius } = entity;
    const ends = [center.x + radius, center.x - radius].map((x) => ({ x, y: center.y, bulge: 1 }));
    return [{ layer, closed: true, round: true, vertices: ends }];
  }
  if (!isPolyline(entity)) return [];
  const vertices = entity.vertices.map(({ x, y, bulge }) => ({ x, y, bulge: bulge ?? 0 }));
  return [{ layer, closed: entity.shape, round: false, vertices }];
}

/**
 * Area inside a closed line: the polygon of its corners by the shoelace formula and, for each bow, r^2 (w - sin w) / 2
 * with w = 4 atan(bulge) and r = chord / (2 sin(w / 2)). In the file's unit, squared.
 */
export function areaOfLine({ vertices }: ReadLine): number {
  let sum = 0;
  vertices.forEach((a, i) => {
    const b = vertices[(i + 1) % vertices.length]!;
    sum += (a.x * b.y - b.x * a.y) / 2;
    if (a.bulge === 0) return;
    const sweep = 4 * Math.atan(a.bulge);
    const radius = Math.hypot(b.x - a.x, b.y - a.y) / (2 * Math.sin(sweep / 2));
    sum += (radius * radius * (sweep - Math.sin(sweep))) / 2;
  });
  return Math.abs(sum);
}
