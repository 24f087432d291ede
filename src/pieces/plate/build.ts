import { identity, shifted } from "../../geometry/frame.js";
import { below, count, type Finding, list, mm, type Outcome, raise, text } from "../../input/finding.js";
import { axisId, featureId, partId } from "../../model/ids.js";
import type { Axis } from "../../model/joint.js";
import type { Edge } from "../../model/part.js";
import type { Around, Built, Step } from "../../model/piece.js";
import { rules } from "../../shop/rules.js";
import { boltLengths, stockLength } from "../common/boltLength.js";
import { methodOf } from "../common/method.js";
import { type Draft, makePart } from "../common/part.js";
import { edgeOf } from "./covering.js";
import { type Bolts, type Design, designOf } from "./design.js";
import * as say from "./findings.js";
import { backGroove, type Groove } from "./groove.js";
import { openingName } from "./opening.js";
import { gapAt } from "./outline.js";
import type { PlateSpec } from "./schema.js";

/** The plate as one part, its bolts' axes, and what is done at the bench. */
export function buildPlate(spec: PlateSpec, _size: number, around: Around): Outcome<Built> {
  const design = designOf(spec, around);
  const role = "plate";
  const part = partId(around.id, role);
  const bolt = boltOf(spec, design, around);
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
      buys: buysOf(design, bolt.value),
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

function boltHoles({ bolts, covering }: Design, around: Around): readonly Draft[] {
  if (bolts === undefined) return [];
  // A covering creeps into its holes, so a wrapped plate takes the coarse row.
  const d = covering ? bolts.row.clearance.coarse : bolts.row.clearance.medium;
  return bolts.places.map((at, index) => ({
    name: `bolt.${index + 1}`,
    from: [below(around.origin, "bolted")],
    axis: axisId(around.id, `bolt.${index + 1}`),
    cut: { kind: "hole", at, d, depth: "through" },
  }));
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
  return [{ name: "chamfer.driver", from: [below(around.origin, "open over", "edge")], cut, stage: "bench" }];
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

/** The bolt as it is bought, or why there is none. */
function boltOf(spec: PlateSpec, design: Design, around: Around): Outcome<string> {
  const { bolts, covering, thickness, lift } = design;
  if (bolts === undefined || spec.bolted === undefined) return { value: undefined, findings: [] };
  const at = (key: string) => [below(around.origin, "bolted", key)];
  const findings: Finding[] = [];
  if (bolts.places.length < spec.bolted.count) {
    const facts = {
      found: count(bolts.places.length),
      wanted: count(spec.bolted.count),
      piece: text(bolts.to),
      setIn: mm(spec.bolted["set in"]),
    };
    findings.push(raise(say.tooFewBoltPlaces, { at: at("count"), on: [around.id], facts }));
  }
  if (bolts.insert === undefined) {
    findings.push(
      raise(say.noInsertForThread, { at: at("with"), on: [around.id], facts: { thread: text(bolts.row.thread) } }),
    );
    return { value: undefined, findings };
  }
  const under = thickness + lift;
  const range = boltLengths(bolts.row, bolts.insert, {
    loose: under + (covering?.thick ?? 0),
    tight: under + (covering?.clamped ?? 0),
  });
  const length = stockLength(bolts.row, range);
  if (length !== undefined) return { value: boughtAs(bolts, length), findings };
  const facts = { bolt: text(bolts.name), least: mm(range.least), most: mm(range.most) };
  return {
    value: undefined,
    findings: [...findings, raise(say.noBoltLength, { at: at("with"), on: [around.id], facts })],
  };
}

/** "M6 x 20 button black": the length goes behind the thread. */
function boughtAs({ name, row }: Bolts, length: number): string {
  const rest = name.startsWith(row.thread) ? name.slice(row.thread.length) : ` ${name}`;
  return `${row.thread} x ${length}${rest}`;
}

function boltAxes(design: Design, fastener: string, around: Around): readonly Axis[] {
  const part = partId(around.id, "plate");
  return (design.bolts?.places ?? []).map((place, index) => {
    const id = axisId(around.id, `bolt.${index + 1}`);
    return {
      id,
      from: [below(around.origin, "bolted")],
      ray: shifted(place.x, place.y, design.stands.origin[2]),
      fastener,
      stack: [{ part, feature: featureId(part, `bolt.${index + 1}`), role: "clearance" as const }],
    };
  });
}

function grooveFindings(groove: Groove | undefined, part: string, around: Around): readonly Finding[] {
  if (groove === undefined) return [];
  const at = [below(around.origin, "covered")];
  const broken = raise(say.grooveBroken, {
    at,
    on: [part],
    facts: { part: text(around.id), holes: list(groove.brokenAt) },
  });
  const facts = { part: text(around.id), depth: mm(groove.depth), wanted: mm(groove.wantedDepth) };
  const shallow = raise(say.grooveShallow, { at, on: [part], facts });
  return [...(groove.brokenAt.length > 0 ? [broken] : []), ...(groove.depth < groove.wantedDepth ? [shallow] : [])];
}

function stepsOf(spec: PlateSpec, { covering, bolts, opening }: Design, around: Around): readonly Step[] {
  const part = partId(around.id, "plate");
  const byHand = methodOf(spec, around) !== "cnc";
  const order: readonly {
    readonly name: string;
    readonly when: boolean;
    readonly words: string;
    readonly cautions: readonly string[];
  }[] = [
    {
      name: "match",
      when: bolts !== undefined && byHand,
      words: `Lay {plate} in its place, mark its bolt holes from the inserts in ${bolts?.to}, and drill them to match`,
      cautions: ["dust"],
    },
    {
      name: "cover",
      when: covering !== undefined,
      words: `Lay ${covering?.name} on the face of {plate}, wrap it {wrap} round to the back, and cut its end in the ${covering?.back === "rebate" ? "rebate" : "groove"}`,
      cautions: ["adhesive"],
    },
    {
      name: "bolt",
      when: bolts !== undefined,
      words: `Bolt {plate} down into ${bolts?.to}, all bolts loose first, then tight`,
      cautions: ["airbag", "spare"],
    },
  ];
  const due = order.filter((step) => step.when);
  const waits = [...(bolts ? [`${bolts.to}:inserts`] : []), ...(opening ? [] : [])];
  return due.map(({ name, words, cautions }, index) => ({
    id: `${around.id}:${name}`,
    after: index === 0 ? waits : [`${around.id}:${due[index - 1]?.name}`],
    parts: [part],
    words,
    facts: { plate: text(around.id), wrap: mm(covering?.wrap ?? 0) },
    cautions,
  }));
}

function buysOf({ bolts }: Design, fastener: string | undefined): Built["buys"] {
  if (bolts === undefined || fastener === undefined) return [];
  return [{ item: fastener, count: bolts.places.length }];
}
