import { identity } from "../../geometry/frame.js";
import { all, below, type Finding, mm, type Outcome, raise, text } from "../../input/finding.js";
import { partId } from "../../model/ids.js";
import type { Edge } from "../../model/part.js";
import type { Around, Built } from "../../model/piece.js";
import { rules } from "../../shop/rules.js";
import { type Draft, inDoubt, makePart } from "../common/part.js";
import { boltAxes, boltHoles, boltsToBuy, boltToBuy } from "./bolts.js";
import { edgeOf } from "./covering.js";
import { boltedOf, type Design } from "./design.js";
import * as say from "./findings.js";
import { backGroove, type Groove } from "./groove.js";
import { openingName } from "./opening.js";
import { gapAt } from "./outline.js";
import type { PlateSpec } from "./schema.js";
import { stepsOf } from "./steps.js";

/** The plate as one part, its bolts' axes, and what is done at the bench. */
export function buildPlate(spec: PlateSpec, _size: number, around: Around): Outcome<Built> {
  const design = boltedOf(spec, around);
  const role = "plate";
  const part = partId(around.id, role);
  const bolt = boltToBuy(spec, design, around);
  const holes = boltHoles(design, around);
  const groove = grooveOf(design, holes, around);
  const made = makePart({
    piece: around.id,
    role,
    from: [around.origin],
    board: around.board(spec.board),
    features: [
      outlineDraft(design, around),
      ...cutOuts(design, around),
      ...holes,
      ...backWork(design, groove, around),
      ...chamfer(spec, around),
    ],
    edges: edgesOf(spec, design),
    coverings: design.covering ? { face: design.covering.name } : {},
    at: identity,
  });
  return {
    value: {
      parts: made.value ? [made.value] : [],
      joints: [],
      axes: bolt.value === undefined || made.value === undefined ? [] : boltAxes(design, bolt.value, around),
      mounts: [],
      air: [],
      steps: stepsOf(spec, design, around),
      buys: boltsToBuy(design, bolt.value),
    },
    findings: [...made.findings, ...bolt.findings, ...grooveFindings(groove, part, around)],
  };
}

function outlineDraft(design: Design, around: Around): Draft {
  return {
    name: "outline",
    from: [below(around.origin, "outline")],
    cut: { kind: "outline", region: design.outline, corner: "sharp" },
  };
}

function cutOuts(design: Design, around: Around): readonly Draft[] {
  const notches = design.notches.map(
    (notch): Draft => ({
      name: `notch.${notch.spec.around}`,
      from: [below(around.origin, "notch")],
      cut: { kind: notch.spec["open to"] === undefined ? "opening" : "notch", region: notch.region, corner: "bit" },
    }),
  );
  const { opening } = design;
  if (opening === undefined) return notches;
  const from = [below(around.origin, "open over")];
  return [...notches, { name: openingName, from, cut: { kind: "opening", region: opening.region, corner: "bit" } }];
}

function grooveOf(design: Design, holes: readonly Draft[], around: Around): Groove | undefined {
  const { covering, body, thickness } = design;
  const [region] = body;
  if (covering?.back !== "groove" || covering.wrap === 0 || region === undefined) return undefined;
  const onBack = holes.flatMap(({ name, cut }) => (cut.kind === "hole" ? [{ name, ...cut.at, d: cut.d }] : []));
  return backGroove(region, covering, thickness, onBack, [below(around.origin, "covered")]);
}

/** The groove at the wrap line, or a rebate from the edge to it. */
function backWork({ covering, body, thickness }: Design, groove: Groove | undefined, around: Around): readonly Draft[] {
  if (groove) return groove.drafts;
  const [region] = body;
  if (covering?.back !== "rebate" || region === undefined) return [];
  const along = edgeNames(region).filter((by) => covering.over(by));
  const depth = Math.min(covering.clamped + 0.5, thickness * rules.backDepth.value);
  const cut = { kind: "edge", form: "rebate", along, width: covering.wrap, depth, angle: 0 } as const;
  return [{ name: "rebate", from: [below(around.origin, "covered", "back")], side: "back", cut }];
}

function chamfer(spec: PlateSpec, around: Around): readonly Draft[] {
  const width = spec["open over"]?.edge?.chamfer;
  if (width === undefined) return [];
  const cut = { kind: "edge", form: "chamfer", along: [openingName], width, depth: width, angle: Math.PI / 4 } as const;
  return [{ name: "chamfer.driver", from: [below(around.origin, "open over", "edge")], cut }];
}

function edgesOf(spec: PlateSpec, { body, covering, opening }: Design): Readonly<Record<string, Edge>> {
  const names = body.flatMap(edgeNames);
  return Object.fromEntries(names.map((by) => [by, edgeOf(by, covering, neighbourOf(by, spec, opening?.reveal ?? 0))]));
}

function neighbourOf(by: string, spec: PlateSpec, openingReveal: number): Edge["against"] {
  if (by === openingName) {
    return { what: spec["open over"]?.ring ?? spec["open over"]?.driver ?? "driver", reveal: openingReveal };
  }
  if (by.startsWith("notch.")) return { what: by.slice("notch.".length), reveal: 0 };
  return { what: spec.sides?.[by]?.against ?? "space", reveal: gapAt(by, spec) };
}

function edgeNames(region: Design["outline"]): readonly string[] {
  return [...new Set([region.outer, ...region.holes].flatMap((loop) => loop.map((vertex) => vertex.by)))];
}

function grooveFindings(groove: Groove | undefined, part: string, around: Around): readonly Finding[] {
  if (groove === undefined) return [];
  if (groove.doubt)
    return [inDoubt("the back groove", around.id, groove.doubt, [below(around.origin, "covered")], [part])];
  const at = [below(around.origin, "covered")];
  const broken = raise(say.grooveBroken, {
    at,
    on: [part],
    facts: { part: text(around.id), holes: all(groove.brokenAt) },
  });
  const facts = { part: text(around.id), depth: mm(groove.depth), wanted: mm(groove.wantedDepth) };
  const shallow = raise(say.grooveShallow, { at, on: [part], facts });
  return [...(groove.brokenAt.length > 0 ? [broken] : []), ...(groove.depth < groove.wantedDepth ? [shallow] : [])];
}
