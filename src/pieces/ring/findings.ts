import type { FindingDef } from "../../input/finding.js";

export const noDriverThere: FindingDef = {
  code: "ring-without-driver",
  severity: "error",
  words: "{piece} has no driver for the ring to go around",
  next: "name a box that has a `driver`",
  explain: "A ring lies under the frame of a driver; it takes its centre, its inside and its screws from there.",
};

export const ringTooNarrow: FindingDef = {
  code: "ring-too-narrow",
  severity: "error",
  words: "the ring's {outer} of {outside} leaves {web} outside its {inner} of {inside}",
  next: "make it at least {least} across, or the inside smaller",
  explain: "Less than 3 mm of board breaks out in the cutting (common practice, no source).",
};

export const recessTooDeep: FindingDef = {
  code: "recess-too-deep",
  severity: "error",
  words: "the recess is {deep} deep in {thickness} board",
  next: "make it at most {most} deep, or use a thicker board",
  explain:
    "The screws of the driver hold in what is left under the recess: at least 3 mm (common practice, no source).",
};

export const frameUnknown: FindingDef = {
  code: "frame-unknown",
  severity: "error",
  words: "the data of driver {driver} give no {missing}, so the recess for its frame cannot be cut",
  next: "add {missing} to the driver, or give the recess by its own `across` and `deep`",
  explain: "`recess: frame` takes the diameter from the driver's `frame` and the depth from its `flange`.",
};

export const ringFindings: readonly FindingDef[] = [noDriverThere, ringTooNarrow, recessTooDeep, frameUnknown];
