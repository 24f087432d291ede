import type { PartProcess, Plan, Process } from "../model/build.js";
import type { BoardId } from "../model/ids.js";
import type { Part } from "../model/part.js";
import type { NestItem } from "./engine.js";
import { layBlank } from "./placed.js";
import { bevelsOf } from "./saw/bevels.js";

export type Member = { readonly part: Part; readonly process: PartProcess };

/** Parts of one board that may share a sheet. */
export type Group = { readonly board: BoardId; readonly byMachine: boolean; readonly members: readonly Member[] };

/**
 * Boards in the order in which their first parts stand in the plan; of each what is sawn first, since a saw goes by true
 * edges, and what it leaves has them.
 */
export function groupsOf(plan: Plan, process: Process): readonly Group[] {
  const processes = new Map(process.parts.map((each) => [each.part, each]));
  const groups = new Map<string, { board: BoardId; byMachine: boolean; members: Member[] }>();
  for (const part of plan.built.parts) {
    const how = processes.get(part.id);
    if (!how) continue;
    const byMachine = how.method === "cnc";
    const key = JSON.stringify([part.board, byMachine]);
    const group = groups.get(key) ?? { board: part.board, byMachine, members: [] };
    group.members.push({ part, process: how });
    groups.set(key, group);
  }
  const all = [...groups.values()];
  const boards = [...new Set(all.map(({ board }) => board))];
  return boards.flatMap((board) =>
    all.filter((group) => group.board === board).sort((a, b) => Number(a.byMachine) - Number(b.byMachine)),
  );
}

/** As it lies in the first setup. */
export const isBackUp = (process: PartProcess): boolean => process.sides[0] === "back";

/** A part as the engines know it. */
export function itemOf({ part, process }: Member): NestItem {
  const bevels = process.method === "saw" ? bevelsOf(part) : undefined;
  return {
    id: part.id,
    shape: layBlank(part.blank, 0, isBackUp(process)),
    gap: process.gap,
    turns: process.turns,
    ...(bevels && { bevels }),
  };
}
