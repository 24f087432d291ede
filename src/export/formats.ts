import type { Exporter } from "../model/build.js";
import { dxfExporter } from "./dxf/dxfExporter.js";

/** Every format that a build is written in. A new one is a folder and a line here. */
export const exporters: readonly Exporter[] = [dxfExporter];
