import { extentsOf } from "../geometry/measure.js";
import type { Build } from "../model/build.js";
import type { Part } from "../model/part.js";
import { showFor, stepOf } from "./handShow.js";
import { exactSize } from "./sizes.js";

/** Nearer to a whole step than this nobody measures, mm. */
const unread = 0.05;

/** How far a size lies over the whole step before it, mm; 0 on a step, to what one reads. */
function overStep(size: number, step: number): number {
  const over = size - Math.floor((size + unread) / step) * step;
  return over > unread ? over : 0;
}

/**
 * Sizes of a part that are set by hand and lie off the tool's step, since the part stands there between others that it is
 * glued to: boards inside a box, between walls of measured thickness. What ends free lies on the step. mm, each once.
 */
export function sizesToFit(part: Part, { process, shop }: Pick<Build, "process" | "shop">): readonly number[] {
  const how = process.parts.find((each) => each.part === part.id);
  const step = stepOf(how?.method, shop);
  if (step === undefined || step === 0) return [];
  const { min, max } = extentsOf(part.profile.outer);
  const sizes = (["x", "y"] as const).flatMap((axis) => {
    const size = max[axis] - min[axis];
    const between = [min[axis], max[axis]].every((at) => isGluedAt(part, axis, at));
    return between && overStep(size, step) > 0 ? [size] : [];
  });
  return sizes.filter((size, i) => sizes.findIndex((other) => Math.abs(other - size) <= unread) === i);
}

/** Whether a part meets what it is glued to at one end of its extents: with the edge along that, else with one that ends there. */
function isGluedAt({ profile: { outer }, edges }: Part, axis: "x" | "y", at: number): boolean {
  const isThere = (i: number) => Math.abs(outer[i % outer.length]![axis] - at) <= unread;
  const touching = outer.flatMap(({ by }, i) =>
    isThere(i) || isThere(i + 1) ? [{ by, lies: isThere(i) && isThere(i + 1) }] : [],
  );
  const lying = touching.filter(({ lies }) => lies);
  return (lying.length > 0 ? lying : touching).some(({ by }) => edges[by]?.finish.kind === "joint");
}

/** "cut to fit: 23 7/8" + 0.1 mm"; empty where every size is on the step. */
export function fitWords(part: Part, build: Build): string {
  const sizes = sizesToFit(part, build);
  const how = build.process.parts.find((each) => each.part === part.id);
  const show = showFor(how?.method, build);
  return sizes.length === 0 ? "" : `cut to fit: ${sizes.map((size) => exactSize(size, show)).join(", ")}`;
}
