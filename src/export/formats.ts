import type { Exporter } from "../model/build.js";

/** Every format that a build is written in. A new one is a folder and a line here; its code is loaded when it writes. */
export const exporters: readonly Exporter[] = [
  whenUsed("dxf", async () => (await import("./dxf/dxfExporter.js")).dxfExporter),
  whenUsed("gcode", async () => (await import("./gcode/gcodeExporter.js")).gcodeExporter),
  whenUsed("svg", async () => (await import("./svg/svgExporter.js")).svgExporter),
  whenUsed("pdf", async () => (await import("./pdf/pdfExporter.js")).pdfExporter),
  whenUsed("csv", async () => (await import("./csv/csvExporter.js")).csvExporter),
  whenUsed("json", async () => (await import("./json/jsonExporter.js")).jsonExporter),
];

function whenUsed(format: string, load: () => Promise<Exporter>): Exporter {
  return { format, write: async (build) => (await load()).write(build) };
}
