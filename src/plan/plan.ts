import type { FindingDef, Outcome } from "../input/finding.js";
import type { Plan } from "../model/build.js";
import { pieceId } from "../model/ids.js";
import type { Job } from "../model/job.js";
import type { Part } from "../model/part.js";
import type { Built, PieceKind } from "../model/piece.js";
import type { Shop } from "../model/shop.js";
import { partFindings } from "../pieces/common/part.js";
import { joinAxes } from "./axes.js";
import { largestNote } from "./largest.js";
import { aroundAfter, type Talk, talk } from "./phases.js";
import { type Named, orderOf, referenceFindings } from "./references.js";
import { settleSizes, solveFindings } from "./solve.js";

/** Words of everything that planning itself can find; the kinds bring their own. */
export const planFindings: readonly FindingDef[] = [...referenceFindings, ...solveFindings, ...partFindings];

/**
 * From a job to parts: names are looked up, free sizes settled, every piece built once at its size.
 *
 * Returns: always a plan, of the pieces that could be made; the others are in `withheld`, each with a finding.
 */
export function planJob(job: Job, shop: Shop, kinds: readonly PieceKind[]): Outcome<Plan> {
  const order = orderOf(job, shop, kinds);
  const { sizes, findings: solved, largest } = settleSizes(order.pieces, job, shop);
  const said = talk(order.pieces, sizes, job, shop);
  const speaking = order.pieces.filter((piece) => said.offers.has(piece.id));
  const built = speaking.map((piece) => buildPiece(piece, sizes.get(piece.id) ?? 0, said, job, shop));
  const made = built.flatMap(({ piece, outcome }) => (outcome.value ? [{ piece, value: outcome.value }] : []));
  const notes = largest.map((each) => {
    return largestNote(each, made.find(({ piece }) => piece === each.piece)?.value.air ?? []);
  });
  const missing = built.filter(({ outcome }) => outcome.value === undefined).map(({ piece }) => piece.id);
  return {
    value: {
      frames: speaking.flatMap((piece) => {
        const stands = said.offers.get(piece.id)?.stands;
        return stands ? [[piece.id, stands] as const] : [];
      }),
      sizes: [...sizes],
      built: gather(made),
      withheld: [...job.withheld.map(pieceId), ...order.withheld, ...said.silent, ...missing],
    },
    findings: [
      ...order.findings,
      ...solved,
      ...notes,
      ...said.findings,
      ...built.flatMap(({ outcome }) => outcome.findings),
    ],
  };
}

function buildPiece(piece: Named, size: number, said: Talk, job: Job, shop: Shop) {
  return { piece, outcome: piece.kind.build(piece.spec, size, aroundAfter(piece, said, job, shop)) };
}

/** One Built of all pieces' own, parts numbered through in the order of the pieces. */
function gather(made: readonly { readonly piece: Named; readonly value: Built }[]): Built {
  const all = <K extends Exclude<keyof Built, "tubes" | "channels">>(key: K) =>
    made.flatMap(({ value }) => value[key] as readonly Built[K][number][]);
  return {
    parts: all("parts").map((part, index): Part => ({ ...part, number: String(index + 1) })),
    joints: all("joints"),
    axes: joinAxes(made.flatMap(({ piece, value }) => value.axes.map((axis) => ({ piece: piece.id, axis })))),
    mounts: all("mounts"),
    tubes: made.flatMap(({ value }) => value.tubes ?? []),
    channels: made.flatMap(({ value }) => value.channels ?? []),
    air: all("air"),
    steps: all("steps"),
    buys: all("buys"),
  };
}
