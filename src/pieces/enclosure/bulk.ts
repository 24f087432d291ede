import { compose, type Frame, inverse, place, type Vector } from "../../geometry/frame.js";
import { extentsOf } from "../../geometry/measure.js";
import type { Prism } from "../../geometry/prism.js";
import type { Point, Profile } from "../../geometry/profile.js";
import { againstTheClock, polygon, rectangle } from "../../geometry/shapes.js";
import { sureOffset } from "../../geometry/sure.js";
import { samePoint } from "../../geometry/tolerance.js";
import { moved } from "../../geometry/transform.js";
import type { Around } from "../../model/piece.js";
import { endNames, sectionFrames, type View } from "./form/extrusion.js";
import type { Face, Sheet } from "./form/face.js";
import { coverFrame, type Hatch, hatchOf } from "./removable/hatch/hatch.js";
import type { EnclosureSpec } from "./schema.js";
import { coveringOn, shapeAt } from "./shape.js";

/**
 * What a box takes of the space, where it stands: all that its walls close in, each panel as far as it is cut proud of
 * that, each panel's covering, and a hatch's cover. What stands inside makes no difference.
 */
export function bulkOf(spec: EnclosureSpec, size: number, around: Around): readonly Prism[] {
  const shape = shapeAt(spec, size, around, new Map());
  const { extrusion, faces, stands } = shape;
  const { view, section, length } = extrusion;
  const along = view === "plan" ? "z" : "x";
  const prismOf = ({ name }: Face, sheet: Sheet, layer: Layer): Prism => {
    const make = endNames[view].includes(name) ? endPrism : wallPrism;
    return { along, ...make(inSection(layer, sheet, view)) };
  };
  const panels = faces.flatMap((face) =>
    layersOf(face.panel, coveringOn(spec, face, around)).map((layer) => prismOf(face, face.panel, layer)),
  );
  const hatch = hatchOf(spec, shape, around);
  const cover = hatch && coverBlock(hatch);
  const covers = hatch && cover ? layersOf(cover, 0).map((layer) => prismOf(hatch.face, cover, layer)) : [];
  return [{ along, section, from: 0, to: length } as const, ...panels, ...covers].map((prism) =>
    standing(prism, stands),
  );
}

/** A hatch's cover, its corners taken for sharp. */
function coverBlock(hatch: Hatch): Sheet {
  const { min, max } = extentsOf(hatch.cover);
  const outline = rectangle(min.x, min.y, max.x, max.y, "cover");
  return { frame: coverFrame(hatch), outline, bevels: {}, thickness: hatch.board.thickness };
}

/** The upper and the lower outline of something flat: a board, or the covering on it. */
type Layer = readonly [readonly Vector[], readonly Vector[]];

function layersOf({ outline, bevels, thickness }: Sheet, covering: number): readonly Layer[] {
  const shrinks = (by: string) => -thickness * Math.tan(bevels[by] ?? 0);
  const back =
    Object.keys(bevels).length === 0
      ? outline
      : (sureOffset({ outer: outline, holes: [] }, shrinks, { corners: "sharp" }).value?.[0]?.outer ?? outline);
  const at = (profile: Profile, z: number) => profile.map(({ x, y }): Vector => [x, y, z]);
  const board: Layer = [at(outline, 0), at(back, -thickness)];
  return covering === 0 ? [board] : [board, [at(outline, covering), at(outline, 0)]];
}

function inSection(layer: Layer, { frame }: Sheet, view: View): Layer {
  const seen = compose(inverse(sectionFrames[view]), frame);
  const [upper, lower] = layer.map((outline) => outline.map((point) => place(seen, point)));
  return [upper!, lower!];
}

/** An end lies across the extrusion: its upper outline is its section. */
function endPrism([upper, lower]: Layer): Omit<Prism, "along"> {
  const heights = [upper[0]![2], lower[0]![2]];
  return { section: againstTheClock(polygon(upper.map(inPlane), "")), ...reach(heights) };
}

/** A wall runs along the extrusion: seen along it all its corners lie on a convex outline of four. */
function wallPrism(layer: Layer): Omit<Prism, "along"> {
  const corners = layer.flat();
  const places = corners.map(inPlane);
  const [x, y] = [mean(places.map((p) => p.x)), mean(places.map((p) => p.y))];
  const angle = (p: Point) => Math.atan2(p.y - y, p.x - x);
  const once = places.filter((p, i) => places.findIndex((q) => samePoint(p, q)) === i);
  return {
    section: polygon(
      once.sort((p, q) => angle(p) - angle(q)),
      "",
    ),
    ...reach(corners.map(([, , z]) => z)),
  };
}

const inPlane = ([x, y]: Vector): Point => ({ x, y });
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const reach = (heights: readonly number[]) => ({ from: Math.min(...heights), to: Math.max(...heights) });

/** The vehicle's axes are those of the box: it is shifted only. */
function standing(prism: Prism, { origin: [x, y, z] }: Frame): Prism {
  const [dx, dy, dz] = prism.along === "z" ? [x, y, z] : [y, z, x];
  return { ...prism, section: moved(prism.section, dx, dy), from: prism.from + dz, to: prism.to + dz };
}
