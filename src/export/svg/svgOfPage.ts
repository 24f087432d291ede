import type { Container } from "@svgdotjs/svg.js";
import { lineStyles } from "../../drawing/lines.js";
import type { Item, Page } from "../../drawing/page.js";
import { fontSize, textWidth, widthIsExact } from "../../drawing/textBox.js";
import type { Point } from "../../geometry/profile.js";
import { formatNumber } from "../../input/number.js";
import { pathData } from "./pathData.js";
import { addText, loadSvg, millimetres, svgBytes } from "./svgDocument.js";

/** Whatever a viewer has of these, the words keep the width that the drawing reckoned with. */
const fonts = "'DejaVu Sans Condensed', 'DejaVu Sans', Arial, sans-serif";

/** A drawing page as an SVG file of the paper's size. */
export async function svgOfPage(page: Page, description: readonly string[] = []): Promise<Uint8Array> {
  const { width, height } = page.size;
  const newSvg = await loadSvg();
  const svg = newSvg(width, height, { title: page.title, description });
  svg.rect(width, height).attr({ fill: "#ffffff" });
  const at = ({ x, y }: Point): Point => ({ x, y: height - y });
  for (const item of page.items) drawItem(svg, item, at);
  return svgBytes(svg);
}

function drawItem(parent: Container, item: Item, at: (p: Point) => Point): void {
  switch (item.kind) {
    case "stroke": {
      const { width, dashes } = lineStyles[item.line];
      parent.element("path").attr({
        d: pathData(item.path, item.closed, at),
        fill: "none",
        stroke: "#000000",
        "stroke-width": `${width}`,
        ...(dashes.length > 0 ? { "stroke-dasharray": dashes.join(" ") } : {}),
      });
      break;
    }
    case "fill":
      parent.element("path").attr({
        d: item.paths.map((path) => pathData(path, true, at)).join(""),
        fill: greyOf(item.grey),
        "fill-rule": "evenodd",
      });
      break;
    case "text":
      drawText(parent, item, at(item.at));
  }
}

function drawText(parent: Container, item: Extract<Item, { kind: "text" }>, { x, y }: Point): void {
  const place = { x: millimetres(x), y: millimetres(y) };
  addText(parent, item.text, {
    ...place,
    "font-family": fonts,
    "font-size": formatNumber(fontSize(item.height), 4),
    "text-anchor": item.anchor,
    ...(item.bold ? { "font-weight": "bold" } : {}),
    ...(item.turn === 0
      ? {}
      : { transform: `rotate(${formatNumber((-item.turn * 180) / Math.PI, 3)} ${place.x} ${place.y})` }),
    ...(widthIsExact(item.text) && item.text !== ""
      ? { textLength: millimetres(textWidth(item.text, item.height, item.bold)), lengthAdjust: "spacingAndGlyphs" }
      : {}),
  });
}

function greyOf(grey: number): string {
  const part = Math.round(grey * 255)
    .toString(16)
    .padStart(2, "0");
  return `#${part}${part}${part}`;
}
