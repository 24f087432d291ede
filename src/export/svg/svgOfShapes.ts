import type { Container } from "@svgdotjs/svg.js";
import { isCircle } from "../../geometry/measure.js";
import type { Point } from "../../geometry/profile.js";
import { type LineType, lineTypeOf } from "../shapes/layers.js";
import { extentsOfShapes, type Shape } from "../shapes/shape.js";
import { pathData } from "./pathData.js";
import { addText, layerGroup, loadSvg, millimetres, type SvgAbout, svgBytes } from "./svgDocument.js";

/** Left free round the shapes, mm. */
const margin = 10;

/** Thin enough that a line's middle can be followed, thick enough to be seen when printed, mm. */
const lineWidth = 0.25;
const dashes: Readonly<Record<LineType, string | undefined>> = {
  CONTINUOUS: undefined,
  DASHED: "3 1.5",
  DASHDOT: "6 1.5 1 1.5",
};

/** Shapes in real millimetres, a group for each layer; what lies below or left of the origin is shifted into view. */
export async function svgOfShapes(shapes: readonly Shape[], about: SvgAbout): Promise<Uint8Array> {
  const { min, max } = extentsOfShapes(shapes);
  const newSvg = await loadSvg();
  const svg = newSvg(max.x - min.x + 2 * margin, max.y - min.y + 2 * margin, about);
  const at = ({ x, y }: Point): Point => ({ x: x - min.x + margin, y: max.y - y + margin });
  for (const name of new Set(shapes.map(({ layer }) => layer))) {
    const dash = dashes[lineTypeOf(name)];
    const group = layerGroup(svg, name);
    group.attr({ fill: "none", stroke: "#000000", "stroke-width": `${lineWidth}` });
    if (dash !== undefined) group.attr("stroke-dasharray", dash);
    for (const shape of shapes.filter(({ layer }) => layer === name)) drawShape(group, shape, at);
  }
  return svgBytes(svg);
}

function drawShape(group: Container, shape: Shape, at: (p: Point) => Point): void {
  switch (shape.kind) {
    case "loop": {
      const round = isCircle(shape.profile);
      if (round) drawRound(group, at(round.center), round.radius);
      else group.element("path").attr("d", pathData(shape.profile, true, at));
      break;
    }
    case "chain":
      group.element("path").attr("d", pathData(shape.path, false, at));
      break;
    case "round":
      drawRound(group, at(shape.at), shape.d / 2);
      break;
    case "words": {
      const { x, y } = at(shape.at);
      addText(group, shape.text, {
        x: millimetres(x),
        y: millimetres(y),
        "font-family": "sans-serif",
        "font-size": millimetres(shape.height),
        fill: "#000000",
        stroke: "none",
      });
    }
  }
}

function drawRound(group: Container, { x, y }: Point, radius: number): void {
  group.element("circle").attr({ cx: millimetres(x), cy: millimetres(y), r: millimetres(radius) });
}
