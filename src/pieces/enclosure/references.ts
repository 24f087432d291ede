import { extentsOf } from "../../geometry/measure.js";
import { below, type Origin } from "../../input/finding.js";
import type { Around, Free, Reference } from "../../model/piece.js";
import { rules } from "../../shop/rules.js";
import { type EnclosureSpec, sizeNames } from "./schema.js";

/** Every name that an enclosure mentions. */
export function referencesOf(spec: EnclosureSpec, at: Origin): readonly Reference[] {
  const line = spec.stands?.["line up"]?.driver;
  return [
    { kind: "board", name: spec.board, at: below(at, "board") },
    ...(spec.driver ? [{ kind: "driver" as const, name: spec.driver.is, at: below(at, "driver", "is") }] : []),
    ...(line ? [{ kind: "line" as const, name: line, at: below(at, "stands", "line up", "driver") }] : []),
  ];
}

/** The size that moves until the volume is right: in the saw's steps, from room to work in up to the space's own. */
export function freeSize(spec: EnclosureSpec, around: Around): Free | undefined {
  const index = sizeNames.findIndex((key) => spec.outside[key] === "free");
  if (index < 0 || spec.net === undefined) return undefined;
  const { step } = around.shop.saw;
  const { thickness } = around.board(spec.board);
  const least = 2 * thickness + rules.leastInside.value;
  return {
    from: below(around.origin, "outside", sizeNames[index]!),
    min: Math.ceil(least / step) * step,
    max: Math.floor(mostOf(index, around) / step) * step,
    step,
  };
}

function mostOf(index: number, { job }: Around): number {
  const { min, max } = extentsOf(job.space.outline);
  return [max.x - min.x, max.y - min.y, job.space.height ?? rules.mostHeight.value][index]!;
}
