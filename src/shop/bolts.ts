import type { Bolt } from "../model/shop.js";

const inch = 25.4;

type Form = Bolt["head"]["form"];
type Thread = Pick<Bolt, "thread" | "d" | "pitch" | "clearance"> & {
  /** Largest head diameter and height by form, mm; a flat head's diameter is the sharp one, as its countersink is cut. */
  readonly heads: Readonly<Record<Form, readonly [d: number, height: number]>>;
};

// Clearance holes: ISO 273. Coarse pitches: ISO 262, from memory. Heads: ISO 4762 (cap), ISO 7380-1 (button), ISO 10642
// (flat); open fastener tables. A flat head's height is half of its sharp diameter less the bolt's: 90 degrees.
const metric: readonly Thread[] = [
  metricThread("M3", 3, 0.5, [3.2, 3.4, 3.6], [5.5, 3], [5.7, 1.65], 6.72),
  metricThread("M4", 4, 0.7, [4.3, 4.5, 4.8], [7, 4], [7.6, 2.2], 8.96),
  metricThread("M5", 5, 0.8, [5.3, 5.5, 5.8], [8.5, 5], [9.5, 2.75], 11.2),
  metricThread("M6", 6, 1, [6.4, 6.6, 7], [10, 6], [10.5, 3.3], 13.44),
  metricThread("M8", 8, 1.25, [8.4, 9, 10], [13, 8], [14, 4.4], 17.92),
  metricThread("M10", 10, 1.5, [10.5, 11, 12], [16, 10], [17.5, 5.5], 22.4),
];

// Clearance holes: ASME B18.2.8, from memory. Threads: ASME B1.1 coarse series, from memory. Heads: ASME B18.3, open
// fastener tables and a fastener dealer's published sheet. Inches here. A flat head's cone has 82 degrees.
const imperial: readonly Thread[] = [
  inchThread("#8-32", 0.164, 32, [0.18, 0.196, 0.213], [0.27, 0.164], [0.312, 0.09], 0.359),
  inchThread("#10-24", 0.19, 24, [0.206, 0.221, 0.238], [0.312, 0.19], [0.361, 0.105], 0.411),
  inchThread("1/4-20", 0.25, 20, [0.266, 0.281, 0.297], [0.375, 0.25], [0.437, 0.138], 0.531),
  inchThread("5/16-18", 0.3125, 18, [0.328, 0.344, 0.359], [0.469, 0.312], [0.547, 0.172], 0.656),
  inchThread("3/8-16", 0.375, 16, [0.391, 0.406, 0.422], [0.562, 0.375], [0.656, 0.206], 0.781),
];

// Stock lengths: common practice, no source.
const metricLengths = [8, 10, 12, 16, 20, 25, 30, 35, 40, 45, 50, 55, 60, 70, 80];
const inchLengths = [3 / 8, 1 / 2, 5 / 8, 3 / 4, 1, 1.25, 1.5, 1.75, 2, 2.5, 3].map((length) => length * inch);

/** Bolts by thread, head and finish: "M6 button black". Plain means zinc plated. */
export const bolts: Readonly<Record<string, Bolt>> = Object.fromEntries([
  ...metric.flatMap((thread) => boltsOf(thread, metricLengths, "ISO 273, ISO 4762, ISO 7380-1, ISO 10642")),
  ...imperial.flatMap((thread) => boltsOf(thread, inchLengths, "ASME B18.3; ASME B18.2.8, from memory")),
]);

type Three = readonly [fine: number, medium: number, coarse: number];
type Head = readonly [d: number, height: number];

function metricThread(thread: string, d: number, pitch: number, holes: Three, cap: Head, button: Head, sharp: number) {
  const [fine, medium, coarse] = holes;
  const heads = { cap, button, flat: [sharp, (sharp - d) / 2] as const };
  return { thread, d, pitch, clearance: { fine, medium, coarse }, heads };
}

function inchThread(thread: string, d: number, perInch: number, holes: Three, cap: Head, button: Head, sharp: number) {
  const [fine, medium, coarse] = holes;
  const clearance = { fine: fine * inch, medium: medium * inch, coarse: coarse * inch };
  const flat = [sharp * inch, ((sharp - d) * inch) / 2 / Math.tan((41 * Math.PI) / 180)] as const;
  const heads = { cap: scaled(cap), button: scaled(button), flat };
  return { thread, d: d * inch, pitch: inch / perInch, clearance, heads };
}

function scaled([d, height]: Head): Head {
  return [d * inch, height * inch];
}

function boltsOf(row: Thread, lengths: readonly number[], source: string): readonly (readonly [string, Bolt])[] {
  const { heads, ...thread } = row;
  return (["cap", "button", "flat"] as const).flatMap((form) => {
    const [d, height] = heads[form];
    const bolt: Bolt = { ...thread, head: { d, height, form }, lengths, source };
    const name = `${thread.thread} ${form}`;
    return [[name, bolt] as const, [`${name} black`, bolt] as const];
  });
}
