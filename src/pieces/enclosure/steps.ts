import { count, mm, text } from "../../input/finding.js";
import { partId } from "../../model/ids.js";
import type { Part } from "../../model/part.js";
import type { Around, Step } from "../../model/piece.js";
import { battensOf } from "./battens/battens.js";
import { battenSteps } from "./battens/parts.js";
import { insideSteps } from "./chambers/steps.js";
import { endNames } from "./form/extrusion.js";
import { roundStepsInside, roundStepsOutside } from "./ports/roundSteps.js";
import { type ComesOff, comesOffSteps } from "./removable/comesOff.js";
import { leftOff } from "./removable/steps.js";
import { driversOf, type EnclosureSpec } from "./schema.js";
import type { Shape } from "./shape.js";

/** The box at the bench, in order. Facts stand in {braces} in the words. */
export function stepsOf(
  spec: EnclosureSpec,
  shape: Shape,
  around: Around,
  parts: readonly Part[],
  screws: number,
  threads: number,
  loose: ComesOff,
): readonly Step[] {
  const all = parts.map((part) => part.id);
  const blocks = all.filter((id) => id.includes("/block."));
  const drivers = driversOf(spec).map(({ is }) => is);
  const ringed = around.asks.some((ask) => ask.kind === "lift driver");
  const held = spec["held by"];
  const bevelled = shape.faces.some(({ panel }) => Object.keys(panel.bevels).length > 0);
  const linings = parts.filter(({ role }) => role.endsWith(" lining")).map(({ id }) => id);
  const order: readonly Due[] = [
    {
      name: "dry fit",
      parts: all,
      words: "Put the panels of {piece} together dry and check both diagonals of the {end} side",
      facts: { piece: text(around.id), end: text(endNames[shape.extrusion.view][1]) },
      cautions: ["dust"],
    },
    {
      name: "inserts",
      when: threads > 0,
      parts: all.filter((id) => !blocks.includes(id)),
      words: `${blockWords(parts)}et {threads} threaded inserts in glue, square to the face`,
      facts: { threads: count(threads) },
      cautions: ["dust"],
    },
    {
      name: "double",
      when: linings.length > 0,
      parts: linings,
      words: "Glue the second boards flat behind their panels, wet all over, and clamp them till the glue has set",
      facts: {},
      cautions: ["formaldehyde"],
    },
    ...insideSteps(shape, around),
    ...roundStepsInside(spec, shape, around),
    ...battenSteps(battensOf(spec, shape, around), around),
    ...leftOff(loose.removables, around),
    {
      name: "glue",
      parts: all.filter((id) => !blocks.includes(id)),
      words:
        screws > 0
          ? "Drill the pilots, glue and screw the walls, then bottom and top; reach in and run a bead of glue along every inside corner"
          : "Glue and clamp the walls, then bottom and top; reach in and run a bead of glue along every inside corner",
      facts: {},
      cautions: ["formaldehyde"],
    },
    {
      name: "bevels",
      when: bevelled,
      parts: shape.faces
        .filter(({ panel }) => Object.keys(panel.bevels).length > 0)
        .map(({ name }) => partId(around.id, name)),
      words:
        "Bevelled corners take no screws: hold them with tape and band clamps, and check the angle before the glue sets",
      facts: {},
      cautions: [],
    },
    {
      name: "flush",
      when: (spec.flush ?? []).length > 0,
      parts: all.filter((id) => spec.flush?.some((face) => id.endsWith(`/${face}`))),
      words: `Trim ${(spec.flush ?? []).join(" and ")} flush with a bearing bit when the glue has set; keep the bit off screw heads`,
      facts: {},
      cautions: ["dust", "saw-router"],
    },
    {
      name: "round over",
      when: spec["round over"] !== undefined,
      parts: [],
      words: "Round the outer edges over by {radius} when the box is flush; no bit comes near a screw head",
      facts: { radius: mm(spec["round over"]?.radius ?? 0) },
      cautions: ["dust", "saw-router"],
    },
    ...roundStepsOutside(spec, shape, around),
    ...comesOffSteps(loose, spec, around),
    {
      name: "driver",
      when: drivers.length > 0,
      parts: [],
      words:
        drivers.length > 1
          ? "Wire the terminal, lay the gaskets, and screw the drivers down: {driver}"
          : ringed
            ? "Wire the terminal, lay the gasket, and screw driver {driver} down through its ring"
            : "Wire the terminal, lay the gasket, and screw driver {driver} down",
      facts: { driver: text(countedNames(drivers)) },
      cautions: ["hearing"],
      waits: around.asks.flatMap((ask) => (ask.kind === "lift driver" ? [ask.seated] : [])),
    },
    {
      name: "fix",
      parts: [],
      words: held
        ? `Fix {piece} to the vehicle: ${heldWords(held)}`
        : "Fix {piece} to the body structure of the vehicle, not to trim",
      facts: { piece: text(around.id), to: text(held?.to ?? "") },
      cautions: ["crash", "fuel"],
    },
  ];
  const due = order.filter((step) => step.when ?? true);
  return due.map(({ name, when: _when, waits, ...step }, index) => ({
    ...step,
    id: `${around.id}:${name}`,
    after: [...(index === 0 ? [] : [`${around.id}:${due[index - 1]!.name}`]), ...(waits ?? [])],
  }));
}

/** "eight, 2 off; six". */
function countedNames(names: readonly string[]): string {
  const kinds = [...new Set(names)].map((name) => ({ name, count: names.filter((each) => each === name).length }));
  return kinds.map(({ name, count: times }) => (times === 1 ? name : `${name}, ${times} off`)).join("; ");
}

/** A step of the box: after the one before it, and after steps of other pieces that it waits for. */
type Due = Omit<Step, "after" | "id"> & {
  readonly name: string;
  readonly when?: boolean;
  readonly waits?: readonly string[];
};

/** The start of a sentence that goes on with "et ... inserts": blocks first, where there are any. */
function blockWords(parts: readonly Part[]): string {
  const blocks = parts.filter((part) => part.role.startsWith("block."));
  if (blocks.length === 0) return "S";
  const drilled = blocks.some((block) => block.features.some((feature) => feature.cut.kind === "hole"));
  return `Glue the blocks behind the inserts' holes, ${drilled ? "drill each hole on into its block, " : ""}s`;
}

function heldWords(held: NonNullable<EnclosureSpec["held by"]>): string {
  const kinds = (["straps", "bolts", "brackets"] as const).filter((kind) => held[kind]);
  const named = kinds.map((kind) => `${held[kind]} ${held[kind] === 1 ? kind.slice(0, -1) : kind}`);
  return `${named.length > 0 ? named.join(" and ") : "fixed"} to {to}`;
}
