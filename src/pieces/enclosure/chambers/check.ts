import { all, below, type Finding, list, raise, text } from "../../../input/finding.js";
import type { Around } from "../../../model/piece.js";
import { type EnclosureSpec, sizeNames } from "../schema.js";
import { namesOf } from "./divide.js";
import { freeNeedsChamberNet, netOfChambers, noSuchChamber } from "./findings.js";

/** The chambers that the dividers make, by name, in the order in which they come. */
export const chamberNames = ({ dividers }: EnclosureSpec): readonly string[] => [
  ...new Set((dividers ?? []).flatMap(namesOf)),
];

/** Whether each volume that something free is moved for is there, and each chamber that is named. */
export function chamberFindings(spec: EnclosureSpec, { origin, id }: Around): readonly Finding[] {
  const names = chamberNames(spec);
  const unknown = Object.keys(spec.chambers ?? {}).filter((found) => !names.includes(found));
  return [
    ...unknown.map((found) => {
      const facts = { piece: text(id), found: text(found), chambers: names.length > 0 ? list(names) : text("`net`") };
      return raise(noSuchChamber, { at: [below(origin, "chambers", found)], on: [id], facts });
    }),
    ...(names.length > 0 ? [...oneNet(spec, names, { origin, id }), ...freeFindings(spec, names, { origin, id })] : []),
  ];
}

type Place = Pick<Around, "origin" | "id">;

function oneNet({ net }: EnclosureSpec, names: readonly string[], { origin, id }: Place): readonly Finding[] {
  if (net === undefined) return [];
  const facts = { piece: text(id), chambers: all(names) };
  return [raise(netOfChambers, { at: [below(origin, "net")], on: [id], facts })];
}

function freeFindings(spec: EnclosureSpec, names: readonly string[], { origin, id }: Place): readonly Finding[] {
  const without = names.filter((name) => spec.chambers?.[name] === undefined);
  const free = sizeNames.find((key) => spec.outside[key] === "free");
  const about = (what: string, chamber: string, ...path: readonly (string | number)[]) =>
    raise(freeNeedsChamberNet, {
      at: [below(origin, ...path)],
      on: [id],
      facts: { what: text(what), chamber: text(chamber) },
    });
  if (free !== undefined && without.length > 0) return without.map((name) => about(free, name, "outside", free));
  return (spec.dividers ?? []).flatMap((divider, i) => {
    const [first] = namesOf(divider);
    const wants = divider.at === "free" && without.includes(first);
    return wants ? [about(`divider ${i + 1}`, first, "dividers", i, "at")] : [];
  });
}
