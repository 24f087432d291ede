import { areaOfRegion, extentsOf } from "../geometry/measure.js";
import { blockOfPrism, type Prism, shadowOf, sharedBlocks } from "../geometry/prism.js";
import type { Block } from "../geometry/solids.js";
import { sureDifference, sureOffset } from "../geometry/sure.js";
import { missingThrough } from "../geometry/throughOpening.js";
import { tolerance } from "../geometry/tolerance.js";
import { beyondOutline, surelyWithin } from "../geometry/withinOutline.js";
import type { PieceId } from "../model/ids.js";
import type { Obstacle, Space } from "../model/job.js";

/** What keeps something out of a place: a side of the space, its height, its floor, an obstacle, the opening, a piece. */
export type Limit =
  | { readonly kind: "side" | "obstacle" | "piece"; readonly name: string }
  | { readonly kind: "height" | "floor" | "opening" };

/** What other pieces take of the space, by piece. Vehicle frame. */
export type Others = ReadonlyMap<PieceId, readonly Prism[]>;

/**
 * Everything that a body of prisms meets in the space: sides that it stands over, height and floor, obstacles with their
 * clearance, the loading opening, other pieces. None: it fits.
 *
 * The rules are those of the checks, without solids: what stands out or in by no more than a contact touches.
 */
export function limitsOf(body: readonly Prism[], space: Space, others: Others): readonly Limit[] {
  return [
    ...sidesMet(body, space).map((name): Limit => ({ kind: "side", name })),
    ...levelsMet(body, space),
    ...Object.entries(space.obstacles).flatMap(([name, obstacle]): Limit[] =>
      meets(body, [keptClear(obstacle)]) ? [{ kind: "obstacle", name }] : [],
    ),
    ...[...others].flatMap(([name, other]): Limit[] => (meets(body, other) ? [{ kind: "piece", name }] : [])),
    ...openingMet(body, space),
  ];
}

function sidesMet(body: readonly Prism[], { outline }: Space): readonly string[] {
  const sides = body.flatMap((prism) => {
    const shadow = shadowOf(prism);
    const { min, max } = extentsOf(shadow);
    if (surelyWithin([min, { x: max.x, y: min.y }, max, { x: min.x, y: max.y }], outline)) return [];
    const out = sureDifference({ outer: shadow, holes: [] }, [{ outer: outline, holes: [] }]).value;
    return (out ?? [{ outer: shadow, holes: [] }]).flatMap((piece) => {
      const beyond = beyondOutline(extentsOf(piece), outline);
      const dust = areaOfRegion(piece) * upright(prism) <= tolerance.overlapVolume;
      return beyond === undefined || beyond.out <= tolerance.contact || dust ? [] : beyond.side.split("|");
    });
  });
  return [...new Set(sides)];
}

/** How high a prism is. */
function upright(prism: Prism): number {
  const { min, max } = blockOfPrism(prism);
  return max[2] - min[2];
}

function levelsMet(body: readonly Prism[], { height = Number.POSITIVE_INFINITY }: Space): readonly Limit[] {
  const { min, max } = blockRound(body);
  return [
    ...(max[2] > height + tolerance.contact ? [{ kind: "height" as const }] : []),
    ...(min[2] < -tolerance.contact ? [{ kind: "floor" as const }] : []),
  ];
}

function openingMet(body: readonly Prism[], { opening }: Space): readonly Limit[] {
  if (opening === undefined) return [];
  const { min, max } = blockRound(body);
  const size = [max[0] - min[0], max[1] - min[1], max[2] - min[2]] as const;
  return missingThrough(size, opening.width, opening.height) > 0 ? [{ kind: "opening" }] : [];
}

/** An obstacle with its clearance on every side, above and below. */
function keptClear({ outline, bottom, top, clear }: Obstacle): Prism {
  const grown = clear > 0 ? sureOffset({ outer: outline, holes: [] }, clear).value?.[0]?.outer : outline;
  return { along: "z", section: grown ?? outline, from: bottom - clear, to: top + clear };
}

function meets(one: readonly Prism[], other: readonly Prism[]): boolean {
  return one.some((a) => other.some((b) => sharedBlocks(a, b).some(isDeep)));
}

function isDeep({ min, max }: Block): boolean {
  const sizes = [0, 1, 2].map((i) => max[i]! - min[i]!);
  return Math.min(...sizes) > tolerance.contact && sizes.reduce((a, b) => a * b) > tolerance.overlapVolume;
}

function blockRound(body: readonly Prism[]): Block {
  const blocks = body.map(blockOfPrism);
  const at = (of: "min" | "max", pick: (...values: number[]) => number) =>
    [
      pick(...blocks.map((block) => block[of][0])),
      pick(...blocks.map((block) => block[of][1])),
      pick(...blocks.map((block) => block[of][2])),
    ] as const;
  return { min: at("min", Math.min), max: at("max", Math.max) };
}
