import { below, type Finding, type FindingDef, mm, type Origin, raise, text } from "../input/finding.js";
import type { Shop } from "../model/shop.js";
import { clearArea } from "./clearArea.js";
import { rowOf } from "./lookups.js";
import { nothingLeftFacts } from "./nothingLeft.js";
import { nothingLeftOf } from "./offcutFindings.js";
import { rules } from "./rules.js";
import { zonesOf } from "./zones.js";

export const measuredFarOff: FindingDef = {
  code: "measured-far-off",
  severity: "warning",
  words: "{row} is marked {d}, and measured {measured}: that is {off} off",
  next: "measure it again, by a slot or a disc that it cut; or correct the size that is marked on it",
  explain:
    "A bit cuts a little over or under its mark: sharpened ones are thinner, a bent one or a worn collet cuts wider. More " +
    "than half a millimetre is rarely true and mostly a slip of the caliper or another bit. What is cut goes by what was " +
    "measured.",
};

export const upsideDown: FindingDef = {
  code: "range-upside-down",
  severity: "error",
  words: "the least {what} of the machine, {least}, is more than the most, {most}",
  next: "write the lower number behind least, the higher one behind most",
  explain: "A machine has a lowest and a highest feed and speed. Where they are the wrong way round none lies between.",
};

export const bushTooThin: FindingDef = {
  code: "bush-without-wall",
  severity: "error",
  words: "{row} has a bore of {bore} in an outside diameter of {d}",
  next: "measure both with a caliper: the bore is the smaller one",
  explain: "A guide bush is a tube: its bore is less than its outside diameter, and the bit goes through the bore.",
};

export const upCutTooLong: FindingDef = {
  code: "up-cut-too-long",
  severity: "error",
  words: "the part of {row} that cuts upward, {cut up}, is longer than all of its edges, {length}",
  next: "measure it from the tip to where the edges change their turn, or leave it out",
  explain:
    "A compression bit cuts upward at its tip and downward above. Its first pass goes at least as deep as the part that " +
    "cuts upward, or the upper face tears; so that part cannot be longer than the edges.",
};

export const toolTwice: FindingDef = {
  code: "tool-number-twice",
  severity: "error",
  words: "the machine's table has {found} in place {number}, where {other} is already",
  next: "give each bit a place of its own in the table",
  explain: "A program calls bits by their place in the machine's table. Two in one place cannot both be there.",
};

export const toolUnknown: FindingDef = {
  code: "tool-without-bit",
  severity: "error",
  words: "the machine's table has {found}, but no bit of this name is on hand",
  next: "use the name of a row under bits, or add the row",
  explain: "The machine's table names bits by their rows in the shop file, so that their sizes are known.",
};

export const shopCheckFindings: readonly FindingDef[] = [
  measuredFarOff,
  upsideDown,
  bushTooThin,
  upCutTooLong,
  toolTwice,
  toolUnknown,
];

/** What is wrong between the values of a shop, each right by itself. `root`: the file it was read from. */
export function checkShop(shop: Shop, root: Origin): readonly Finding[] {
  return [
    ...bitFindings(shop, root),
    ...bushFindings(shop, root),
    ...machineFindings(shop, root),
    ...sheetFindings(shop, root),
    ...bedFindings(shop, root),
  ];
}

function bitFindings({ bits }: Shop, root: Origin): readonly Finding[] {
  return Object.entries(bits).flatMap(([row, bit]) => {
    const { d, measured = d, "up-cut": upCut = 0, "cutting length": length = Number.POSITIVE_INFINITY } = bit;
    const off = Math.abs(measured - d);
    const facts = { row: text(row), d: mm(d), measured: mm(measured), off: mm(off) };
    const far = raise(measuredFarOff, { at: [below(root, "bits", row, "measured")], facts });
    const long = raise(upCutTooLong, {
      at: [below(root, "bits", row)],
      facts: { row: text(row), "cut up": mm(upCut), length: mm(length) },
    });
    return [...(off > rules.bitMeasuredOff.value + 1e-9 ? [far] : []), ...(upCut > length ? [long] : [])];
  });
}

function bushFindings({ bushes }: Shop, root: Origin): readonly Finding[] {
  return Object.entries(bushes)
    .filter(([, { d, bore }]) => bore >= d)
    .map(([row, { d, bore }]) =>
      raise(bushTooThin, { at: [below(root, "bushes", row)], facts: { row: text(row), bore: mm(bore), d: mm(d) } }),
    );
}

function sheetFindings({ boards }: Shop, root: Origin): readonly Finding[] {
  return Object.entries(boards).flatMap(([row, { sheets }]) =>
    sheets.flatMap((sheet, i) => {
      if (clearArea(sheet, zonesOf(sheet)).length > 0) return [];
      const facts = nothingLeftFacts(`sheet ${i + 1} of ${row}`, sheet);
      return [raise(nothingLeftOf, { at: [below(root, "boards", row, "sheets", i)], facts })];
    }),
  );
}

function bedFindings({ cnc }: Shop, root: Origin): readonly Finding[] {
  if (!cnc || clearArea({ ...cnc, trim: 0 }, zonesOf(cnc)).length > 0) return [];
  return [raise(nothingLeftOf, { at: [below(root, "cnc")], facts: nothingLeftFacts("the machine's bed", cnc) })];
}

function machineFindings({ cnc, bits }: Shop, root: Origin): readonly Finding[] {
  if (!cnc) return [];
  const at = (...keys: string[]) => [below(root, "cnc", ...keys)];
  const turned = ([what, { least, most }, shown]: readonly [
    "feed" | "rpm",
    { readonly least: number; readonly most: number },
    (value: number) => Finding["facts"][string],
  ]) =>
    least > most
      ? [raise(upsideDown, { at: at(what), facts: { what: text(what), least: shown(least), most: shown(most) } })]
      : [];
  const places = Object.entries(cnc.tools);
  return [
    ...turned(["feed", cnc.feed, (feed) => text(`${feed} mm/min`)]),
    ...turned(["rpm", cnc.rpm, (rpm) => text(`${rpm}`)]),
    ...places.flatMap(([name, place], i) => {
      const other = places.slice(0, i).find(([, taken]) => taken === place)?.[0];
      const facts = { found: text(name), number: text(`${place}`) };
      const twice = other ? [raise(toolTwice, { at: at("tools", name), facts: { ...facts, other: text(other) } })] : [];
      return rowOf(bits, name) ? twice : [raise(toolUnknown, { at: at("tools", name), facts })];
    }),
  ];
}

/** The shop without the rows that an error speaks of: nothing is to be cut by them. */
export function withoutFaulty(shop: Shop, findings: readonly Finding[]): Shop {
  const faulty = findings
    .filter(({ severity }) => severity === "error")
    .flatMap(({ at }) => at.map(({ path }) => path));
  const kept = <T>(table: string, rows: Readonly<Record<string, T>>) =>
    Object.fromEntries(
      Object.entries(rows).filter(([name]) => !faulty.some(([key, row]) => key === table && row === name)),
    );
  const boards = Object.fromEntries(
    Object.entries(shop.boards).map(([name, board]) => {
      const isFaulty = (i: number) =>
        faulty.some(([key, row, list, place]) => key === "boards" && row === name && list === "sheets" && place === i);
      return [name, { ...board, sheets: board.sheets.filter((_, i) => !isFaulty(i)) }] as const;
    }),
  );
  const { cnc, ...rest } = shop;
  const sound = cnc !== undefined && !faulty.some(([key]) => key === "cnc");
  return { ...rest, ...(sound && { cnc }), boards, bits: kept("bits", shop.bits), bushes: kept("bushes", shop.bushes) };
}
