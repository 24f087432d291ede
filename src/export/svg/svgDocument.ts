import type { Container, Svg } from "@svgdotjs/svg.js";
import { plainText } from "../../drawing/textBox.js";
import { formatNumber } from "../../input/number.js";

/** What an SVG file says of itself. */
export type SvgAbout = { readonly title: string; readonly description: readonly string[] };

/** Makes an empty drawing, mm. Nothing may be awaited before its bytes are taken: the library has one page at a time. */
export type NewSvg = (width: number, height: number, about: SvgAbout) => Svg;

/**
 * Gives the maker of drawings whose user unit is a real millimetre: width and height in mm, the view box the same
 * numbers. y grows downward in them. The libraries are loaded here and not before: only a command that writes SVG needs
 * them.
 */
export async function loadSvg(): Promise<NewSvg> {
  const [{ SVG, registerWindow }, { createSVGWindow }] = await Promise.all([
    import("@svgdotjs/svg.js"),
    import("svgdom"),
  ]);
  return (width, height, about) => {
    const window = createSVGWindow();
    registerWindow(window, window.document);
    const svg = SVG(window.document.documentElement) as Svg;
    svg.attr({ width: `${millimetres(width)}mm`, height: `${millimetres(height)}mm` });
    svg.attr("viewBox", `0 0 ${millimetres(width)} ${millimetres(height)}`);
    say(svg, "title", [about.title]);
    say(svg, "desc", about.description);
    return svg;
  };
}

/** The drawing as a file. */
export function svgBytes(svg: Svg): Uint8Array {
  return new TextEncoder().encode(`<?xml version="1.0" encoding="UTF-8"?>\n${svg.svg()}\n`);
}

/** A group under a name, which viewers show as the layer's. */
export function layerGroup(parent: Container, name: string): Container {
  const group = parent.group().attr("id", name);
  say(group, "title", [name]);
  return group;
}

/** A line of text that starts, or has its middle or end, at a place. */
export function addText(parent: Container, text: string, attributes: Readonly<Record<string, string>>): void {
  parent.element("text").attr(attributes).words(plainText(text));
}

/** A length in an SVG file: a millionth of a millimetre is finer than anything that is cut. */
export function millimetres(value: number): string {
  return formatNumber(value, 6);
}

function say(parent: Container, element: "title" | "desc", lines: readonly string[]): void {
  parent.element(element).words(lines.map(plainText).join("\n"));
}
