import { expect } from "vitest";
import { extentsOf } from "../../src/geometry/measure.js";
import { offsetEach } from "../../src/geometry/offset.js";
import type { Profile } from "../../src/geometry/profile.js";
import { loadSolids, type SolidKernel } from "../../src/geometry/solids.js";
import { blockAround, cornersOf } from "../../src/geometry/solids-apart.js";
import { tolerance } from "../../src/geometry/tolerance.js";
import type { PartId } from "../../src/model/ids.js";
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
  kernel.within(() => proveJoints(kernel, parts, plan));
  kernel.within(() => provePieces(kernel, parts, plan));
  const checks = [
    ...(await insideClosed.run(job, starterShop(), plan)),
    ...(await netVolume.run(job, starterShop(), plan)),
  ];
  expect(checks.map(({ code }) => code)).toEqual([]);
}

/**
 * Each joint: the edge of the one, carried on a little, runs into the other. Where that ends in a corner that goes in, the
 * edge may meet what is glued to it there.
 */
function proveJoints(kernel: SolidKernel, parts: readonly Standing[], { built: { joints } }: PlannedBox["plan"]): void {
  const standing = (id: PartId) => parts.find(({ part }) => part.id === id)!;
  for (const { id, form, laps, into, edges } of joints.filter(({ form }) => form !== "lap")) {
    const [over, ends] = [standing(laps), standing(into)];
    const mitre = form === "mitre";
    const glued = joints.flatMap((other) => (other.laps === laps ? other.into : other.into === laps ? other.laps : []));
    const others = mitre ? [] : glued.filter((other) => other !== into).map(standing);
    const longer = mitre ? wallOf(kernel, ends, onward, []) : wallOf(kernel, carriedOn(ends, edges), 0, []);
    const shared = (boards: readonly Standing[]) => {
      const met = kernel.union(boards.map((board) => wallOf(kernel, board, mitre ? onward : 0, [])));
      return kernel.volumeOf(kernel.intersection(longer, met));
    };
    const own = shared([over]);
    expect(own, `${id} does not meet`).toBeGreaterThan(0);
    // at the least the edge's length by the thinner board by half of what it was carried on
    const least = 0.5 * onward * Math.min(over.part.thickness, ends.part.thickness) * sharedLength(edges, ends);
    if (own <= least) expect(shared([over, ...others]), `${id} does not meet all along`).toBeGreaterThan(least);
  }
}

/** A board with these edges carried on in its plane. */
function carriedOn(standing: Standing, edges: readonly string[]): Standing {
  const { part } = standing;
  const grow = (outline: Profile) =>
    offsetEach(outline, (by) => (edges.includes(by) ? onward : 0), { corners: "sharp" })[0] ?? outline;
  const profile = { ...part.profile, outer: grow(part.profile.outer) };
  return { ...standing, part: { ...part, profile, blank: { ...part.blank, outer: grow(part.blank.outer) } } };
}

/** Each board inside, alone: what the formula takes off for it is what its solid holds. */
function provePieces(kernel: SolidKernel, parts: readonly Standing[], { built }: PlannedBox["plan"]): void {
  for (const { what, litres } of built.air.flatMap(({ terms }) => terms)) {
    const [, kind, number] = /^(brace|port|port block) (\d+)( panels)?$/.exec(what) ?? [];
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
