const inch = 25.4;
const source = "speeds and feeds chart of a tool dealer (asttooling.com)";

/** Least and most of a published band, inch a tooth. */
type Band = readonly [least: number, most: number];

/** One diameter of the chart, mm. */
type Row = { readonly d: number; readonly bands: Readonly<Record<Kind, Band>>; readonly source: string };

type Kind = "mdf" | "plywood" | "hardwood" | "softwood";

/** Chip loads where a pass is as deep as the bit is wide, for rigid machines. */
export const chipLoads: readonly Row[] = [
  {
    d: inch / 8,
    bands: {
      mdf: [0.004, 0.007],
      plywood: [0.003, 0.005],
      hardwood: [0.002, 0.004],
      softwood: [0.003, 0.005],
    },
    source,
  },
  {
    d: inch / 4,
    bands: {
      mdf: [0.012, 0.015],
      plywood: [0.006, 0.009],
      hardwood: [0.005, 0.007],
      softwood: [0.006, 0.008],
    },
    source,
  },
  {
    d: (3 * inch) / 8,
    bands: {
      mdf: [0.017, 0.019],
      plywood: [0.015, 0.018],
      hardwood: [0.013, 0.015],
      softwood: [0.015, 0.017],
    },
    source,
  },
  {
    d: inch / 2,
    bands: {
      mdf: [0.02, 0.025],
      plywood: [0.018, 0.021],
      hardwood: [0.017, 0.019],
      softwood: [0.019, 0.021],
    },
    source,
  },
];

/** Which column of the chart a board's material is read in: a board that names none of them counts as hardwood, the
 *  most careful one. */
export function kindOf(material: string): Kind {
  const name = material.toLowerCase();
  if (/ply/.test(name)) return "plywood";
  if (/mdf|hdf|fibre|fiber|particle|chip|melamine/.test(name)) return "mdf";
  return /pine|spruce|fir|softwood/.test(name) ? "softwood" : "hardwood";
}

/**
 * Chip a tooth, mm, for a pass as deep as the bit is wide: the middle of the chart's band, between two diameters in
 * proportion, below the thinnest in proportion to the diameter, above the widest no more than there.
 */
export function chipLoad(material: string, d: number): number {
  const kind = kindOf(material);
  const middles = chipLoads.map((row) => ({ d: row.d, chip: middleOf(row.bands[kind]) * inch }));
  const [first, last] = [middles[0]!, middles[middles.length - 1]!];
  if (d <= first.d) return (first.chip * d) / first.d;
  if (d >= last.d) return last.chip;
  const above = middles.findIndex((row) => row.d >= d);
  const [low, high] = [middles[above - 1]!, middles[above]!];
  return low.chip + ((high.chip - low.chip) * (d - low.d)) / (high.d - low.d);
}

/** The share of the chip that a deeper pass takes: 1 to one diameter, 3/4 at two, half at three and beyond, in
 *  proportion between. Source: the same chart. */
export function depthShare(depth: number, d: number): number {
  const times = depth / d;
  return Math.min(1, Math.max(0.5, 1 - 0.25 * (times - 1)));
}

const middleOf = ([least, most]: Band): number => (least + most) / 2;
