import { endAxes } from "../form/ends.js";
import { type Extrusion, endNames } from "../form/extrusion.js";
import { depthOf, type Face, type Sheet } from "../form/face.js";
import { inward, type Line } from "../form/lines.js";
import { sheetAt, wallAxes, wallSheet } from "../form/wallSheet.js";
import type { Inside } from "../inside.js";
import { edgeLine, meetsAt } from "./section.js";

/**
 * What of a face has this air behind it, as a sheet whose face is the inside plane and whose thickness is nothing; its
 * bevels tell how the air narrows or widens with the depth. None where the air does not reach the face.
 */
export function airBehind(face: Face, air: Inside, extrusion: Extrusion): Sheet | undefined {
  const end = air.ends.indexOf(face.name);
  if (end >= 0 && endNames[extrusion.view].includes(face.name)) {
    const axes = endAxes(extrusion, face.name === endNames[extrusion.view][0] ? "low" : "high");
    return sheetAt(axes.frame, axes.onFace(air.section), {}, depthOf(face.skin), 0);
  }
  const i = air.section.findIndex(({ by }) => by === face.name);
  return i < 0 ? undefined : behindWall(air, i, extrusion);
}

function behindWall({ section, from, to, ends }: Inside, i: number, extrusion: Extrusion): Sheet {
  const n = section.length;
  const edge = (k: number) => edgeLine(section, (k + n) % n);
  const corner = (k: number) => section[(k + n) % n]!;
  const [line, before, after] = [edge(i), edge(i - 1), edge(i + 1)];
  const meets = (other: Line, depth: number) => meetsAt(inward(line, depth), other);
  const run = (depth: number) => [meets(before, depth), meets(after, depth)] as const;
  const axes = wallAxes({ ...extrusion, section: [corner(i), corner(i + 1)] }, 0);
  const bounds = { before: corner(i - 1).by, after: corner(i + 1).by, low: ends[0], high: ends[1] };
  const up = [from, to] as const;
  return { ...wallSheet(axes, bounds, { face: run(0), back: run(1) }, { face: up, back: up }, 0, 1), thickness: 0 };
}
