import type { Exporter } from "../../model/build.js";
import { outputNames } from "../outputNames.js";
import { programsOf } from "./gcodeFiles.js";

/** The programs for the machine, beside the drawing of their sheet. */
export const gcodeExporter: Exporter = {
  format: "gcode",
  write: (build) => {
    const { cnc } = build.shop;
    const names = outputNames(build).setups;
    if (cnc === undefined) return [];
    return build.program.setups
      .flatMap((setup, i) => programsOf(build, setup, cnc, names[i]!))
      .map(({ name, text }) => ({ path: `sheets/${name}.ngc`, bytes: new TextEncoder().encode(text) }));
  },
};
