import { circle } from "../../../geometry/shapes.js";
import type { Draft } from "../../common/part.js";
import { type Face, onSheet, type Sheet } from "../form/face.js";
import type { RoundPort } from "./roundPort.js";

/** The holes of the round ports in a sheet of their face, and in its panel the recess of a flange. */
export function roundHoles(face: Face, sheet: Sheet, ports: readonly RoundPort[]): readonly Draft[] {
  return ports
    .filter((port) => port.face === face)
    .flatMap((port) => [holeDraft(port, sheet), ...(sheet === face.panel ? recessDraft(port, sheet) : [])]);
}

export function holeDraft({ role, from, face, at, hole }: RoundPort, sheet: Sheet): Draft {
  const by = `opening.${role}`;
  const region = { outer: circle(onSheet(face, sheet, at), hole / 2, by), holes: [] };
  return { name: by, from: [from], filledBy: "port", cut: { kind: "opening", corner: "bit", region } };
}

function recessDraft({ role, from, face, at, recess }: RoundPort, sheet: Sheet): readonly Draft[] {
  if (recess === undefined) return [];
  const by = `recess.${role}`;
  const region = { outer: circle(onSheet(face, sheet, at), recess.across / 2, by), holes: [] };
  return [{ name: by, from: [from], cut: { kind: "pocket", corner: "bit", depth: recess.deep, region } }];
}
