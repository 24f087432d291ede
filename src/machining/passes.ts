/**
 * The depths of the passes down to a depth, equal steps: the last is the depth itself, mm below where they start.
 *
 * No pass is deeper than the bit is wide; a rigid machine takes as few as that allows, a light one as many as keep each
 * at half the bit's width or more. `first`: a compression bit's first pass takes its up-cut part at least, so that no
 * edge that cuts upward stands in the upper face. Common practice, no source.
 */
export function passesTo(depth: number, d: number, light: boolean, first = 0): readonly number[] {
  const one = Math.min(depth, first);
  const all = equal(depth, d, light);
  if (one <= all[0]! + 1e-9) return all;
  const rest = depth - one;
  return rest <= 1e-9 ? [depth] : [one, ...equal(rest, d, light).map((step) => one + step)];
}

function equal(depth: number, d: number, light: boolean): readonly number[] {
  const most = depth / d;
  const few = Math.max(1, Math.ceil(most - 1e-9));
  const count = light ? Math.max(few, Math.floor(2 * most + 1e-9)) : few;
  return Array.from({ length: count }, (_, i) => (i === count - 1 ? depth : (depth * (i + 1)) / count));
}
