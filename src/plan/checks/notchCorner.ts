import { type Finding, type FindingDef, mm, raise, text } from "../../input/finding.js";
import type { Check } from "../../model/build.js";
import { nameOf, standingParts } from "../standing.js";
import { tightCorners } from "./common/tightCorners.js";

export const notchCornerTight: FindingDef = {
  code: "notch-corner-tight",
  severity: "warning",
  words:
    "the rounded corner of {part}, {radius} finished, comes within {reached} of {obstacle}, where {clear} is wanted",
  next: "round it by {clear} at most, or give the obstacle {missing} more room",
  explain:
    "A notch that keeps its clearance along its sides comes closer at a rounded inside corner: with clearance c and radius R it comes to sqrt(2) (c - R) + R of a sharp corner of the obstacle.",
};

export const notchCorner: Check = {
  name: "notch corners",
  findings: [notchCornerTight],
  run(job, _shop, plan) {
    return standingParts(plan).flatMap((standing): readonly Finding[] =>
      tightCorners(job, standing).map(({ obstacle, clear, radius, reached, features }) => {
        const { part } = standing;
        const made = part.features.filter(({ id }) => features.includes(id));
        return raise(notchCornerTight, {
          at: [...(made.length > 0 ? made.flatMap(({ from }) => from) : part.from)],
          on: [part.id, ...features],
          facts: {
            part: text(nameOf(part)),
            obstacle: text(obstacle),
            radius: mm(radius),
            reached: mm(Math.max(0, reached)),
            clear: mm(clear),
            missing: mm(clear - reached),
          },
        });
      }),
    );
  },
};
