import type { Frame } from "../../../geometry/frame.js";
import type { SolidKernel, SolidRef } from "../../../geometry/solids.js";
import { type StandingBlock, separation } from "../../../geometry/solids-apart.js";
import { tolerance } from "../../../geometry/tolerance.js";
import type { Tube } from "../../../model/piece.js";
import { type Body, blockOfBody, bodyOf } from "../../solids.js";

/** Something round, as the kernel makes it. */
export type Round = { readonly at: Frame; readonly body: Body };

export const roundsOf = ({ stretches }: Tube): readonly Round[] =>
  stretches.map(({ at, length, d, dTo }) => ({ at, body: { d, dTo, from: 0, to: length } }));

/** What a round thing runs into: how deep, and what they share. */
export type Hit<T> = { readonly what: T; readonly depth: number; readonly shared: SolidRef };

export function hitOf<T>(
  kernel: SolidKernel,
  solid: SolidRef,
  other: SolidRef,
  along: readonly Frame[],
  what: T,
): readonly Hit<T>[] {
  const { volume, depth } = kernel.overlap(solid, other, along);
  if (volume <= tolerance.overlapVolume || depth <= tolerance.contact) return [];
  return [{ what, depth, shared: kernel.intersection(solid, other) }];
}

export const isNear = (block: StandingBlock, rounds: readonly Round[]): boolean =>
  rounds.some(({ at, body }) => separation(block, blockOfBody(body, at)) < -tolerance.contact);

export const areNear = (one: readonly Round[], other: readonly Round[]): boolean =>
  other.some(({ at, body }) => isNear(blockOfBody(body, at), one));

export const solidOf = (kernel: SolidKernel, rounds: readonly Round[]): SolidRef =>
  kernel.union(rounds.map(({ at, body }) => bodyOf(kernel, body, at)));
