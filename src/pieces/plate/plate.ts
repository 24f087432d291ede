import { shifted } from "../../geometry/frame.js";
import { below, count, type Finding, type Origin, type Outcome, raise, text } from "../../input/finding.js";
import { axisId, pieceId } from "../../model/ids.js";
import type { Around, Ask, Offer, PieceKind, Reference } from "../../model/piece.js";
import { inDoubt } from "../common/part.js";
import { bearingOf } from "./bearing.js";
import { buildPlate } from "./build.js";
import { boltedOf, type Design, designOf } from "./design.js";
import * as say from "./findings.js";
import { bearerOf, notchesOf, type PlateSpec, plateSchema } from "./schema.js";

/** A flat trim board over the surveyed outline: notched, open over the driver, covered, bolted down. */
export const plate: PieceKind<PlateSpec> = {
  kind: "plate",
  schema: plateSchema,
  findings: say.plateFindings,
  refs: referencesOf,
  free: () => undefined,
  offer: offerPlate,
  ask: askThreads,
  miss: () => 0,
  build: buildPlate,
};

function referencesOf(spec: PlateSpec, at: Origin): readonly Reference[] {
  const bearer = bearerOf(spec);
  const over = spec["open over"];
  const found: (Reference | undefined)[] = [
    { kind: "board", name: spec.board, at: below(at, "board") },
    bearer === undefined ? undefined : { kind: "piece", name: bearer, at: below(at, "height") },
    over?.driver === undefined ? undefined : { kind: "piece", name: over.driver, at: below(at, "open over", "driver") },
    over?.ring === undefined ? undefined : { kind: "piece", name: over.ring, at: below(at, "open over", "ring") },
    spec.covered && { kind: "covering", name: spec.covered.with, at: below(at, "covered", "with") },
    spec.bolted && { kind: "piece", name: spec.bolted.to, at: below(at, "bolted", "to") },
    spec.bolted && { kind: "bolt", name: spec.bolted.with, at: below(at, "bolted", "with") },
    spec.bolted?.insert === undefined
      ? undefined
      : { kind: "insert", name: spec.bolted.insert, at: below(at, "bolted", "insert") },
  ];
  const sides = Object.keys(spec.sides ?? {}).map(
    (name): Reference => ({ kind: "side", name, at: { ...below(at, "sides", name), token: "key" } }),
  );
  const notches = notchesOf(spec).flatMap((notch, index): Reference[] => {
    const here = Array.isArray(spec.notch) ? below(at, "notch", index) : below(at, "notch");
    const open = notch["open to"];
    return [
      { kind: "obstacle", name: notch.around, at: below(here, "around") },
      ...(open === undefined ? [] : [{ kind: "side" as const, name: open, at: below(here, "open to") }]),
    ];
  });
  return [...found.filter((reference) => reference !== undefined), ...sides, ...notches];
}

function offerPlate(spec: PlateSpec, _size: number, around: Around): Outcome<Offer> {
  const unlevel = levelFindings(spec, around);
  if (unlevel.length > 0) return { value: undefined, findings: unlevel };
  const design = designOf(spec, around);
  if (design.doubts.length > 0) {
    const findings = design.doubts.map(({ what, doubt }) =>
      inDoubt(what, around.id, doubt, [around.origin], [around.id]),
    );
    return { value: undefined, findings };
  }
  const [body] = design.body;
  if (body === undefined || design.body.length > 1) {
    const facts = { pieces: count(Math.max(design.pieces, design.body.length)) };
    return { value: undefined, findings: [raise(say.plateVanishes, { at: [around.origin], on: [around.id], facts })] };
  }
  const value: Offer = {
    stands: design.stands,
    planes: { face: shifted(0, 0, 0), back: shifted(0, 0, -design.thickness) },
    outlines: { face: body },
    drivers: {},
  };
  return { value, findings: openingFindings(spec, design, around) };
}

function askThreads(spec: PlateSpec, _size: number, around: Around): Outcome<readonly Ask[]> {
  const { bolts } = boltedOf(spec, around);
  if (bolts?.insertName === undefined) return { value: [], findings: [] };
  const insert = bolts.insertName;
  const value = bolts.places.map(
    (place, index): Ask => ({
      kind: "thread",
      of: pieceId(bolts.to),
      by: around.id,
      from: [below(around.origin, "bolted")],
      axis: axisId(around.id, `bolt.${index + 1}`),
      ray: shifted(place.x, place.y, bolts.bearing.z),
      insert,
    }),
  );
  return { value, findings: [] };
}

/** Each piece that the plate lies on or is bolted to must have a level top. */
function levelFindings(spec: PlateSpec, around: Around): readonly Finding[] {
  const leaned = [
    [bearerOf(spec), below(around.origin, "height")] as const,
    [spec.bolted?.to, below(around.origin, "bolted", "to")] as const,
  ];
  return leaned.flatMap(([piece, at]) => {
    if (piece === undefined || bearingOf(piece, around) !== undefined) return [];
    return [raise(say.noLevelTop, { at: [at], on: [around.id], facts: { piece: text(piece) } })];
  });
}

function openingFindings(spec: PlateSpec, design: Design, around: Around): readonly Finding[] {
  const over = spec["open over"];
  if (over === undefined || design.opening !== undefined) return [];
  const facts = { piece: text(over.ring ?? over.driver ?? "nothing") };
  return [raise(say.plateOverNothing, { at: [below(around.origin, "open over")], on: [around.id], facts })];
}
