import { createSVGWindow } from "svgdom";

/** A shape of an SVG file that was read back: user units as they stand, y down. */
export type ReadShape = {
  readonly layer: string;
  readonly area: number;
  readonly arcs: number;
  readonly closed: boolean;
};
export type ReadSvg = {
  readonly width: string;
  readonly height: string;
  readonly viewBox: string;
  readonly title: string;
  readonly description: string;
  readonly texts: readonly string[];
  readonly tags: ReadonlySet<string>;
  readonly shapes: readonly ReadShape[];
};

/** Reads a file through an XML parser, and its paths by the endpoint rule of SVG 2, appendix B.2.4. */
export function readSvg(bytes: Uint8Array): ReadSvg {
  const document = createSVGWindow().document;
  document.documentElement.innerHTML = new TextDecoder().decode(bytes).replace(/^<\?xml[^>]*\?>/, "");
  const root = document.querySelector("svg > svg") ?? document.documentElement;
  const all = [...root.querySelectorAll("*")];
  const text = (selector: string) => [...root.querySelectorAll(selector)].map((each) => each.textContent ?? "");
  return {
    width: root.getAttribute("width") ?? "",
    height: root.getAttribute("height") ?? "",
    viewBox: root.getAttribute("viewBox") ?? "",
    title: text("title")[0] ?? "",
    description: text("desc")[0] ?? "",
    texts: text("text"),
    tags: new Set(all.map(({ nodeName }) => nodeName)),
    shapes: all.flatMap((element) => shapeOf(element)),
  };
}

/** As much of the parser's elements as is used here. */
type Element = {
  readonly nodeName: string;
  readonly parentNode: Element | null;
  getAttribute(name: string): string | null;
};

function shapeOf(element: Element): readonly ReadShape[] {
  const layer = element.parentNode?.getAttribute("id") ?? "";
  if (element.nodeName === "circle") {
    return [{ layer, area: Math.PI * Number(element.getAttribute("r")) ** 2, arcs: 1, closed: true }];
  }
  const d = element.nodeName === "path" ? element.getAttribute("d") : null;
  return d === null ? [] : [{ layer, ...measure(d) }];
}

/** Area by summing thin triangles along every line and arc: a road that shares nothing with bulges. */
function measure(d: string): Omit<ReadShape, "layer"> {
  const steps = [...d.matchAll(/([MLAZ])([^MLAZ]*)/g)].map(([, command, numbers]) => ({
    command: command!,
    numbers: numbers!.trim().split(/\s+/).filter(Boolean).map(Number),
  }));
  let points: [number, number][] = [];
  let arcs = 0;
  for (const { command, numbers } of steps) {
    if (command === "M" || command === "L") points.push([numbers[0]!, numbers[1]!]);
    if (command !== "A") continue;
    arcs += 1;
    points = [...points, ...alongArc(points.at(-1)!, numbers)];
  }
  const area = points.reduce((sum, [x, y], i) => {
    const [nx, ny] = points[(i + 1) % points.length]!;
    return sum + (x * ny - nx * y) / 2;
  }, 0);
  return { area: Math.abs(area), arcs, closed: d.endsWith("Z") };
}

function alongArc([x1, y1]: readonly [number, number], numbers: readonly number[]): [number, number][] {
  const [rx, , , large, sweep, x2, y2] = numbers as [number, number, number, number, number, number, number];
  const half = [(x1 - x2) / 2, (y1 - y2) / 2] as const;
  const chord = Math.hypot(...half);
  const r = Math.max(rx, chord);
  const root = Math.sqrt(Math.max(0, (r * r - chord * chord) / (chord * chord)));
  const sign = large === sweep ? -1 : 1;
  const cx = sign * root * half[1] + (x1 + x2) / 2;
  const cy = -sign * root * half[0] + (y1 + y2) / 2;
  const start = Math.atan2(y1 - cy, x1 - cx);
  let turn = Math.atan2(y2 - cy, x2 - cx) - start;
  if (sweep === 1 && turn < 0) turn += 2 * Math.PI;
  if (sweep === 0 && turn > 0) turn -= 2 * Math.PI;
  const n = 4000;
  return Array.from({ length: n }, (_, i): [number, number] => {
    const angle = start + (turn * (i + 1)) / n;
    return i === n - 1 ? [x2, y2] : [cx + r * Math.cos(angle), cy + r * Math.sin(angle)];
  });
}
