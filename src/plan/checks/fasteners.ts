import { nearestOn, nearestOnEdge } from "../../geometry/distance.js";
import { pointInProfile } from "../../geometry/inside.js";
import type { Vertex } from "../../geometry/profile.js";
import { tessellate } from "../../geometry/tessellate.js";
import { tolerance } from "../../geometry/tolerance.js";
import { type Finding, type FindingDef, mm, type Quantity, raise, text } from "../../input/finding.js";
import type { Check } from "../../model/build.js";
import type { Axis } from "../../model/joint.js";
import type { Part } from "../../model/part.js";
import { rules } from "../../shop/rules.js";
import { nameOf } from "../standing.js";
import { type Bore, boresOf, edgeNear } from "./common/bores.js";
import { cornersOfOutline } from "./common/corners.js";
import { fixesDriver } from "./common/driverFixing.js";
import { groupsOf } from "./common/groups.js";

export const faceThreadNearEdge: FindingDef = {
  code: "face-thread-near-edge",
  severity: "warning",
  words: "{fasteners} in {part}: a thread in the face is {reached} from the edge, where {least} is the least",
  next: "move it inwards by {missing}",
  explain: "A screw threaded into the face of a board near its edge, or an insert there, splits or bulges the board.",
};

export const faceThreadNearCorner: FindingDef = {
  code: "face-thread-near-corner",
  severity: "warning",
  words: "{fasteners} in {part}: a thread in the face is {reached} from a corner, where {least} is the least",
  next: "move it away from the corner by {missing}",
  explain: "Corners of a board break off more easily than its edges, so a thread keeps twice as far from them.",
};

export const edgeThreadNearCorner: FindingDef = {
  code: "edge-thread-near-corner",
  severity: "warning",
  words: "{fasteners} in {part}: a screw into the edge is {reached} from the corner, where {least} is the least",
  next: "move it along the edge by {missing}",
  explain:
    "A screw into the edge of a board drives its layers apart, and near a corner nothing holds them. On a wall shorter than 280 mm a quarter of its length will do, but never less than 25 mm, and always with a pilot.",
};

export const edgeTooThin: FindingDef = {
  code: "edge-too-thin",
  severity: "warning",
  words: "{fasteners}: {part} is {reached} thick, too thin for screws into its edge",
  next: "use a board of {least} or more, or glue a block into the corner and screw into that",
  explain: "Screws into the edge of a thin board split it.",
};

export const lapNearEdge: FindingDef = {
  code: "lap-near-edge",
  severity: "warning",
  words: "{fasteners} in {part}: the clearance hole is {reached} from the edge, where the joint's middle is {least}",
  next: "move the screw to the middle of the board it goes into",
  explain: "A screw through a lapping panel stands over the middle of the other panel's edge: half its thickness in.",
};

export const pilotNearOpening: FindingDef = {
  code: "pilot-near-opening",
  severity: "warning",
  words: "{fasteners} in {part}: the hole leaves {reached} of board to an opening, where {least} is the least",
  next: "move it, or make the opening smaller by {missing}",
  explain: "A thin web between a hole and the edge of a cut-out breaks out when the screw goes in.",
};

export const insertNearEdge: FindingDef = {
  code: "insert-near-edge",
  severity: "warning",
  words: "{fasteners} in {part}: the insert's hole is {reached} from the edge, where {least} is the least",
  next: "move it inwards by {missing}",
  explain:
    "An insert spreads the board as it goes in: the middle of its hole keeps one and a half diameters from the edge.",
};

export const insertInEdge: FindingDef = {
  code: "insert-in-edge",
  severity: "error",
  words: "{fasteners}: a threaded insert is set in the edge of {part}",
  next: "set it in a face, or glue a block behind and set it in that",
  explain: "A threaded insert in the edge of a board splits it. It goes into a face, or into a block.",
};

/** Where a fastener keeps too little distance. One finding gathers all of a part that break the same rule. */
type Near = {
  readonly def: FindingDef;
  readonly part: Part;
  readonly axis: Axis;
  readonly reached: number;
  readonly least: number;
};

export const fasteners: Check = {
  name: "fastener distances",
  findings: [
    faceThreadNearEdge,
    faceThreadNearCorner,
    edgeThreadNearCorner,
    edgeTooThin,
    lapNearEdge,
    pilotNearOpening,
    insertNearEdge,
    insertInEdge,
  ],
  run(job, _shop, plan) {
    const bores = new Map(plan.built.parts.flatMap(boresOf).map((bore) => [bore.feature.id, bore]));
    const near = plan.built.axes.flatMap((axis) =>
      axis.stack.flatMap((place, i): readonly Near[] => {
        const bore = bores.get(place.feature);
        if (bore === undefined) return [];
        if (place.role === "clearance")
          return clearanceRule(axis, bore, bores.get(axis.stack[i + 1]?.feature ?? place.feature));
        if (place.role === "pilot") return pilotRules(axis, bore, fixesDriver(axis, job, plan));
        const first = axis.stack.findIndex(({ role }) => role === "thread") === i;
        return first ? insertRules(axis, bore, fixesDriver(axis, job, plan)) : [];
      }),
    );
    return gathered(near);
  },
};

/** Through a lapping panel into another's edge. */
function clearanceRule(axis: Axis, bore: Bore, next: Bore | undefined): readonly Near[] {
  if (next === undefined || !inEdge(next) || inEdge(bore)) return [];
  return tooNear(lapNearEdge, axis, bore, toOutline(bore), next.part.thickness / 2);
}

function pilotRules(axis: Axis, bore: Bore, forDriver: boolean): readonly Near[] {
  if (inEdge(bore)) return edgeRules(axis, bore);
  if (forDriver) {
    const web = Math.min(toOutline(bore), toOpenings(bore)) - bore.hole.d / 2;
    return tooNear(pilotNearOpening, axis, bore, web, rules.web.value);
  }
  return [
    ...tooNear(faceThreadNearEdge, axis, bore, toOutline(bore), rules.faceThreadToEdge.value),
    ...tooNear(faceThreadNearCorner, axis, bore, toCorner(bore), rules.faceThreadToCorner.value),
    ...tooNear(pilotNearOpening, axis, bore, toOpenings(bore) - bore.hole.d / 2, rules.web.value),
  ];
}

function edgeRules(axis: Axis, bore: Bore): readonly Near[] {
  const { part, feature, hole } = bore;
  const edge = typeof feature.side === "string" ? undefined : edgeNear(part, feature.side.edge, hole.at);
  if (edge === undefined) return [];
  const length = Math.hypot(edge.b.x - edge.a.x, edge.b.y - edge.a.y);
  const toEnd = Math.min(...[edge.a, edge.b].map((end) => Math.hypot(hole.at.x - end.x, hole.at.y - end.y)));
  const least =
    length < rules.shorterWall.value
      ? Math.max(rules.edgeThreadLeast.value, length / 4)
      : rules.edgeThreadToCorner.value;
  return [
    ...tooNear(edgeTooThin, axis, bore, part.thickness, rules.edgeScrewBoard.value),
    ...tooNear(edgeThreadNearCorner, axis, bore, toEnd, least),
    ...tooNear(pilotNearOpening, axis, bore, besideOpenings(bore) - hole.d / 2, rules.web.value),
  ];
}

function insertRules(axis: Axis, bore: Bore, forDriver: boolean): readonly Near[] {
  if (inEdge(bore)) return [{ def: insertInEdge, part: bore.part, axis, reached: 0, least: 0 }];
  const room = Math.min(toOutline(bore), toOpenings(bore));
  if (forDriver) return tooNear(pilotNearOpening, axis, bore, room - bore.hole.d / 2, rules.web.value);
  return tooNear(insertNearEdge, axis, bore, room, rules.insertEdge.value * bore.hole.d);
}

function tooNear(def: FindingDef, axis: Axis, { part }: Bore, reached: number, least: number): readonly Near[] {
  return reached < least - tolerance.contact ? [{ def, part, axis, reached, least }] : [];
}

/** One finding for a rule and a part, with the worst figure and every fastener that breaks it. */
function gathered(near: readonly Near[]): readonly Finding[] {
  return groupsOf(near, ({ def, part }) => `${def.code}\n${part.id}`).map((group) => {
    const worst = group.reduce((a, b) => (b.reached - b.least < a.reached - a.least ? b : a));
    const facts: Record<string, Quantity> = {
      fasteners: text(group.map(({ axis }) => axis.id).join(", ")),
      part: text(nameOf(worst.part)),
      reached: mm(Math.max(0, worst.reached)),
      least: mm(worst.least),
      missing: mm(worst.least - worst.reached),
    };
    return raise(worst.def, {
      at: group.flatMap(({ axis }) => axis.from),
      on: [worst.part.id, ...group.map(({ axis }) => axis.id)],
      facts,
    });
  });
}

function inEdge({ feature }: Bore): boolean {
  return typeof feature.side !== "string";
}

function toOutline({ part, hole }: Bore): number {
  return nearestOn(part.profile.outer, hole.at)?.distance ?? 0;
}

function toCorner({ part, hole }: Bore): number {
  const corners = cornersOfOutline(part.profile.outer);
  return Math.min(...corners.map(({ x, y }) => Math.hypot(x - hole.at.x, y - hole.at.y)));
}

/** From a hole in an edge, all along it, to the nearest opening of its board; 0 where it runs into one. */
function besideOpenings({ part, mouth, bottom }: Bore): number {
  const from: Vertex = { x: mouth[0], y: mouth[1], bulge: 0, by: "" };
  const to = { x: bottom[0], y: bottom[1] };
  return Math.min(
    ...part.features.flatMap(({ cut }) => {
      if (cut.kind !== "opening") return [];
      const { outer } = cut.region;
      if (pointInProfile(outer, to)) return [0];
      return tessellate(outer, tolerance.chord).map((point) => {
        const near = nearestOnEdge(from, to, point);
        return Math.hypot(near.x - point.x, near.y - point.y);
      });
    }),
  );
}

function toOpenings({ part, hole }: Bore): number {
  return Math.min(
    ...part.features.flatMap(({ cut }) =>
      cut.kind === "opening" ? [nearestOn(cut.region.outer, hole.at)?.distance ?? 0] : [],
    ),
  );
}
