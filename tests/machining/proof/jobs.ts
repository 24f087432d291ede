import { withhold } from "../../../src/flow/withhold.js";
import { identity } from "../../../src/geometry/frame.js";
import type { Profile } from "../../../src/geometry/profile.js";
import { circle, rectangle } from "../../../src/geometry/shapes.js";
import { programOf } from "../../../src/machining/program.js";
import {
  type BoardId,
  boardId,
  featureId,
  featureName,
  nameWithin,
  type PartId,
  partId,
  pieceId,
} from "../../../src/model/ids.js";
import type { Cut, Feature, Part } from "../../../src/model/part.js";
import type { Cnc, Controller, Shop } from "../../../src/model/shop.js";
import { nestParts } from "../../../src/nest/nest.js";
import { processOf } from "../../../src/process/process.js";
import { controllers } from "../../../src/shop/controllers.js";
import { starterShop } from "../../../src/shop/starter.js";
import { sampleJob } from "../../fixtures/jobAndShop.js";
import { planOf, rounded } from "../../process/benchParts.js";

const board: BoardId = boardId("box");
const thickness = 18.2;

/** The starter's shop, its machine varied: where z is zeroed, what holds, which controller. */
function shopFor(pick: Pick): Shop {
  const starter = starterShop();
  const habits: readonly Controller[] = Object.values(controllers);
  const cnc: Cnc = {
    ...starter.cnc!,
    zero: pick.one(["bed", "sheet top"]),
    direction: pick.one(["climb", "conventional"]),
    "second side": "pins",
    controller: pick.one(habits),
  };
  const bits = {
    ...starter.bits,
    "5 drill": { kind: "drill" as const, d: 5 },
    "8 drill": { kind: "drill" as const, d: 8 },
  };
  return { ...starter, cnc, bits };
}

/** A job of parts with something of every kind that a machine cuts, the same for the same seed. */
export function generatedJob(seed: number) {
  const pick = pickerOf(seed);
  const shop = shopFor(pick);
  const parts = Array.from({ length: pick.whole(2, 3) }, (_, i) => partOf(pick, i));
  const job = { ...sampleJob({ unit: "mm" }), boards: { box: { stock: "mdf-18", measured: thickness } } };
  const whole = planOf(parts);
  const { value: process, findings: told } = processOf(job, shop, whole);
  // as in the flow: a part that no bit can cut is left out
  const plan = withhold(whole, told, "part").value!;
  const layout = nestParts(job, shop, plan, process!, { seed, iterations: 5 }).value!;
  const { value: program, findings } = programOf(job, shop, plan, process!, layout);
  return { job, shop, plan, process: process!, layout, program: program!, findings, hash: "0123456789" };
}

/** Cells of 90 mm, one feature in each; what runs along an edge needs a clear margin. */
const cell = 90;
const margin = 24;

function partOf(pick: Pick, index: number): Part {
  const id = partId(pieceId("job"), `part.${index}`);
  const columns = pick.whole(2, 4);
  const rows = pick.whole(2, 3);
  const [w, h] = [columns * cell + 2 * margin, rows * cell + 2 * margin];
  const outer = pick.chance(0.5)
    ? rectangle(0, 0, w, h, ["front", "right", "back", "left"])
    : rounded(0, 0, w, h, 20, "outline");
  const cells = Array.from({ length: columns * rows }, (_, i) => ({
    x: margin + (i % columns) * cell,
    y: margin + Math.floor(i / columns) * cell,
  }));
  const inCells = cells.flatMap(({ x, y }, i) => (pick.chance(0.75) ? [inCell(pick, id, i, x, y)] : []));
  const onEdge = pick.chance(0.6) ? [alongEdge(pick, id, outer)] : [];
  const features = [
    feature(id, "outline", { kind: "outline", region: { outer, holes: [] }, corner: "bit" }),
    ...inCells,
    ...onEdge,
  ];
  const holes = features.flatMap((each) => (each.cut.kind === "opening" ? [each.cut.region.outer] : throughHole(each)));
  const profile = { outer, holes };
  return {
    id,
    number: `J${index + 1}`,
    piece: pieceId("job"),
    role: `part.${index}`,
    from: [{ file: "job.yaml", path: ["pieces", "job"] }],
    board,
    thickness,
    features,
    blank: { outer, holes: [] },
    profile,
    edges: {},
    coverings: {},
    at: identity,
  };
}

/** Its edge bears the feature's name, as in the parts that pieces make: whose corner it is decides which bit fits. */
const throughHole = ({ id, cut }: Feature): readonly Profile[] =>
  cut.kind === "hole" && cut.depth === "through" ? [circle(cut.at, cut.d / 2, featureName(id))] : [];

function inCell(pick: Pick, part: PartId, index: number, x: number, y: number): Feature {
  const name = `${index}`;
  const middle = { x: x + cell / 2, y: y + cell / 2 };
  const size = pick.whole(30, 64);
  const box = (r: number, by: string) => rounded(middle.x - size / 2, middle.y - 25, size, 50, r, by);
  const side = pick.chance(0.15) ? "back" : "face";
  const shapes: readonly (() => Feature)[] = [
    () => through(`round.${name}`, circle(middle, size / 2, `round.${name}`)),
    () => through(`window.${name}`, box(pick.one([6.5, 8, 10]), `window.${name}`)),
    () =>
      feature(
        part,
        `pocket.${name}`,
        {
          kind: "pocket",
          region: { outer: box(pick.one([5, 8]), `pocket.${name}`), holes: [] },
          depth: pick.one([4, 7.5]),
          corner: "bit",
        },
        side,
      ),
    () =>
      feature(part, `drilled.${name}`, {
        kind: "hole",
        at: middle,
        d: pick.one([5, 8]),
        depth: pick.one(["through", 10]),
      }),
    () =>
      feature(part, `sunk.${name}`, {
        kind: "hole",
        at: middle,
        d: 4.5,
        depth: "through",
        sink: { d: 9, depth: 0, angle: Math.PI / 2 },
      }),
    () =>
      feature(part, `bored.${name}`, {
        kind: "hole",
        at: middle,
        d: 4.5,
        depth: "through",
        sink: { d: 20, depth: 5, angle: 0 },
      }),
    () => groove(`groove.${name}`, pick.one([4, 6, 8])),
    () => feature(part, `mark.${name}`, { kind: "mark", text: `J${index}`, at: middle }),
  ];
  return pick.one(shapes)();

  function through(by: string, outer: Profile): Feature {
    return feature(part, by, { kind: "opening", region: { outer, holes: [] }, corner: "bit" });
  }
  function groove(by: string, width: number): Feature {
    const path = [-1, 1].map((end) => ({ x: middle.x + (end * size) / 2, y: middle.y, bulge: 0, by }));
    return feature(part, by, { kind: "groove", path, closed: false, width, depth: pick.one([3, 6]) }, side);
  }
}

function alongEdge(pick: Pick, part: PartId, outer: Profile): Feature {
  const names = [...new Set(outer.map(({ by }) => by))];
  const along = pick.chance(0.5) ? names : [pick.one(names)];
  const cut: Cut = pick.chance(0.5)
    ? { kind: "edge", form: "rebate", along, width: pick.one([6, 9]), depth: pick.one([5, 9]), angle: 0 }
    : { kind: "edge", form: "chamfer", along, width: 4, depth: 4, angle: Math.PI / 4 };
  return feature(part, cut.form, cut);
}

function feature(part: PartId, name: string, cut: Cut, side: Feature["side"] = "face"): Feature {
  return {
    id: featureId(part, name),
    from: [{ file: "job.yaml", path: [nameWithin(part, featureId(part, name))] }],
    side,
    stage: "sheet",
    cut,
  };
}

type Pick = {
  readonly whole: (least: number, most: number) => number;
  readonly chance: (share: number) => boolean;
  readonly one: <T>(all: readonly T[]) => T;
};

/** Chance that is the same for the same seed: a linear congruence with the constants of Numerical Recipes (from memory). */
function pickerOf(seed: number): Pick {
  let state = (seed * 2654435761) >>> 0;
  const next = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  const whole = (least: number, most: number) => least + Math.floor(next() * (most - least + 1));
  return { whole, chance: (share) => next() < share, one: (all) => all[whole(0, all.length - 1)]! };
}
