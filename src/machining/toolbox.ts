import type { Sink } from "../model/part.js";
import type { Cnc, Shop } from "../model/shop.js";
import { cutOf } from "../shop/lookups.js";
import type { Tool } from "./bench.js";
import { type NoSpeed, speedsOf } from "./speeds.js";

/** The bits on hand, with their speeds in one material; `unable`: those that cannot turn in this machine. */
export type Toolbox = {
  readonly tools: ReadonlyMap<string, Tool>;
  readonly unable: ReadonlyMap<string, NoSpeed>;
};

export function toolboxOf(shop: Shop, cnc: Cnc, material: string): Toolbox {
  const tools = new Map<string, Tool>();
  const unable = new Map<string, NoSpeed>();
  for (const [name, bit] of Object.entries(shop.bits)) {
    const speeds = speedsOf(cnc, bit, material);
    if ("limit" in speeds) unable.set(name, speeds);
    else tools.set(name, { name, bit, d: cutOf(bit), radius: cutOf(bit) / 2, speeds });
  }
  return { tools, unable };
}

/** Where a cone's own angle and that of what it cuts agree: rad, half a degree; common practice, no source. */
export const sameAngle = Math.PI / 360;

/**
 * What sinks a hole's mouth: the narrowest cone of the head's angle that ends in a point and is as wide as the mouth; for
 * a counterbore the widest straight bit that goes into it.
 */
export function sinkTool({ tools }: Toolbox, sink: Sink): Tool | undefined {
  const all = [...tools.values()];
  const reaches = ({ bit }: Tool, depth: number) => (bit["cutting length"] ?? depth) >= depth - 1e-6;
  if (sink.angle > 0) {
    const tip = sink.d / 2 / Math.tan(sink.angle / 2);
    return all
      .filter(({ bit }) => (bit.kind === "v" || bit.kind === "chamfer") && bit.bearing === undefined)
      .filter(({ bit }) => bit.angle !== undefined && Math.abs(bit.angle - sink.angle) <= sameAngle)
      .filter((tool) => tool.d >= sink.d - 1e-6 && reaches(tool, tip))
      .sort((a, b) => a.d - b.d)[0];
  }
  return all
    .filter((tool) => tool.bit.kind === "straight" && tool.d <= sink.d + 1e-6 && reaches(tool, sink.depth))
    .sort((a, b) => b.d - a.d)[0];
}
