import type { DxfDrawing } from "./common.js";
import { dxf2000 } from "./dxf2000.js";
import { dxfR12 } from "./r12.js";

/** The bytes of a drawing in the form asked for. */
export function dxfBytes(drawing: DxfDrawing): Uint8Array {
  return drawing.format === "2000" ? dxf2000(drawing) : dxfR12(drawing);
}
