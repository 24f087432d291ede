import { extentsOf } from "../geometry/measure.js";
import type { Extents } from "../geometry/profile.js";
import { type Finding, mm, raise, text } from "../input/finding.js";
import type { Job } from "../model/job.js";
import type { Move } from "../model/program.js";
import type { Cnc, Shop } from "../model/shop.js";
import type { Bench } from "./bench.js";
import { pathOffBed, tabOverSheet, travelTooShort } from "./findings.js";
import type { Draft } from "./setup.js";
import { tabHeight } from "./tabs.js";

/** What keeps a whole setup from being run: findings, none where it fits the machine. */
export function limitsOf(job: Job, shop: Shop, cnc: Cnc, bench: Bench, draft: Draft): readonly Finding[] {
  const operations = draft.stints.flatMap((stint) => stint.operations);
  if (operations.length === 0) return [];
  const board = { at: [{ file: job.file, path: ["boards", draft.clamping.sheet.board] }] };
  const machine = { at: [{ file: shop.file, path: ["cnc"] }] };
  const sheet = text(draft.clamping.name);
  const found: Finding[] = [];

  const height = tabHeight(bench.thickness);
  const throughAll = operations.some(({ kind }) => kind === "inside" || kind === "outside");
  if (throughAll && cnc.hold === "tabs" && height >= bench.thickness) {
    const facts = { board: text(draft.clamping.sheet.board), height: mm(height), thickness: mm(bench.thickness) };
    found.push(raise(tabOverSheet, { ...board, facts }));
  }

  const deepest = operations.reduce((low, { floor }) => Math.min(low, floor), 0);
  // the bit's tip comes over the sheet and down into it: from safe height to the deepest cut
  const needed = bench.safe - deepest;
  if (needed > cnc.travel + noise) {
    found.push(raise(travelTooShort, { ...machine, facts: { needed: mm(needed), sheet, travel: mm(cnc.travel) } }));
  }

  const { min, max } = reachOf(operations.flatMap(({ moves }) => moves));
  const [length, width] = [
    Math.max(max.x, draft.clamping.sheet.length) - Math.min(min.x, 0),
    Math.max(max.y, draft.clamping.sheet.width) - Math.min(min.y, 0),
  ];
  if (length > cnc.length + noise || width > cnc.width + noise) {
    const bed = { "bed length": mm(cnc.length), "bed width": mm(cnc.width) };
    found.push(raise(pathOffBed, { ...machine, facts: { sheet, length: mm(length), width: mm(width), ...bed } }));
  }
  return found;
}

const noise = 1e-6; // mm

/** The rectangle that the bit's centre stays in. */
function reachOf(moves: readonly Move[]): Extents {
  const places = moves.map(({ to: [x, y] }, i) => ({ x, y, bulge: moves[i + 1]?.bulge ?? 0, by: "" }));
  // the last place's edge would lead back to the first: it has none
  return extentsOf([...places, { ...places[places.length - 1]!, bulge: 0 }]);
}
