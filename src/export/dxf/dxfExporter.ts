import type { Build, Exporter, OutputFile } from "../../model/build.js";
import { outputNames } from "../outputNames.js";
import { partDxf } from "./partDxf.js";
import { sheetDxf } from "./sheetDxf.js";
import { turnedDxf } from "./turnedDxf.js";

/** Line drawings for the machine: every sheet as nested, and as it lies where it is turned over, every part by itself. */
export const dxfExporter: Exporter = {
  format: "dxf",
  write: (build) => [...sheetFiles(build), ...partFiles(build)],
};

function sheetFiles(build: Build): readonly OutputFile[] {
  const { sheets, setups } = outputNames(build);
  const turned = build.program.setups.flatMap((setup, i) =>
    setup.turnedOver ? [{ path: `sheets/${setups[i]}.dxf`, bytes: turnedDxf(build, setup) }] : [],
  );
  return [
    ...build.layout.sheets.map((sheet, i) => ({ path: `sheets/${sheets[i]}.dxf`, bytes: sheetDxf(build, sheet) })),
    ...turned,
  ];
}

function partFiles(build: Build): readonly OutputFile[] {
  const { parts } = outputNames(build);
  return build.plan.built.parts.map((part) => ({
    path: `parts/${parts.get(part.id)}.dxf`,
    bytes: partDxf(build, part),
  }));
}
