import { mm, text } from "../../input/finding.js";
import { partId } from "../../model/ids.js";
import type { Around, Step } from "../../model/piece.js";
import { methodOf } from "../common/method.js";
import type { Bolted } from "./design.js";
import type { PlateSpec } from "./schema.js";

/** The plate at the bench, in order. */
export function stepsOf(spec: PlateSpec, { covering, bolts }: Bolted, around: Around): readonly Step[] {
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
  const waits = bolts ? [`${bolts.to}:inserts`] : [];
  return due.map(({ name, words, cautions }, index) => ({
    id: `${around.id}:${name}`,
    after: index === 0 ? waits : [`${around.id}:${due[index - 1]?.name}`],
    parts: [part],
    words,
    facts: { plate: text(around.id), wrap: mm(covering?.wrap ?? 0) },
    cautions,
  }));
}
