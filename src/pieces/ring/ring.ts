import { identity, shifted } from "../../geometry/frame.js";
import { circle } from "../../geometry/shapes.js";
import { below, type Origin, type Outcome, text } from "../../input/finding.js";
import { axisId, featureId, partId, pieceId } from "../../model/ids.js";
import type { Joint } from "../../model/joint.js";
import type { Around, Ask, Built, Offer, PieceKind, Reference, Step } from "../../model/piece.js";
import { driverScrewsOf, pilotDepth } from "../common/driverScrews.js";
import { type Draft, makePart } from "../common/part.js";
import { liftOf, type Ring, ringOf } from "./design.js";
import { ringFindings } from "./findings.js";
import { type RingSpec, ringSchema } from "./schema.js";

/** A ring under a driver's frame: its inside, a recess for the frame, pilots for its screws, chamfered edges. */
export const ring: PieceKind<RingSpec> = {
  kind: "ring",
  schema: ringSchema,
  findings: ringFindings,
  refs: referencesOf,
  free: () => undefined,
  offer: offerRing,
  ask: askLift,
  miss: () => 0,
  build: buildRing,
};

const centre = { x: 0, y: 0 };

function referencesOf(spec: RingSpec, at: Origin): readonly Reference[] {
  return [
    { kind: "board", name: spec.board, at: below(at, "board") },
    { kind: "piece", name: spec.around.driver, at: below(at, "around", "driver") },
  ];
}

function offerRing(spec: RingSpec, _size: number, around: Around): Outcome<Offer> {
  const { value: found, findings } = ringOf(spec, around);
  if (found === undefined) return { value: undefined, findings };
  const value: Offer = {
    stands: found.stands,
    planes: { face: identity, back: shifted(0, 0, -found.thickness) },
    outlines: { trim: { outer: circle(centre, found.outside / 2, "outline"), holes: [] } },
    drivers: {},
  };
  return { value, findings };
}

function askLift(spec: RingSpec, _size: number, around: Around): Outcome<readonly Ask[]> {
  const { value: found } = ringOf(spec, around);
  if (found === undefined) return { value: [], findings: [] };
  const ask: Ask = {
    kind: "lift driver",
    of: pieceId(found.host),
    by: around.id,
    from: [around.origin],
    driver: found.of,
    seated: seatStep(around),
    lift: liftOf(found),
  };
  return { value: [ask], findings: [] };
}

function buildRing(spec: RingSpec, _size: number, around: Around): Outcome<Built> {
  const { value: found } = ringOf(spec, around);
  // What stops a ring is told by its offer; there is nothing to build then.
  if (found === undefined) return { value: undefined, findings: [] };
  const pilots = pilotDrafts(found, around);
  const made = makePart({
    piece: around.id,
    role: "ring",
    from: [around.origin],
    board: around.board(spec.board),
    features: [...roundDrafts(found, around), ...pilots, ...chamferDrafts(spec, around)],
    at: identity,
  });
  const part = partId(around.id, "ring");
  const screws = driverScrewsOf(found.driver, around.shop);
  const axes = pilots.map((pilot) => ({
    id: pilot.axis!,
    from: pilot.from,
    ray: found.stands,
    fastener: `${screws?.name} screw`,
    stack: [{ part, feature: featureId(part, pilot.name), role: "pilot" as const }],
  }));
  const joint: Joint = {
    id: `${around.id}:seat`,
    form: "lap",
    laps: part,
    into: partId(pieceId(found.host), seatOf(found, around)),
    edges: [],
    axes: axes.map((axis) => axis.id),
    glue: true,
  };
  return {
    value: {
      parts: made.value ? [made.value] : [],
      joints: made.value ? [joint] : [],
      axes,
      mounts: [],
      air: [],
      steps: stepsOf(found, around),
      buys: [],
    },
    findings: made.findings,
  };
}

function seatOf(found: Ring, { offers }: Around): string {
  return offers.get(pieceId(found.host))?.drivers["driver"]?.plane ?? "top";
}

function roundDrafts(found: Ring, { origin }: Around): readonly Draft[] {
  const disc = (d: number, by: string) => ({ outer: circle(centre, d / 2, by), holes: [] });
  const { recess } = found;
  return [
    {
      name: "outline",
      from: [below(origin, "outside")],
      cut: { kind: "outline", region: disc(found.outside, "outline"), corner: "bit" },
    },
    {
      name: "opening.inside",
      from: [below(origin, "inside")],
      filledBy: "driver",
      cut: { kind: "opening", region: disc(found.inside, "opening.inside"), corner: "bit" },
    },
    ...(recess
      ? [
          {
            name: "recess",
            from: [below(origin, "recess")],
            cut: { kind: "pocket", region: disc(recess.across, "recess"), depth: recess.deep, corner: "bit" } as const,
          },
        ]
      : []),
  ];
}

/** The pilots of the driver's screws, drilled from the recess's floor. */
function pilotDrafts(found: Ring, around: Around): readonly Draft[] {
  const screws = driverScrewsOf(found.driver, around.shop);
  if (screws === undefined) return [];
  const floor = liftOf(found);
  const drilled = pilotDepth(screws.reach, floor);
  const depth = drilled === "through" ? "through" : drilled + (found.recess?.deep ?? 0);
  return screws.points.map((at, index) => ({
    name: `driver.${index + 1}`,
    from: [around.origin],
    axis: axisId(pieceId(found.host), `driver.${index + 1}`),
    cut: { kind: "hole", at, d: screws.row.pilot, depth },
  }));
}

function chamferDrafts(spec: RingSpec, { origin }: Around): readonly Draft[] {
  return (["outside", "inside"] as const).flatMap((which): Draft[] => {
    const width = spec.chamfer?.[which];
    if (width === undefined) return [];
    const along = [which === "outside" ? "outline" : "opening.inside"];
    const cut = { kind: "edge", form: "chamfer", along, width, depth: width, angle: Math.PI / 4 } as const;
    return [{ name: `chamfer.${which}`, from: [below(origin, "chamfer", which)], cut }];
  });
}

const seatStep = (around: Around) => `${around.id}:glue`;

function stepsOf(found: Ring, around: Around): readonly Step[] {
  return [
    {
      id: seatStep(around),
      after: [`${found.host}:glue`],
      parts: [partId(around.id, "ring")],
      words: "Glue {ring} on {host}, centred over the cut-out, its pilots over those in the box",
      facts: { ring: text(around.id), host: text(found.host) },
      cautions: [],
    },
  ];
}
