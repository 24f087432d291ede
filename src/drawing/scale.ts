/** A scale of reduction: `paper` mm on paper for `real` mm. */
export type Scale = { readonly paper: number; readonly real: number };

/** ISO 5455: 1:1 and the reductions that a workshop's sheets need; 1:2.5 fills the widest step (from memory). */
const reductions = [1, 2, 2.5, 5, 10, 20, 50, 100];

/**
 * The largest scale at which something `width` by `height` (real mm) goes into the room (paper mm). `more`: reductions
 * that may be taken too.
 */
export function largestScale(
  width: number,
  height: number,
  room: { readonly width: number; readonly height: number },
  more: readonly number[] = [],
): Scale {
  const steps = [...reductions, ...more].sort((a, b) => a - b);
  const real = steps.find((by) => width / by <= room.width && height / by <= room.height);
  return { paper: 1, real: real ?? 10 ** Math.ceil(Math.log10(Math.max(width / room.width, height / room.height))) };
}

export function factorOf(scale: Scale): number {
  return scale.paper / scale.real;
}

/** "1:2". */
export function scaleWords(scale: Scale): string {
  return `${scale.paper}:${scale.real}`;
}
