import { arcOf } from "../../../geometry/arc.js";
import { nearestOn } from "../../../geometry/distance.js";
import type { Vector } from "../../../geometry/frame.js";
import type { Point } from "../../../geometry/profile.js";
import { onceFor } from "../../../model/once.js";
import type { Cut, Feature, Part } from "../../../model/part.js";

type Hole = Extract<Cut, { kind: "hole" }>;

/** A drilled hole as a straight piece in its part's frame, from its mouth to its bottom, mm. */
export type Bore = {
  readonly part: Part;
  readonly feature: Feature;
  readonly hole: Hole;
  readonly mouth: Vector;
  readonly bottom: Vector;
  /** It comes out on the other side. */
  readonly through: boolean;
};

/** Every drilled hole of a part. */
export const boresOf = onceFor((part: Part): readonly Bore[] =>
  part.features.flatMap((feature) => {
    const { cut, side } = feature;
    if (cut.kind !== "hole") return [];
    if (typeof side !== "string") return edgeBore(part, feature, cut, side.edge);
    const depth = cut.depth === "through" ? part.thickness : cut.depth;
    const [from, to] = side === "face" ? [0, -depth] : [-part.thickness, depth - part.thickness];
    const { x, y } = cut.at;
    return [
      { part, feature, hole: cut, mouth: [x, y, from], bottom: [x, y, to], through: depth >= part.thickness } as const,
    ];
  }),
);

/** A hole in an edge runs into the board, square to that edge. */
function edgeBore(part: Part, feature: Feature, hole: Hole, edge: string): readonly Bore[] {
  const inward = inwardAt(part, edge, hole.at);
  if (inward === undefined) return [];
  const depth = hole.depth === "through" ? part.thickness : hole.depth;
  const z = -(hole.below ?? part.thickness / 2);
  const { x, y } = hole.at;
  return [
    {
      part,
      feature,
      hole,
      mouth: [x, y, z],
      bottom: [x + inward.x * depth, y + inward.y * depth, z],
      through: hole.depth === "through",
    },
  ];
}

/** A unit vector into the board from a point on the named edge of its outline. */
function inwardAt(part: Part, name: string, at: Point): Point | undefined {
  const edge = edgeNear(part, name, at);
  if (edge === undefined) return undefined;
  const { a, b } = edge;
  if (a.bulge === 0) {
    const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
    return { x: -(b.y - a.y) / length, y: (b.x - a.x) / length };
  }
  const { center, radius } = arcOf(a, b);
  const side = Math.sign(a.bulge) / radius;
  return { x: (center.x - at.x) * side, y: (center.y - at.y) * side };
}

/** The edge of the outline with this name that lies nearest to a point. */
export function edgeNear({ profile }: Part, name: string, at: Point) {
  const { outer } = profile;
  const edges = outer.flatMap((a, i) => (a.by === name ? [{ a, b: outer[(i + 1) % outer.length]! }] : []));
  const away = ({ a, b }: (typeof edges)[number]) => nearestOn([a, { ...b, bulge: 0 }], at)?.distance ?? 0;
  return edges.sort((one, other) => away(one) - away(other))[0];
}
