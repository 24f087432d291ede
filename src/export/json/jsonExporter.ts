import type { Exporter } from "../../model/build.js";
import { planFileOf } from "./planFile.js";
import { printJson } from "./printJson.js";

/** Everything about a build, for other programs. */
export const jsonExporter: Exporter = {
  format: "json",
  write: (build) => [{ path: "plan.json", bytes: new TextEncoder().encode(printJson(planFileOf(build))) }],
};
