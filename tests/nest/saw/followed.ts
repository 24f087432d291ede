import { differenceD, FillRule } from "clipper2-ts";
import { extentsOf } from "../../../src/geometry/measure.js";
import type { Profile } from "../../../src/geometry/profile.js";
import { rectangle } from "../../../src/geometry/shapes.js";
import { tessellate } from "../../../src/geometry/tessellate.js";
import { moved, turned } from "../../../src/geometry/transform.js";
import type { NestedSheet } from "../../../src/model/build.js";
import type { Shop } from "../../../src/model/shop.js";
import { type NestOptions, nestParts } from "../../../src/nest/nest.js";
import type { Order } from "../../property/nestOrders.js";
import { type Board, replay } from "./cutter.js";

/** Nests an order, follows its rip list with the cutter, and measures what lies on the bench against the parts. */
export function sawFaults({ job, shop, plan, process }: Order, options: NestOptions) {
  const { value } = nestParts(job, shop, plan, process, options);
  const { sheets, left, rips } = value!;
  const kerfs = { table: shop.saw.kerf, track: shop["track saw"]?.kerf ?? 0 };
  const boards = new Map(sheets.map((sheet) => [sheet.sheet, boardOf(sheet, shop)]));
  const { faults, parts } = replay(rips?.cuts ?? [], boards, {
    kerfs,
    heldLength: 300,
    heldWidth: 50,
    reach: shop.saw["longest rip"],
    sled: shop.saw["longest cross-cut"],
    onePerson: shop.saw["one person"],
  });
  const wanted = plan.built.parts.filter((part) => !left.includes(part.id));
  const laid = new Map(
    sheets.flatMap((sheet) => sheet.placed.map((placed) => [placed.part as string, { placed, sheet }])),
  );
  const wrong = wanted.flatMap((part) => {
    const { min, max } = extentsOf(part.blank);
    const { placed, sheet } = laid.get(part.id)!;
    const quarter = Math.abs(Math.sin(placed.turn)) > 0.5;
    const [l, w] = quarter ? [max.y - min.y, max.x - min.x] : [max.x - min.x, max.y - min.y];
    // a part that is the whole sheet is never cut
    const got = parts.get(part.id) ?? (rips?.cuts.some((cut) => cut.sheet === sheet.sheet) ? undefined : sheet);
    if (!got) return [`${part.id} never comes off`];
    const byHand = process.parts.find((each) => each.part === part.id)!.method === "hand";
    const on = { length: got.length - l, width: got.width - w };
    const most = byHand ? 6 + shop.saw.step : 0;
    const fine = on.length > -1e-6 && on.width > -1e-6 && on.length < most + 1e-6 && on.width < most + 1e-6;
    return fine ? [] : [`${part.id} is ${l} x ${w} and comes off as ${got.length} x ${got.width}`];
  });
  const strange = [...parts.keys()].filter((id) => !wanted.some((part) => part.id === id));
  const small = (rips?.cuts ?? [])
    .filter((cut) => cut.trouble === "small")
    .map((cut) => `cut ${cut.number} is of a piece too small to hold`);
  const odd = (rips?.cuts ?? []).filter(({ edge }) => edge !== undefined).length;
  return { faults: [...faults, ...wrong, ...strange, ...small], cuts: rips?.cuts.length ?? 0, odd, left: left.length };
}

/** What stands in the rack: an odd offcut as it was measured, laid on its true edge. */
function boardOf({ board, offcut, length, width, within }: NestedSheet, shop: Shop): Board {
  if (within === undefined) return { length, width };
  const one = shop.boards[board]!.offcuts.find(({ name }) => name === offcut)!;
  const outline = one.outline ?? rectangle(0, 0, one.length, one.width, ["bottom", "right", "top", "left"]);
  const i = outline.findIndex(({ by }) => by === within.side);
  const [a, b] = [outline[i]!, outline[(i + 1) % outline.length]!];
  const turn = Math.atan2(b.y - a.y, b.x - a.x);
  // as the list says where the rectangle lies, so that its places can be compared; the sizes are the cutter's own
  const lying = (loop: Profile) =>
    tessellate(turned(moved(loop, -within.x, -within.y), -turn), 0.001).map(({ x, y }) => ({ x, y }));
  const holes = (one.holes ?? []).map(lying);
  const form = differenceD([lying(outline)], holes, FillRule.NonZero, 6);
  const xs = form.flat().map(({ x }) => x);
  const ys = form.flat().map(({ y }) => y);
  return { length: Math.max(...xs) - Math.min(...xs), width: Math.max(...ys) - Math.min(...ys), form };
}
