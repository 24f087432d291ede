import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { stringify } from "yaml";
import { parseJob } from "../../src/job/parse.js";
import { kinds } from "../../src/pieces/kinds.js";
import { runChecks } from "../../src/plan/checks/checks.js";
import { planJob } from "../../src/plan/plan.js";
import { starterShop } from "../../src/shop/starter.js";

const whole = (min: number, max: number) => fc.integer({ min, max });
type Corners = readonly (readonly [number, number])[];
const drawn = (corners: Corners) => corners.map((at) => ({ at }));

/** Every form of box, one of its sizes as large as the space allows. */
const outside = fc.oneof(
  fc.record({ width: whole(200, 400), depth: fc.constant("largest"), height: whole(150, 250) }),
  fc.record({ width: fc.constant("largest"), depth: whole(200, 400), height: whole(150, 250) }),
  fc.record({ width: whole(200, 400), depth: whole(200, 400), height: fc.constant("largest") }),
  whole(-80, 80).map((lean) => ({
    side: drawn([
      [0, 0],
      [300, 0],
      [300 - lean, 220],
      [0, 220],
    ]),
    width: "largest",
  })),
  whole(60, 140).map((cut) => ({
    plan: drawn([
      [0, 0],
      [360, 0],
      [360, 300 - cut],
      [360 - cut, 300],
      [0, 300],
    ]),
    height: "largest",
  })),
);

const jobs = fc.record({
  outside,
  round: whole(40, 200),
  covered: fc.boolean(),
  sawn: fc.boolean(),
  sixteenths: fc.boolean(),
  stands: fc.record({ x: whole(10, 60), y: whole(10, 60) }),
  block: fc.record({ x: whole(450, 800), y: whole(430, 700), z: whole(0, 300), clear: whole(0, 20) }),
  opening: fc.option(fc.record({ side: fc.constant("side.1"), width: whole(400, 700), height: whole(260, 400) })),
});

type Wanted = typeof jobs extends fc.Arbitrary<infer T> ? T : never;

const aboutRoom = [
  "outside-space",
  "above-space",
  "below-floor",
  "fouls-obstacle",
  "obstacle-too-near",
  "will-not-go-in",
];
const inch = 25.4;

async function madeWith(
  { round, covered, sawn, sixteenths, stands, block, opening, ...wanted }: Wanted,
  form: object,
  more: object = {},
) {
  const { x, y, z, clear } = block;
  const source = stringify({
    version: 1,
    title: "A box as large as it goes",
    units: "mm",
    boards: { board: { stock: "mdf-18", measured: 18.2 } },
    space: {
      outline: [{ at: [0, 0] }, { at: [1000, 0] }, { at: [1000, 800], round }, { at: [0, 800], round }],
      height: 400,
      obstacles: { block: { from: [x, y, z], to: [x + 150, y + 90, z + 120], clear } },
      ...(opening && { opening }),
    },
    coverings: { carpet: { stock: "box-carpet", thick: 3.5, clamped: 2 } },
    pieces: {
      box: {
        kind: "enclosure",
        board: "board",
        outside: form,
        stands,
        ...(covered && { covered: { with: "carpet" } }),
        screws: "none",
        "held by": { straps: 2, to: "rings" },
        "cut by": sawn ? "saw" : "cnc",
        ...more,
      },
    },
  });
  const shop = starterShop();
  const saw = sixteenths ? { ...shop.saw, step: inch / 16 } : shop.saw;
  const read = parseJob(source, "box.yaml", kinds);
  if (read.value === undefined) throw new Error(read.findings.map(({ code }) => code).join(", "));
  const { value: plan, findings } = planJob(read.value, { ...shop, saw }, kinds);
  const checked = await runChecks(read.value, shop, plan!);
  const room = checked.map(({ code }) => code).filter((code) => aboutRoom.includes(code));
  return { note: findings.find(({ code }) => code.startsWith("largest")), room, step: saw.step, wanted };
}

describe("a box as large as the space allows", () => {
  it("leaves room for the cover of a hatch on its top, and on its front", async () => {
    const wanted: Wanted = {
      outside: { width: 300, depth: 300, height: "largest" },
      round: 40,
      covered: false,
      sawn: false,
      sixteenths: false,
      stands: { x: 50, y: 50 },
      block: { x: 700, y: 600, z: 0, clear: 0 },
      opening: null,
    };
    const hatch = { size: "100 x 100", with: "M6 button", gasket: 2 };
    const bolted = (face: string) => ({ hatch: { ...hatch, in: face } });
    // on steps of half a millimetre, under 400 high and 800 deep from 50, less the cover's 18.2 and the gasket's 2
    const top = await madeWith(wanted, wanted.outside, bolted("top"));
    expect(top.note!.facts["size"]!.value).toBe(379.5);
    expect(top.room).toEqual([]);
    const deep = { width: 300, depth: "largest", height: 250 };
    const front = await madeWith({ ...wanted, stands: { x: 300, y: 50 } }, deep, bolted("front"));
    expect(front.note!.facts["size"]!.value).toBe(729.5);
    expect(front.room).toEqual([]);
  });

  it("fits by the checks' own solids, and one step more does not", async () => {
    await fc.assert(
      fc.asyncProperty(jobs, async (wanted) => {
        const { note, room, step } = await madeWith(wanted, wanted.outside);
        if (note!.code === "largest-has-no-room") {
          expect(room).not.toEqual([]);
          return;
        }
        expect(room).toEqual([]);
        const key = Object.entries(wanted.outside).find(([, value]) => value === "largest")![0];
        const more = await madeWith(wanted, { ...wanted.outside, [key]: Number(note!.facts["size"]!.value) + step });
        expect(more.room).not.toEqual([]);
      }),
      { seed: 11, numRuns: 10 },
    );
  }, 120_000);
});
