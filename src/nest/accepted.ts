import type { Profile } from "../geometry/profile.js";
import { all, type Finding, type FindingDef, raise, text } from "../input/finding.js";
import type { AcceptedGroup, AcceptedLayout } from "../model/accepted.js";
import type { Layout, NestedSheet, Plan, Process } from "../model/build.js";
import { hashOf } from "../model/hash.js";
import type { Job } from "../model/job.js";
import { nameOf } from "../plan/standing.js";
import { type Group, groupsOf, isBackUp, itemOf, type Member } from "./groups.js";

export const acceptedLayoutStale: FindingDef = {
  code: "accepted-layout-stale",
  severity: "warning",
  words: "the layout that was accepted for board {board} no longer holds: {parts}",
  next: "look at the new layout, and accept it with `nest --accept` before you cut or buy",
  explain:
    "A layout is accepted so that what was bought is what is cut: it is used again as long as no part of its board has " +
    "changed its blank, its gap, its turns or its side. Since one has, or there is one more or one fewer, the board is " +
    "laid anew, which may need other sheets than those that were bought. What the machine cuts of the rest of a sawn sheet " +
    "is laid anew with that sheet.",
};

/**
 * What can be accepted of a layout: every board and way of cutting of which no part is left over, and whose sheets are
 * not what others leave that cannot be accepted.
 */
export function acceptedGroups(plan: Plan, process: Process, layout: Layout): readonly AcceptedGroup[] {
  const groups: AcceptedGroup[] = [];
  for (const group of groupsOf(plan, process)) {
    const { board, byMachine } = group;
    const sheets = layout.sheets.filter((sheet) => holdsAny(sheet, group));
    const laid = new Set(sheets.flatMap((sheet) => sheet.placed.map(({ part }) => part)));
    const before = groups.flatMap((each) => each.sheets);
    if (group.members.every(({ part }) => laid.has(part.id)) && sheetsWithout(before, sheets).length === 0)
      groups.push({ board, byMachine, parts: keysOf(group), sheets });
  }
  return groups;
}

/** Sheets that are sawn off others, which are not among `before`. */
const sheetsWithout = (before: readonly NestedSheet[], sheets: readonly NestedSheet[]): readonly NestedSheet[] =>
  sheets.filter(({ restOf }) => restOf !== undefined && !before.some(({ sheet }) => sheet === restOf.sheet));

const holdsAny = ({ placed }: NestedSheet, { members }: Group): boolean =>
  placed.some((one) => members.some(({ part }) => part.id === one.part));

/** The group as it was accepted, if nothing of it has changed, nor what it is sawn off (`before`); else what has, in words. */
export function acceptedFor(
  job: Job,
  group: Group,
  accepted: AcceptedLayout | undefined,
  before: readonly NestedSheet[],
): { readonly sheets?: readonly NestedSheet[]; readonly findings: readonly Finding[] } {
  const own = accepted?.groups.find(({ board, byMachine }) => board === group.board && byMachine === group.byMachine);
  if (own === undefined) return { findings: [] };
  const gone = sheetsWithout(before, own.sheets).map(({ restOf }) => `sheet ${restOf!.sheet} is cut another way`);
  const changes = [...changesOf(group, own), ...new Set(gone)];
  if (changes.length === 0) return { sheets: own.sheets, findings: [] };
  const at = [{ file: job.file, path: ["boards", group.board] }];
  return { findings: [raise(acceptedLayoutStale, { at, facts: { board: text(group.board), parts: all(changes) } })] };
}

function changesOf(group: Group, { parts }: AcceptedGroup): string[] {
  const keys = keysOf(group);
  const now = group.members.flatMap(({ part }) => {
    if (parts[part.id] === keys[part.id]) return [];
    return [`${nameOf(part)} ${part.id in parts ? "has changed" : "is new"}`];
  });
  return [...now, ...Object.keys(parts).flatMap((id) => (id in keys ? [] : [`${id} is gone`]))];
}

const keysOf = ({ members }: Group): Record<string, string> =>
  Object.fromEntries(members.map((member) => [member.part.id, keyOf(member)]));

/** Covers all of a part that decides where it may lie, and nothing else: names of its edges do not. */
function keyOf(member: Member): string {
  const { gap, shape, turns } = itemOf(member);
  const plain = (profile: Profile) => profile.map(({ x, y, bulge }) => [x, y, bulge]);
  return hashOf([
    plain(shape.outer),
    shape.holes.map(plain),
    gap,
    turns,
    isBackUp(member.process),
    member.part.thickness,
  ]);
}
