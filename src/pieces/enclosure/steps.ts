import { count, text } from "../../input/finding.js";
import type { Part } from "../../model/part.js";
import type { Around, Step } from "../../model/piece.js";
import { liftOf } from "./cutOuts.js";
import type { EnclosureSpec } from "./schema.js";

/** The box at the bench, in order. Facts stand in {braces} in the words. */
export function stepsOf(
  spec: EnclosureSpec,
  around: Around,
  parts: readonly Part[],
  screws: number,
  threads: number,
): readonly Step[] {
  const all = parts.map((part) => part.id);
  const blocks = all.filter((id) => id.includes("/block."));
  const driver = spec.driver?.is;
  const held = spec["held by"];
  const order: readonly Due[] = [
    {
      name: "dry fit",
      parts: all,
      words: "Put the panels of {piece} together dry and check both diagonals of the top",
      facts: { piece: text(around.id) },
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
      name: "flush",
      when: (spec.flush ?? []).length > 0,
      parts: all.filter((id) => spec.flush?.some((face) => id.endsWith(`/${face}`))),
      words: `Trim ${(spec.flush ?? []).join(" and ")} flush with a bearing bit when the glue has set; keep the bit off screw heads`,
      facts: {},
      cautions: ["dust", "saw-router"],
    },
    {
      name: "driver",
      when: driver !== undefined,
      parts: [],
      words:
        liftOf(around) > 0
          ? "Wire the terminal, lay the gasket, and screw driver {driver} down through its ring"
          : "Wire the terminal, lay the gasket, and screw driver {driver} down",
      facts: { driver: text(driver ?? "") },
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
