import { expect } from "vitest";
import { extentsOf } from "../../src/geometry/measure.js";
import { loadSolids, type SolidKernel } from "../../src/geometry/solids.js";
import { blockAround, cornersOf } from "../../src/geometry/solids-apart.js";
import { tolerance } from "../../src/geometry/tolerance.js";
import { insideClosed } from "../../src/plan/checks/insideClosed.js";
import { netVolume } from "../../src/plan/checks/netVolume.js";
import { boardOf, wallOf } from "../../src/plan/solids.js";
import { type Standing, standingParts } from "../../src/plan/standing.js";
import { starterShop } from "../../src/shop/starter.js";
import type { PlannedBox } from "./boxes.js";

/** How far a panel is carried on in its own plane to see whether it meets its neighbour, mm. */
const onward = 0.05;

/**
 * Holds what a box must be: no two boards overlap, joined or not; joined boards touch along their whole edge; the inside
 * is closed; and the volume by formula is the one measured on the boards, to a millionth.
 */
export async function proveBox({ job, plan }: PlannedBox): Promise<void> {
  const kernel = await loadSolids();
  const parts = standingParts(plan);
  kernel.within(() => {
    const solids = parts.map((part) => boardOf(kernel, part));
    parts.forEach((one, i) => {
      parts.slice(i + 1).forEach((other, k) => {
        if (!near(one, other)) return;
        const { volume, depth } = kernel.overlap(solids[i]!, solids[i + 1 + k]!, [one.at, other.at]);
        const over = volume > tolerance.overlapVolume && depth > tolerance.contact;
        expect(over, `${one.part.role} runs ${depth} into ${other.part.role}`).toBe(false);
      });
    });
  });
  for (const joint of plan.built.joints.filter(({ form }) => form !== "lap")) {
    const [over, into] = [joint.laps, joint.into].map((id) => parts.find(({ part }) => part.id === id)!) as [
      Standing,
      Standing,
    ];
    const share = kernel.within(() => {
      const longer = wallOf(kernel, into, onward, []);
      return kernel.volumeOf(
        kernel.intersection(longer, wallOf(kernel, over, joint.form === "mitre" ? onward : 0, [])),
      );
    });
    // at the least the edge's length by the thinner board by half of what it was carried on
    const thin = Math.min(over.part.thickness, into.part.thickness);
    expect(share, `${joint.id} does not meet`).toBeGreaterThan(0.5 * onward * thin * sharedLength(joint.edges, into));
  }
  kernel.within(() => provePieces(kernel, parts, plan));
  const checks = [
    ...(await insideClosed.run(job, starterShop(), plan)),
    ...(await netVolume.run(job, starterShop(), plan)),
  ];
  expect(checks.map(({ code }) => code)).toEqual([]);
}

/** Each board inside, alone: what the formula takes off for it is what its solid holds. */
function provePieces(kernel: SolidKernel, parts: readonly Standing[], { built }: PlannedBox["plan"]): void {
  for (const { what, litres } of built.air.flatMap(({ terms }) => terms)) {
    const [, kind, number] = /^(brace|port) (\d+)( panels)?$/.exec(what) ?? [];
    const own = parts.filter(({ part }) => [`${kind}.${number}`, `${kind} turn.${number}`].includes(part.role));
    if (own.length === 0) continue;
    const measured = own.reduce((sum, each) => sum + kernel.volumeOf(boardOf(kernel, each)), 0) / 1e6;
    const curved = own.some(({ part }) => part.profile.holes.length > 0);
    expect(Math.abs(measured + litres), what).toBeLessThan((curved ? 1e-4 : 1e-6) * measured);
  }
}

/** The edge that meets the other board, less what its ends may give up to other corners. */
function sharedLength(edges: readonly string[], { part }: Standing): number {
  const { outer } = part.profile;
  const i = outer.findIndex(({ by }) => edges.includes(by));
  const [a, b] = [outer[i]!, outer[(i + 1) % outer.length]!];
  return Math.max(0, Math.hypot(b.x - a.x, b.y - a.y) - 4 * part.thickness);
}

function near(one: Standing, other: Standing): boolean {
  const [a, b] = [one, other].map((part) => blockAround(cornersOf(withBack(part)))) as [
    ReturnType<typeof blockAround>,
    ReturnType<typeof blockAround>,
  ];
  return [0, 1, 2].every((i) => a.min[i]! < b.max[i]! + 1 && b.min[i]! < a.max[i]! + 1);
}

/** A part's block wide enough for a back that is larger than its face. */
function withBack(standing: Standing): Standing {
  const { min, max } = extentsOf(standing.part.blank.outer);
  return {
    ...standing,
    block: { min: [min.x, min.y, -standing.part.thickness], max: [max.x, max.y, 0] },
  };
}
