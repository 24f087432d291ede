import { differenceD, FillRule } from "clipper2-ts";
import { extentsOf } from "../../../src/geometry/measure.js";
import type { Profile } from "../../../src/geometry/profile.js";
import { rectangle } from "../../../src/geometry/shapes.js";
import { tessellate } from "../../../src/geometry/tessellate.js";
import { moved, turned } from "../../../src/geometry/transform.js";
import type { NestedSheet, Placed } from "../../../src/model/build.js";
import type { Part } from "../../../src/model/part.js";
import type { BevelCut } from "../../../src/model/rip.js";
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
  const list = rips ?? { cuts: [], bevels: [] };
  const { faults, parts, bevels } = replay(list, boards, {
    thickness: plan.built.parts[0]?.thickness ?? 0,
    step: shop.saw.step,
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
    // what is a hair off the fence's step can be made smaller
    const most = (byHand ? 6 : 0) + shop.saw.step - 1e-6;
    const fine = on.length > -1e-6 && on.width > -1e-6 && on.length < most && on.width < most;
    return fine ? [] : [`${part.id} is ${l} x ${w} and comes off as ${got.length} x ${got.width}`];
  });
  const strange = [...parts.keys()].filter((id) => !wanted.some((part) => part.id === id));
  const small = (rips?.cuts ?? [])
    .filter((cut) => cut.trouble === "small")
    .map((cut) => `cut ${cut.number} is of a piece too small to hold`);
  const slants = wanted.flatMap((part) => slantFaults(part, laid.get(part.id)!.placed, parts.get(part.id), bevels));
  const strips = list.bevels.filter(({ piece }) => piece);
  // parts below 300 x 50 that are not fed alone
  const sizes = new Map(
    [...parts].map(([id, { length, width }]) => [id, Math.max(length, width) >= 300 && Math.min(length, width) >= 50]),
  );
  const spared = strips.flatMap(({ edges }) => edges).filter(({ part }) => sizes.get(part) === false).length;
  const odd = (rips?.cuts ?? []).filter(({ edge }) => edge !== undefined).length;
  return {
    faults: [...faults, ...wrong, ...strange, ...small, ...slants],
    cuts: rips?.cuts.length ?? 0,
    odd,
    left: left.length,
    strips,
    spared,
  };
}

/** Each bevel of a part is sawn once, where it lies and the way it leans: along a strip that the part was in, or on it. */
function slantFaults(part: Part, placed: Placed, board: Board | undefined, later: readonly BevelCut[]): string[] {
  const { min, max } = extentsOf(part.blank);
  const { outer } = part.profile;
  const told = [...(board?.bevels ?? [])];
  const wrong = outer.flatMap(({ by: edge, ...a }, i) => {
    const bevel = part.edges[edge]?.bevel ?? 0;
    if (bevel === 0) return [];
    const own = later.filter((each) => each.edges.some((one) => one.part === part.id && one.edge === edge));
    const b = outer[(i + 1) % outer.length]!;
    const x = ((a.x + b.x - min.x - max.x) / (max.x - min.x)) * (placed.backUp ? -1 : 1);
    const y = (a.y + b.y - min.y - max.y) / (max.y - min.y);
    const [u, v] = [
      x * Math.cos(placed.turn) - y * Math.sin(placed.turn),
      x * Math.sin(placed.turn) + y * Math.cos(placed.turn),
    ];
    const side = Math.abs(u) > Math.abs(v) ? (u < 0 ? "left" : "right") : v < 0 ? "lower" : "upper";
    const faceNarrower = bevel < 0;
    const narrower = faceNarrower === placed.backUp ? "below" : "above";
    const onStrip = told.findIndex((each) => each.side === side);
    const [strip] = onStrip < 0 ? [] : told.splice(onStrip, 1);
    const right = strip
      ? Math.abs(strip.tilt - Math.abs(bevel)) < 2e-6 && strip.narrower === narrower && own.length === 0
      : own.length === 1 &&
        Math.abs(own[0]!.tilt - Math.abs(bevel)) < 2e-6 &&
        own[0]!.down === (faceNarrower ? "face" : "back");
    return right
      ? []
      : [`${part.id}, ${edge}: ${strip ? "bevelled wrongly along its strip" : `bevelled ${own.length} times`}`];
  });
  return [...wrong, ...told.map(({ side }) => `${part.id} is bevelled on its ${side} side, and should not be`)];
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
