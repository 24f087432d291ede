import type { Axis } from "../model/joint.js";

/**
 * Puts the shares of each axis together: ray and fastener are those of the piece that the axis is named after, the
 * stack runs from its own share through the others' in the order in which they were built.
 */
export function joinAxes(shares: readonly { readonly piece: string; readonly axis: Axis }[]): readonly Axis[] {
  const byId = new Map<string, { readonly piece: string; readonly axis: Axis }[]>();
  for (const share of shares) byId.set(share.axis.id, [...(byId.get(share.axis.id) ?? []), share]);
  return [...byId.values()].map((parts) => {
    const own = parts.filter(({ piece, axis }) => axis.id.startsWith(`${piece}:`));
    const others = parts.filter((part) => !own.includes(part));
    const [first] = [...own, ...others];
    return {
      ...first!.axis,
      from: unique([...own, ...others].flatMap(({ axis }) => axis.from)),
      stack: [...own, ...others].flatMap(({ axis }) => axis.stack),
    };
  });
}

function unique<T>(values: readonly T[]): readonly T[] {
  const seen = new Set<string>();
  return values.filter((value) => {
    const key = JSON.stringify(value);
    return seen.has(key) ? false : seen.add(key);
  });
}
