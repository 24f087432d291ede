import fc from "fast-check";
import { hasErrors } from "../../src/input/finding.js";
import { type BoxSpec, type PlannedBox, planBox } from "./boxes.js";
import { proveBox } from "./boxProof.js";

/** Whether a planned box is as it must be: fails by an expectation; false where a check refuses the box after all. */
type Proof = (planned: PlannedBox, box: BoxSpec) => Promise<boolean>;

const wholeBox: Proof = async (planned) => {
  await proveBox(planned);
  return true;
};

/** Draws boxes, plans each and proves those that are not refused. Returns what was proved. */
export async function proveDrawn(
  boxes: fc.Arbitrary<BoxSpec>,
  draws: { readonly seed: number; readonly numRuns: number },
  proof: Proof = wholeBox,
): Promise<readonly BoxSpec[]> {
  const made: BoxSpec[] = [];
  await fc.assert(
    fc.asyncProperty(boxes, async (box) => {
      const planned = planBox(box);
      if (hasErrors(planned.findings)) return;
      if (await proof(planned, box)) made.push(box);
    }),
    draws,
  );
  return made;
}

/** How many of the boxes have this key. */
export const having = (boxes: readonly BoxSpec[], key: string): number =>
  boxes.filter((box) => box[key] !== undefined).length;
