import type { Finding } from "../input/finding.js";
import { hasErrors } from "../input/finding.js";
import type { PieceId } from "../model/ids.js";
import type { Job } from "../model/job.js";
import type { Around, Ask, Offer } from "../model/piece.js";
import type { Shop } from "../model/shop.js";
import { aroundOf } from "./around.js";
import { leanedOn, leaning, type Named } from "./references.js";

/** The free sizes tried, by piece; a piece without one is 0. */
export type Sizes = ReadonlyMap<PieceId, number>;

/** What the pieces offer and ask at some sizes, before anything is built. */
export type Talk = {
  readonly offers: ReadonlyMap<PieceId, Offer>;
  readonly asks: readonly Ask[];
  readonly findings: readonly Finding[];
  /** Pieces that offered nothing, for a reason that is in the findings. */
  readonly silent: readonly PieceId[];
};

/** Runs offer, then ask, over all pieces in order. A piece that leans on a silent one falls silent too. */
export function talk(pieces: readonly Named[], sizes: Sizes, job: Job, shop: Shop): Talk {
  const offers = new Map<PieceId, Offer>();
  const findings: Finding[] = [];
  const silent: PieceId[] = [];
  for (const piece of pieces) {
    const missing = leanedOn(piece).find((name) => !offers.has(name as PieceId));
    if (missing !== undefined) {
      const at = piece.refs.find((ref) => ref.kind === "piece" && ref.name === missing)?.at ?? piece.origin;
      findings.push(leaning(piece, missing, at));
      silent.push(piece.id);
      continue;
    }
    const around = aroundOf(piece, job, shop, offers, []);
    const offered = piece.kind.offer(piece.spec, sizes.get(piece.id) ?? 0, around);
    findings.push(...offered.findings);
    if (offered.value === undefined || hasErrors(offered.findings)) silent.push(piece.id);
    else offers.set(piece.id, offered.value);
  }
  const speaking = pieces.filter((piece) => offers.has(piece.id));
  const asked = speaking.map((piece) =>
    piece.kind.ask(piece.spec, sizes.get(piece.id) ?? 0, aroundOf(piece, job, shop, offers, [])),
  );
  return {
    offers,
    asks: asked.flatMap((outcome) => outcome.value ?? []),
    findings: [...findings, ...asked.flatMap((outcome) => outcome.findings)],
    silent,
  };
}

/** What a piece may look at once all have talked. */
export function aroundAfter(piece: Named, { offers, asks }: Talk, job: Job, shop: Shop): Around {
  return aroundOf(piece, job, shop, offers, asks);
}
