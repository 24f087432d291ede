import { z } from "zod";
import { doorFor } from "../input/door.js";
import { inFileOrder } from "../input/fileOrder.js";
import { below, type Locate, type Located, type Origin, type Outcome } from "../input/finding.js";
import { readWith } from "../input/issues.js";
import { lengthUnits } from "../input/length.js";
import { versionFindings } from "../input/version.js";
import { readYaml } from "../input/yaml.js";
import {
  type BoardStock,
  type Cnc,
  dxfFormats,
  methods,
  type Offcut,
  type Shop,
  type Sourced,
  type TrackSaw,
} from "../model/shop.js";
import { checkShop, withoutFaulty } from "./checks.js";
import { cnc as starterCnc, trackSaw as starterTrackSaw } from "./machines.js";
import { readOffcuts } from "./offcuts.js";
import { type Laid, layOver, layRow } from "./overlay.js";
import {
  bitRow,
  boardRow,
  boltRow,
  bushRow,
  cncRow,
  coveringRow,
  insertRow,
  type RowSchemas,
  routerRow,
  sawRow,
  screwRow,
  trackSawRow,
  wide,
} from "./rows.js";
import { starterShop, starterShopYaml } from "./starter.js";

type Data = Readonly<Record<string, unknown>>;

/** Versions of the shop file that can be read. */
export const shopVersions = [1] as const;

const anyMap = z.record(z.string(), z.unknown()).nullish();
const headerSchema = z.strictObject({
  version: z.unknown().optional(),
  units: z.enum(lengthUnits),
  name: z.string().trim().min(1).max(80).optional(),
  currency: z.string().trim().min(1).max(8).optional(),
  "cut by": z.enum(methods).optional(),
  dxf: z.preprocess((value) => (value === 2000 ? "2000" : value), z.enum(dxfFormats)).optional(),
  saw: z.unknown().optional(),
  "track saw": z.unknown().optional(),
  "least offcut": z.unknown().optional(),
  router: z.unknown().optional(),
  cnc: z.unknown().optional(),
  boards: anyMap,
  bits: anyMap,
  bushes: anyMap,
  inserts: anyMap,
  bolts: anyMap,
  screws: anyMap,
  coverings: anyMap,
});

/** The shop has none. */
const noCnc: Outcome<Cnc> = { value: undefined, findings: [] };
const noTrackSaw: Outcome<TrackSaw> = { value: undefined, findings: [] };

/**
 * Reads a shop file: its rows are laid over the built-in tables by name, and `none` takes a row out. Every mistake is
 * told at once; one in a row leaves out that row. The value is undefined where the file cannot be used at all.
 */
export function parseShop(source: string, file: string): Located<Shop> {
  // The starter file as it came is the built-in tables; to read all of it as YAML would be half the time of a check.
  if (source === starterShopYaml()) {
    const locate: Locate = (at) => readYaml(source, file).locate(at);
    return { value: { ...starterShop(), file }, findings: [], locate };
  }
  const { value: yaml, findings: unreadable, locate } = readYaml(source, file);
  if (yaml === undefined) return { value: undefined, findings: unreadable, locate };
  const { value, findings } = readShop(yaml.data, { file, path: [] });
  return { value, findings: inFileOrder(findings, locate), locate };
}

function readShop(data: Data, root: Origin): Outcome<Shop> {
  const version = versionFindings(data, root, shopVersions);
  if (version.length > 0 && "version" in data) return { value: undefined, findings: version };
  const header = readWith(headerSchema, data, root);
  const units = lengthUnits.find((unit) => unit === data.units);
  if (units === undefined) return { value: undefined, findings: [...version, ...header.findings] };

  const door = doorFor(units);
  const starter = starterShop();
  const single = <T extends Sourced>(key: string, row: RowSchemas<T>, base: T): Outcome<T> =>
    data[key] === undefined ? { value: base, findings: [] } : layRow(base, data[key], below(root, key), row);
  const table = <T extends Sourced>(key: string, row: RowSchemas<T>, builtIn: Readonly<Record<string, T>>): Laid<T> =>
    layOver(builtIn, data[key], below(root, key), row);
  const saw = single("saw", sawRow(door), starter.saw);
  const trackSaw = data["track saw"] === "none" ? noTrackSaw : single("track saw", trackSawRow(door), starterTrackSaw);
  const router = single("router", routerRow(door), starter.router);
  const cnc = data.cnc === "none" ? noCnc : single("cnc", cncRow(door), starterCnc);
  const offcuts = readOffcuts(door, data.boards, below(root, "boards"));
  const boards = table("boards", boardRow(door), starter.boards);
  const bits = table("bits", bitRow(door), starter.bits);
  const bushes = table("bushes", bushRow(door), starter.bushes);
  const inserts = table("inserts", insertRow(door), starter.inserts);
  const bolts = table("bolts", boltRow(door), starter.bolts);
  const screws = table("screws", screwRow(door), starter.screws);
  const coverings = table("coverings", coveringRow(door), starter.coverings);
  const least = readWith(door.size(wide).optional(), data["least offcut"], below(root, "least offcut"));
  const parts = [
    header,
    saw,
    trackSaw,
    router,
    cnc,
    boards,
    offcuts,
    bits,
    bushes,
    inserts,
    bolts,
    screws,
    coverings,
    least,
  ];
  const findings = [...version, ...parts.flatMap((part) => part.findings)];
  if (version.length > 0 || !header.value || !saw.value || !router.value) return { value: undefined, findings };

  const shop: Shop = {
    version: 1,
    file: root.file,
    name: header.value.name,
    currency: header.value.currency,
    "cut by": header.value["cut by"] ?? starter["cut by"],
    dxf: header.value.dxf ?? starter.dxf,
    saw: saw.value,
    "track saw": trackSaw.value,
    router: router.value,
    cnc: cnc.value,
    ...(least.value && { "least offcut": { length: least.value[0], width: least.value[1] } }),
    boards: withOffcuts(boards.rows, offcuts.byBoard),
    bits: bits.rows,
    bushes: bushes.rows,
    inserts: inserts.rows,
    bolts: bolts.rows,
    screws: screws.rows,
    coverings: coverings.rows,
  };
  const between = checkShop(shop, root);
  return { value: withoutFaulty(shop, between), findings: [...findings, ...between] };
}

function withOffcuts(
  boards: Readonly<Record<string, BoardStock>>,
  offcuts: ReadonlyMap<string, readonly Offcut[]>,
): Readonly<Record<string, BoardStock>> {
  const rows = Object.entries(boards).map(([name, row]) => {
    const own = offcuts.get(name);
    return [name, own === undefined ? row : { ...row, offcuts: own }] as const;
  });
  return Object.fromEntries(rows);
}
