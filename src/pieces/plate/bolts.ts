import { shifted } from "../../geometry/frame.js";
import { below, count, type Finding, mm, type Outcome, raise, text } from "../../input/finding.js";
import { axisId, featureId, partId } from "../../model/ids.js";
import type { Axis } from "../../model/joint.js";
import type { Around, Built } from "../../model/piece.js";
import { boltName } from "../../shop/boltName.js";
import { noBoltLength, noInsertForThread } from "../common/boltFindings.js";
import { boltLengths, stockLength } from "../common/boltLength.js";
import type { Draft } from "../common/part.js";
import type { Bolted } from "./design.js";
import * as say from "./findings.js";
import type { PlateSpec } from "./schema.js";

/** The clearance holes for its bolts. */
export function boltHoles({ bolts, covering }: Bolted, around: Around): readonly Draft[] {
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

/** The bolt as it is bought, or why there is none. */
export function boltToBuy(spec: PlateSpec, design: Bolted, around: Around): Outcome<string> {
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
      raise(noInsertForThread, { at: at("with"), on: [around.id], facts: { thread: text(bolts.row.thread) } }),
    );
    return { value: undefined, findings };
  }
  const under = thickness + lift;
  const range = boltLengths(bolts.row, bolts.insert, {
    loose: under + (covering?.thick ?? 0),
    tight: under + (covering?.clamped ?? 0),
  });
  const length = stockLength(bolts.row, range);
  if (length !== undefined) return { value: boltName(bolts.name, bolts.row.thread, length), findings };
  const facts = { bolt: text(bolts.name), least: mm(range.least), most: mm(range.most) };
  return {
    value: undefined,
    findings: [...findings, raise(noBoltLength, { at: at("with"), on: [around.id], facts })],
  };
}

/** The bolts' axes: heads on the plate's face. */
export function boltAxes(design: Bolted, fastener: string, around: Around): readonly Axis[] {
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

export function boltsToBuy({ bolts }: Bolted, fastener: string | undefined): Built["buys"] {
  if (bolts === undefined || fastener === undefined) return [];
  return [{ item: fastener, count: bolts.places.length }];
}
