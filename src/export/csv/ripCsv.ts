import { edgeName } from "../../drawing/edgeName.js";
import { partName } from "../../drawing/partName.js";
import {
  becomesWords,
  bevelMinds,
  bevelSize,
  bevelWords,
  lineOf,
  mindWords,
  type RipTalk,
  ripTalk,
  sawWords,
  wayWords,
} from "../../drawing/ripWords.js";
import { degrees, runningSize } from "../../drawing/sizes.js";
import { cautionsFor, cautionWords } from "../../lists/cautions.js";
import type { Build } from "../../model/build.js";
import type { BevelCut, RipCut, RipPiece } from "../../model/rip.js";
import { type Cell, csvBytes } from "./csv.js";

const heads = [
  "cut",
  "sheet",
  "saw",
  "what",
  "fence",
  "stop block",
  "line",
  "set anew",
  "take",
  "take length",
  "take width",
  "comes off",
  "off length",
  "off width",
  "rest",
  "rest length",
  "rest width",
  "mind",
  "setting mm",
  "kerf mm",
  "build",
] as const;
type Line = Partial<Record<(typeof heads)[number], Cell>>;

/** The rip list, a row a cut or a bevel, in the steps of the saw's fence; then cautions. */
export function ripCsv(build: Build): Uint8Array {
  const talk = ripTalk(build);
  const { cuts, bevels } = build.layout.rips ?? { cuts: [], bevels: [] };
  const cautions = cautionsFor(build, "cut list").map(
    (caution): Line => ({ cut: "caution", mind: cautionWords(caution) }),
  );
  const rows = [
    ...cuts.map((cut) => ({ number: cut.number, line: cutLine(cut, talk) })),
    ...bevels.map((bevel) => ({ number: bevel.number, line: bevelLine(bevel, talk) })),
  ].sort((a, b) => a.number - b.number);
  const lines = [...rows.map(({ line }) => line), ...cautions];
  return csvBytes([heads, ...lines.map((line) => heads.map((head) => (head === "build" ? build.hash : line[head])))]);
}

function cutLine(cut: RipCut, talk: RipTalk): Line {
  const size = runningSize(lineOf(cut), talk.show);
  const guide = cut.saw === "track" || cut.way === "true edge" ? "line" : cut.way === "rip" ? "fence" : "stop block";
  return {
    cut: cut.number,
    sheet: cut.sheet,
    saw: sawWords(cut),
    what: wayWords(cut),
    [guide]: guide === "line" ? lineWords(cut, size) : size,
    "set anew": cut.fresh ? "yes" : "stays",
    take: cut.piece.name,
    ...sizes("take", cut.piece, talk),
    ...(cut.off && { "comes off": becomesWords(cut.off, talk), ...sizes("off", cut.off, talk) }),
    ...(cut.rest && { rest: becomesWords(cut.rest, talk), ...sizes("rest", cut.rest, talk) }),
    mind: mindWords({ ...cut, cuts: [cut] }, talk).join("; "),
    "setting mm": cut.setting,
    "kerf mm": cut.kerf,
  };
}

function lineWords({ along, edge }: RipCut, size: string): string {
  if (edge === undefined) return `${size} from the ${along ? "lower" : "left"} edge`;
  return along ? `${size} from side ${edgeName(edge)}` : `${size} from the left end of side ${edgeName(edge)}`;
}

function sizes(of: "take" | "off" | "rest", { length, width }: RipPiece, { show }: RipTalk): Line {
  return { [`${of} length`]: runningSize(length, show), [`${of} width`]: runningSize(width, show) };
}

function bevelLine(bevel: BevelCut, talk: RipTalk): Line {
  const [first] = bevel.edges;
  const part = talk.build.plan.built.parts.find(({ id }) => id === first!.part);
  const size = bevelSize(bevel, talk);
  const guide = bevel.saw === "track" ? "line" : bevel.way === "rip" ? "fence" : "stop block";
  return {
    cut: bevel.number,
    saw: sawWords(bevel),
    what: `bevel, tilt ${degrees(bevel.tilt)}`,
    [guide]: guide === "line" ? `${size} from the edge opposite` : size,
    "set anew": bevel.fresh ? "yes" : "stays",
    ...(bevel.piece
      ? { sheet: bevel.sheet, take: bevel.piece.name, ...sizes("take", bevel.piece, talk) }
      : {
          take: `${talk.numberOf(first!.part)} ${part ? partName(part) : ""}`.trim(),
          "take length": runningSize(bevel.run, talk.show),
          "take width": runningSize(bevel.across, talk.show),
        }),
    mind: [...bevelWords(bevel, talk), ...bevelMinds(bevel)].join("; "),
    "setting mm": bevel.setting,
  };
}
