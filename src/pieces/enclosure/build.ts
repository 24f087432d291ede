import type { Vector } from "../../geometry/frame.js";
import { compose } from "../../geometry/frame.js";
import { rectangle } from "../../geometry/shapes.js";
import { below, type Finding, type Outcome, raise, text } from "../../input/finding.js";
import { type PieceId, partId } from "../../model/ids.js";
import type { Axis, Joint } from "../../model/joint.js";
import type { Edge, Part } from "../../model/part.js";
import type { Air, Around, Built } from "../../model/piece.js";
import { rules } from "../../shop/rules.js";
import { upToStep } from "../common/method.js";
import { type Draft, makePart } from "../common/part.js";
import { type Block, blockFrame, blocksOf, layersOf, type Thread, threadsOf } from "./blocks.js";
import { buysOf } from "./buys.js";
import { cutOutFindings, driverAxes, driverDrafts, mountsOf, terminalDrafts } from "./cutOuts.js";
import { type FaceName, faceFrame, faceNames, faceSize, faces } from "./faces.js";
import { boxNotHeld } from "./findings.js";
import { jointName, jointScrewsOf, jointsOf, pairsOf, screwAxes, screwDrafts } from "./joints.js";
import type { EnclosureSpec } from "./schema.js";
import { screwChoiceOf } from "./screws.js";
import { type Shape, shapeOf } from "./shape.js";
import { stepsOf } from "./steps.js";
import { blockHole, panelHole, threadAxes, threadFindings } from "./threads.js";
import { volumeTerms } from "./volume.js";

/** Everything the box is made of, at its settled size. */
export function buildBox(spec: EnclosureSpec, size: number, around: Around): Outcome<Built> {
  const shape = shapeOf(spec, size, around);
  const threads = threadsOf(around.asks, shape, around.shop);
  const choice = screwChoiceOf(spec, shape.thickness, around);
  const screws = choice.value ? jointScrewsOf(around.id, shape) : [];
  const screwFrom = [below(around.origin, spec.screws ? "screws" : "board")];
  const panels = faceNames.map((face) => {
    const screwed = choice.value ? screwDrafts(face, screws, choice.value, shape.thickness, screwFrom) : [];
    return panelPart(face, spec, shape, around, threads, screwed);
  });
  const blocks = blocksOf(threads, shape);
  const made = [...panels, ...blockParts(blocks, spec, shape, around)];
  const parts = made.flatMap((outcome) => outcome.value ?? []);
  const boxAxes = [
    ...(choice.value ? screwAxes(around.id, shape, screws, choice.value, screwFrom) : []),
    ...driverAxes(spec, shape, around),
  ];
  return {
    value: {
      parts,
      joints: [...jointsOf(around.id, shape, screws), ...blockJoints(blocks, shape, around.id)],
      axes: [...boxAxes.map((axis) => inVehicle(axis, shape)), ...threadAxes(threads, parts)],
      mounts: mountsOf(spec, shape, around),
      air: [airOf(spec, shape, around, parts)],
      steps: stepsOf(spec, around, parts, screws.length, threads.length),
      buys: buysOf(spec, around, screws.length, choice.value?.name, threads),
    },
    findings: [
      ...made.flatMap((outcome) => outcome.findings),
      ...choice.findings,
      ...cutOutFindings(spec, shape, around),
      ...threadFindings(threads, shape, around),
      ...heldFindings(spec, around),
    ],
  };
}

function panelPart(
  face: FaceName,
  spec: EnclosureSpec,
  shape: Shape,
  around: Around,
  threads: readonly Thread[],
  screwed: readonly Draft[],
): Outcome<Part> {
  const { width, height } = faceSize(face, shape.spans[face]);
  const outer = rectangle(0, 0, width, height, faces[face].edges);
  const features: readonly Draft[] = [
    {
      name: "outline",
      from: [below(around.origin, "outside")],
      cut: { kind: "outline", region: { outer, holes: [] }, corner: "sharp" },
    },
    ...(spec.driver?.in === face ? driverDrafts(spec, shape, around) : []),
    ...(spec.terminal?.in === face ? terminalDrafts(spec, shape, around) : []),
    ...threads.filter((thread) => thread.face === face).map((thread) => panelHole(thread, shape)),
    ...screwed,
  ];
  return makePart({
    piece: around.id,
    role: face,
    from: [around.origin],
    board: around.board(spec.board),
    features,
    edges: edgesOf(face, spec, shape, around),
    at: faceFrame(face, shape.spans[face]),
  });
}

/** Edges that meet a neighbour's face are joints; where a face to be flushed runs over its neighbour it is left oversize. */
function edgesOf(face: FaceName, spec: EnclosureSpec, shape: Shape, around: Around): Readonly<Record<string, Edge>> {
  const left = upToStep(rules.flushAllowance.value, shape.step);
  return Object.fromEntries(
    pairsOf(shape).flatMap(([over, into]): [string, Edge][] => {
      const finish: Edge["finish"] = { kind: "joint", joint: jointName(around.id, over, face) };
      if (into === face) return [[over, { bevel: 0, flush: 0, finish }]];
      if (over !== face || !spec.flush?.includes(face)) return [];
      return [[into, { bevel: 0, flush: left, finish: { kind: "bare" } }]];
    }),
  );
}

function blockParts(
  blocks: readonly Block[],
  spec: EnclosureSpec,
  shape: Shape,
  around: Around,
): readonly Outcome<Part>[] {
  return blocks.flatMap((block, index) =>
    Array.from({ length: layersOf(block, shape) }, (_, layer) => {
      const from = block.threads.flatMap((thread) => thread.ask.from);
      const outer = rectangle(0, 0, block.max.x - block.min.x, block.max.y - block.min.y, "outline");
      const outline: Draft = {
        name: "outline",
        from,
        cut: { kind: "outline", region: { outer, holes: [] }, corner: "sharp" },
      };
      return makePart({
        piece: around.id,
        role: blockRole(index, layer),
        from,
        board: around.board(spec.board),
        features: [outline, ...block.threads.flatMap((thread) => blockHole(thread, block, layer, shape))],
        at: blockFrame(block, layer, shape),
      });
    }),
  );
}

/** Blocks are glued flat behind the panel whose inserts they back, a second layer behind the first. */
function blockJoints(blocks: readonly Block[], shape: Shape, piece: PieceId): readonly Joint[] {
  return blocks.flatMap((block, index) =>
    Array.from({ length: layersOf(block, shape) }, (_, layer): Joint => {
      const laps = layer === 0 ? block.face : blockRole(index, layer - 1);
      const into = blockRole(index, layer);
      const axes = block.threads.map((thread) => thread.ask.axis);
      return {
        id: `${piece}:${laps}+${into}`,
        form: "lap",
        laps: partId(piece, laps),
        into: partId(piece, into),
        edges: [],
        axes,
        glue: true,
      };
    }),
  );
}

const blockRole = (index: number, layer: number) =>
  layer === 0 ? `block.${index + 1}` : `block.${index + 1}.layer.${layer + 1}`;

function inVehicle(axis: Axis, shape: Shape): Axis {
  return { ...axis, ray: compose(shape.stands, axis.ray) };
}

function airOf(spec: EnclosureSpec, shape: Shape, around: Around, parts: readonly Part[]): Air {
  return {
    name: around.id,
    ...(spec.net === undefined ? {} : { wantedL: spec.net }),
    terms: volumeTerms(spec, shape, around),
    from: [below(around.origin, spec.net === undefined ? "outside" : "net")],
    inside: middle(shape.inside.min, shape.inside.max),
    walls: parts.map((part) => part.id),
  };
}

function middle(a: Vector, b: Vector): Vector {
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2];
}

function heldFindings(spec: EnclosureSpec, around: Around): readonly Finding[] {
  if (spec["held by"]) return [];
  return [raise(boxNotHeld, { at: [around.origin], on: [around.id], facts: { piece: text(around.id) } })];
}
