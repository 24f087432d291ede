import { type Show, showLength, showQuantity } from "../input/show.js";
import type { Build, NestedSheet } from "../model/build.js";
import { netLitres, termsInWords, volumeInWords } from "../model/volume.js";
import { isBought } from "../nest/bought.js";

export type Made = { readonly folder: string; readonly files: readonly string[]; readonly changed: number };

/** What a run made, for a person: parts, volumes, sheets, files. */
export function summaryLines(build: Build, made: Made): readonly string[] {
  const { parts } = build.plan.built;
  const pieces = new Set(parts.map((part) => part.piece)).size;
  return [
    build.job.title,
    row("parts", `${parts.length} in ${counted(pieces, "piece")}`),
    ...volumeLines(build),
    ...sheetLines(build),
    ...programLines(build),
    row("files", `${made.files.length} in ${made.folder}${made.changed === 0 ? ", all as they were" : ""}`),
    row("build", build.hash),
  ];
}

/** The same for a machine. */
export function summaryData(build: Build, made: Made) {
  const { built, sizes } = build.plan;
  const air = built.air.map((each) => ({
    name: each.name,
    wantedL: each.wantedL,
    reachedL: netLitres(each),
    spread: each.spread,
  }));
  const sheets = build.layout.sheets.map(({ placed, ...sheet }) => ({ ...sheet, parts: placed.length }));
  const programs = { setups: build.program.setups.map(({ name }) => name), withheld: build.program.withheld ?? [] };
  return {
    hash: build.hash,
    parts: built.parts.length,
    sizes: Object.fromEntries(sizes),
    air,
    sheets,
    programs,
    ...made,
  };
}

/** Volume wanted and reached, the terms it is made of, and the free sizes settled on. */
export function volumeLines({ plan, job: { show } }: Build): readonly string[] {
  const airs = plan.built.air.flatMap((air) => [
    row(air.name, volumeInWords(air, show)),
    row("", termsInWords(air, show)),
  ]);
  const sizes = plan.sizes.map(([piece, size]) => row(piece, `size settled on ${shownLength(size, show)}`));
  return [...airs, ...sizes];
}

/** Sheets to buy and those taken from the rack, by board, and how many of their rests go on to the machine. */
export function sheetLines({ layout, job: { show, boards } }: Build): readonly string[] {
  const toBuy = layout.sheets.filter(isBought);
  const rests = layout.sheets.filter(({ restOf }) => restOf !== undefined).length;
  const inRack = layout.sheets.length - toBuy.length - rests;
  const rack = inRack === 0 ? "" : `, ${inRack} from the rack`;
  const goOn = rests === 0 ? "" : `; ${counted(rests, "rest")} for the machine`;
  const kinds = new Map<string, number>();
  for (const sheet of toBuy) {
    const kind = `${boards[sheet.board]?.stock ?? sheet.board} ${sheetSize(sheet, show)}`;
    kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
  }
  return [
    row("sheets", `${toBuy.length} to buy${rack}${goOn}`),
    ...[...kinds].map(([kind, n]) => row("", `${n} of ${kind}`)),
  ];
}

/** How many setups have a program and how long they take, and which have none. */
function programLines({ program }: Build): readonly string[] {
  const { setups, withheld = [] } = program;
  const minutes = Math.ceil(setups.reduce((sum, { seconds }) => sum + seconds, 0) / 60);
  return [
    ...(setups.length === 0 ? [] : [row("programs", `${counted(setups.length, "setup")}, about ${minutes} min`)]),
    ...(withheld.length === 0 ? [] : [row("", `none for ${withheld.join(", ")}: see the findings`)]),
  ];
}

export function sheetSize(sheet: Pick<NestedSheet, "length" | "width">, show: Show): string {
  return `${showLength(sheet.length, show)} x ${shownLength(sheet.width, show)}`;
}

export function row(label: string, words: string): string {
  return `  ${label.padEnd(8)}  ${words}`;
}

export function counted(n: number, what: string): string {
  return `${n} ${what}${n === 1 ? "" : "s"}`;
}

function shownLength(length: number, show: Show): string {
  return showQuantity({ unit: "mm", value: length }, show);
}
