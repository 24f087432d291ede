import { partName } from "../../drawing/partName.js";
import { placeWords, workGroups } from "../../drawing/workGroups.js";
import type { Build } from "../../model/build.js";
import { csvBytes } from "./csv.js";

const heads = ["number", "part", "board", "features", "at", "setup", "tool", "why", "build"] as const;

/** Who cuts what, with which tool and why there: machine, saw, hand router and bench, part by part. */
export function workCsv({ plan, process, hash }: Build): Uint8Array {
  const rows = plan.built.parts.flatMap((part) => {
    const work = process.parts.find((each) => each.part === part.id)?.work ?? [];
    return workGroups(work).map((group) => [
      part.number,
      partName(part),
      part.board,
      group.features.join(" "),
      placeWords(group),
      group.setup,
      group.tool,
      group.why,
      hash,
    ]);
  });
  return csvBytes([heads, ...rows]);
}
