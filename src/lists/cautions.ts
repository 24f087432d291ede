import type { Build } from "../model/build.js";
import { rules } from "../shop/rules.js";
import { aboutMass, type PieceMass, pieceMasses } from "./mass.js";

/** Where a caution is shown. */
export type Place =
  | "cut list"
  | "cut file"
  | "drawing"
  | "shopping list"
  | "trim"
  | "floor"
  | "mounting"
  | "assembly"
  | "wiring"
  | "shell"
  | "report";

export type Caution = {
  readonly id: string;
  readonly sentence: string;
  /** The source of the fact or figure behind it. */
  readonly source: string;
  readonly showOn: readonly Place[];
  /** Whether this job holds what it warns of. A step of the work may name it as well, unless it is `computed`. */
  readonly when: (build: Build) => boolean;
  /** Follows from a figure of this job alone: a step that names it does not bring it in. */
  readonly computed?: true;
  /** What of this job it is about: "box: about 31.5 kg". */
  readonly about?: (build: Build) => readonly string[];
};

/** Stands after every caution. */
export const closing =
  "Follow local codes and have licensed or qualified people do the work where the law asks for it.";

const never = () => false;

export const cautions: readonly Caution[] = [
  {
    id: "dust",
    sentence: "Cutting MDF makes fine dust that harms lungs: use extraction and a fitted respirator.",
    source: "wood dust: IARC group 1; ACGIH threshold limit 1 mg/m3",
    showOn: ["cut list", "cut file", "drawing"],
    when: (build) => materials(build).some(isMdf),
  },
  {
    id: "wood-dust",
    sentence: "Cutting board makes fine dust that harms lungs: use extraction and a fitted respirator.",
    source: "wood dust: IARC group 1; ACGIH threshold limit 1 mg/m3",
    showOn: ["cut list", "cut file", "drawing"],
    when: (build) => materials(build).some((material) => !isMdf(material)),
  },
  {
    id: "formaldehyde",
    sentence: "Buy panels marked TSCA Title VI compliant and air the box out: MDF gives off formaldehyde.",
    source: "TSCA Title VI: MDF 0.11 ppm, thin MDF 0.13 ppm; IARC group 1",
    showOn: ["shopping list", "report"],
    when: (build) => materials(build).some(isMdf),
  },
  {
    id: "saw-router",
    sentence: "Clamp the work, guard the blade, wear eye and ear protection, and stop the machine before reaching in.",
    source: "common practice, no source",
    showOn: ["cut list", "cut file"],
    when: ({ plan }) => plan.built.parts.length > 0,
  },
  {
    id: "gcode",
    sentence: "Check tool, zero, hold-down and a dry run above the work before cutting.",
    source: "common practice, no source",
    showOn: ["cut file"],
    when: ({ process }) => process.parts.some(({ method }) => method === "cnc"),
  },
  {
    id: "styrene",
    sentence:
      "Polyester resin gives off styrene, which is harmful and flammable: strong ventilation, the right cartridge mask, no flame or spark, never above a fuel tank that leaks or is open.",
    source: "styrene: OSHA limit 100 ppm, NIOSH 50 ppm, ACGIH 20 ppm",
    showOn: ["shell"],
    when: never,
  },
  {
    id: "mekp",
    sentence: "MEKP hardener blinds and burns: goggles and gloves, and never mix it directly with accelerator.",
    source: "MEKP: ceiling 0.2 ppm (1.5 mg/m3), OSHA rulemaking text",
    showOn: ["shell"],
    when: never,
  },
  {
    id: "exotherm",
    sentence:
      "Mixed resin left in the pot can overheat (over 150 C) and catch fire: mix small, spread out, put leftovers outside.",
    source: "a resin supplier's catalyst chart: 150 C",
    showOn: ["shell"],
    when: never,
  },
  {
    id: "adhesive",
    sentence: "Contact adhesive vapour is extremely flammable and can make you faint: no flames or sparks, open air.",
    source: "hazard class of solvent contact adhesives: extremely flammable",
    showOn: ["trim", "shopping list", "report"],
    when: isCovered,
  },
  {
    id: "battery",
    sentence: "A battery in the passenger space must be sealed or vented to outside, and held so it cannot move.",
    source: "33 CFR 183.420 (a boat rule, used as a guide); hydrogen burns from 4 % in air (from memory)",
    showOn: ["drawing", "report"],
    when: (build) => batteries(build).length > 0,
    about: batteries,
  },
  {
    id: "fuse",
    sentence: "Fuse every power cable close to the battery.",
    source: "ABYC E-11 (a boat rule, used as a guide): within 18 cm (7 in) of the source; 46 CFR 120.350",
    showOn: ["wiring"],
    when: never,
  },
  {
    id: "fuel",
    sentence:
      "Before any screw or drill goes into a floor, look underneath: fuel tank, fuel and brake lines, wiring, high-voltage parts, airbag wiring.",
    source: "common practice, no source",
    showOn: ["floor", "drawing", "shopping list", "mounting", "report"],
    when: (build) => placedPieces(build) || noScrewZones(build).length > 0,
    about: noScrewZones,
  },
  {
    id: "crash",
    sentence: "A loose heavy box becomes a projectile in a crash: bolt it to the body structure, not to trim.",
    source: "49 CFR 571.207 S4.2 (FMVSS 207, seats): 20 times the weight, forward and rearward",
    showOn: ["drawing", "mounting", "report"],
    when: (build) => boxes(build).length > 0,
    about: (build) => massesInWords(boxes(build), build),
  },
  {
    id: "anchors",
    sentence: "The load figure is a guide, not an approval: have the fixing checked.",
    source: "computed: 20 g shared by the anchors, no safety factor",
    showOn: ["mounting"],
    when: never,
  },
  {
    id: "hearing",
    sentence: "Loud sound damages hearing for good: limit level and time.",
    source: "NIOSH recommended limit: 85 dBA for 8 h, half the time for each 3 dB more",
    showOn: ["report"],
    when: ({ plan }) => plan.built.mounts.length > 0,
  },
  {
    id: "airbag",
    sentence:
      "Do not cover or block an airbag, seat belt, vent or seat movement; disconnect the battery before working near an airbag.",
    source: "common practice, no source",
    showOn: ["trim", "drawing", "report"],
    when: isCovered,
  },
  {
    id: "spare",
    sentence: "Keep access to spare wheel, jack, service covers and drain plugs.",
    source: "common practice, no source",
    showOn: ["floor", "report"],
    when: (build) => isCovered(build) && placedPieces(build),
  },
  {
    id: "lift",
    sentence: "Over 25 kg: two people.",
    source: "NIOSH lifting equation, load constant 23 kg (from memory)",
    showOn: ["assembly", "drawing", "report"],
    when: (build) => heavy(build).length > 0,
    computed: true,
    about: (build) => massesInWords(heavy(build), build),
  },
];

/** A caution as it is shown: the sentence, what of this job it is about, and the closing sentence. */
export type ShownCaution = {
  readonly id: string;
  readonly sentence: string;
  readonly about: readonly string[];
  readonly closing: string;
  readonly source: string;
};

/**
 * The cautions a job calls for, in the order of the table: by what it holds, and by what its steps name.
 * With a place, only those that are shown there.
 */
export function cautionsFor(build: Build, place?: Place): readonly ShownCaution[] {
  const named = new Set(build.plan.built.steps.flatMap((step) => step.cautions));
  return cautions
    .filter(({ showOn }) => place === undefined || showOn.includes(place))
    .filter((caution) => (!caution.computed && named.has(caution.id)) || caution.when(build))
    .map(({ id, sentence, source, about }) => ({ id, sentence, about: about?.(build) ?? [], closing, source }));
}

/** "Over 25 kg: two people (in this job: box: about 31.5 kg). Follow local codes ..." */
export function cautionWords({ sentence, about, closing: last }: ShownCaution): string {
  const told = about.length > 0 ? `${sentence.replace(/[.]$/, "")} (in this job: ${about.join("; ")}).` : sentence;
  return `${told} ${last}`;
}

/** What the boards in use are made of: the shop's word, or the stock's name where the shop has no such row. */
function materials({ job, shop, plan }: Build): readonly string[] {
  const used = new Set<string>(plan.built.parts.map(({ board }) => board));
  return [...used].map((board) => {
    const stock = job.boards[board]?.stock ?? board;
    return shop.boards[stock]?.material ?? stock;
  });
}

function isMdf(material: string): boolean {
  return /mdf|medium.density|fib(re|er) ?board/i.test(material);
}

function isCovered({ plan }: Build): boolean {
  return plan.built.parts.some(
    ({ coverings, edges }) =>
      coverings.face !== undefined ||
      coverings.back !== undefined ||
      Object.values(edges).some(({ finish }) => finish.kind === "wrapped"),
  );
}

function batteries({ job }: Build): readonly string[] {
  return Object.entries(job.space.obstacles)
    .filter(([name, { is }]) => /batter/i.test(is ?? name))
    .map(([name]) => name);
}

function noScrewZones({ job }: Build): readonly string[] {
  return Object.keys(job.space["no screws"]);
}

/** Whether anything stands in the vehicle, so that someone may screw it down. */
function placedPieces({ plan }: Build): boolean {
  return plan.frames.length > 0;
}

/** Pieces that hold a driver: they are heavy for their size and rarely small. */
function boxes(build: Build): readonly PieceMass[] {
  const holders = new Set(build.plan.built.mounts.map(({ piece }) => piece));
  return pieceMasses(build).filter(({ piece }) => holders.has(piece));
}

function heavy(build: Build): readonly PieceMass[] {
  return pieceMasses(build).filter(({ totalKg }) => totalKg > rules.twoPeopleKg.value);
}

function massesInWords(masses: readonly PieceMass[], { job }: Build): readonly string[] {
  return masses.map(({ piece, totalKg, unknown }) => {
    const more = unknown.length > 0 ? `, and ${unknown.join(", ")} of unknown mass` : "";
    return `${piece}: ${aboutMass(totalKg, job.show)}${more}`;
  });
}
