import type { Operation, Run } from "../model/program.js";
import type { Cut, Tool } from "./bench.js";

/** A run before its tool has a place in the machine. */
export type Stint = { readonly tool: Tool; readonly operations: readonly Operation[] };

/** One stint a tool, as long as the order keeps it. */
export function stintsOf(cuts: readonly Cut[]): readonly Stint[] {
  const stints: { tool: Tool; operations: Operation[] }[] = [];
  for (const { tool, operation } of cuts) {
    const last = stints[stints.length - 1];
    if (last?.tool.name === tool.name) last.operations.push(operation);
    else stints.push({ tool, operations: [operation] });
  }
  return stints;
}

/** Tools by their place in the machine: as the shop says, others by the next free number in the order of use. */
export function numbersOf(
  names: readonly string[],
  known: Readonly<Record<string, number>>,
): ReadonlyMap<string, number> {
  const taken = new Set(Object.values(known));
  const numbers = new Map<string, number>();
  let next = 1;
  for (const name of names) {
    if (numbers.has(name)) continue;
    if (Object.hasOwn(known, name)) {
      numbers.set(name, known[name]!);
      continue;
    }
    while (taken.has(next)) next++;
    taken.add(next);
    numbers.set(name, next);
  }
  return numbers;
}

export function runOf({ tool, operations }: Stint, numbers: ReadonlyMap<string, number>): Run {
  const { rpm, feed, plunge } = tool.speeds;
  return { tool: tool.name, number: numbers.get(tool.name)!, d: tool.d, rpm, feed, plunge, operations };
}
