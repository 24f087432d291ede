import type { Build, Exporter, OutputFile } from "../../model/build.js";
import { outputNames } from "../outputNames.js";
import { partDxf } from "./partDxf.js";
import { sheetDxf } from "./sheetDxf.js";

/** Line drawings for the machine: every sheet as nested, every part by itself. */
export const dxfExporter: Exporter = {
  format: "dxf",
  write: (build) => [...sheetFiles(build), ...partFiles(build)],
};

function sheetFiles(build: Build): readonly OutputFile[] {
  const { sheets } = outputNames(build);
  return build.layout.sheets.map((sheet, i) => ({ path: `sheets/${sheets[i]}.dxf`, bytes: sheetDxf(build, sheet) }));
}

function partFiles(build: Build): readonly OutputFile[] {
  const { parts } = outputNames(build);
  return build.plan.built.parts.map((part) => ({
    path: `parts/${parts.get(part.id)}.dxf`,
    bytes: partDxf(build, part),
  }));
}
