import { formatNumber } from "../input/number.js";
import type { Cnc, Saw, Shop } from "../model/shop.js";
import { controllers } from "./controllers.js";
import { lengthText } from "./lengthText.js";
import { flow, inline, lengthsIn, plainText, type Row } from "./rowText.js";
import { clearRow, offcutRow, sheetRow } from "./stockText.js";

/** A shop as a shop file that reads back as the same shop: a row a line, lists of sheets once and then repeated. */
export function shopYaml(shop: Shop): string {
  const least = shop["least offcut"];
  const sheetsSeen = new Map<string, string>();
  const rows = <T>(table: Readonly<Record<string, T>>, row: (each: T) => Row) =>
    Object.entries(table).map(([name, each]) => `  ${plainText(name)}: ${flow(row(each))}`);
  const boards = Object.entries(shop.boards).map(([name, { sheets, offcuts, ...board }]) => {
    const written = sheets.map((sheet) => `      - ${flow(sheetRow(sheet))}`).join("\n");
    const anchor = sheetsSeen.get(written);
    const own = lengthsIn(board, ["thickness", "measured"]);
    const kept = offcuts.length > 0 ? { offcuts: offcuts.map((each) => offcutRow(each)) } : {};
    if (anchor !== undefined) return `  ${plainText(name)}: ${flow({ ...own, ...kept }, `sheets: *${anchor}`)}`;
    sheetsSeen.set(written, `as-${name}`);
    const lines = Object.entries({ ...own, ...kept }).flatMap(([key, value]) =>
      value === undefined ? [] : [`    ${key}: ${inline(value)}`],
    );
    return [`  ${plainText(name)}:`, ...lines, `    sheets: &as-${name}`, written].join("\n");
  });
  return [
    ...intro,
    "version: 1",
    "units: mm",
    `cut by: ${shop["cut by"]}`,
    "# The form of DXF files: R12, which everything reads, or 2000, with light polylines.",
    `dxf: ${shop.dxf}`,
    "# What is left over goes to the rack from this size on, length x width; without this line from 300 x 100 on:",
    "#   least offcut: 300 x 100",
    ...(least ? [`least offcut: ${lengthText(least.length)} x ${lengthText(least.width)}`] : []),
    "",
    "# What a blade takes away, and the steps a fence or scale can be set to.",
    "# longest rip: as far as the fence reaches; longest cross-cut: on the sled; one person: the largest piece one person",
    "# brings to the fence, anything larger is cut with the track saw first. setting: the share of a sheet that is worth",
    "# one setting less of fence or stop block. A workshop without a track saw: none.",
    `saw: ${flow(sawRow(shop.saw))}`,
    `track saw: ${shop["track saw"] ? flow(lengthsIn(shop["track saw"], ["kerf", "longest cut"])) : "none"}`,
    `router: ${flow(lengthsIn(shop.router, ["step"]))}`,
    "# The table of the CNC router; none where there is none.",
    "# Feeds are lengths a minute, rpm turns a minute; chip share: what a light machine bears of a rigid one's chip.",
    "# zero: bed or sheet top. direction: climb or conventional. hold: tabs or skin. second side: hand or pins.",
    "# numbers: none, or engraved: each part's number, into the side that lies up.",
    "# tools: bits by their place in the machine's table, as in {6 straight: 1}. controller: what differs from this one,",
    `# or its name: ${Object.keys(controllers).join("; ")}.`,
    ...(shop.cnc === undefined ? ["cnc: none"] : ["cnc:", ...cncLines(shop.cnc)]),
    "",
    "# Sheet goods. Add measured: to a board whose thickness was measured, and price: or on hand: to its sheets.",
    "# What is in the rack stands under offcuts: of its board: a rectangle by length and width, any other form by its",
    "# corners from its lower left one (round rounds a corner, bulge bows the side that follows it, side names that side).",
    "# A saw uses an odd offcut only where its true edge is named:",
    "#   offcuts:",
    "#     - {name: A, length: 800, width: 300}",
    "#     - name: B",
    "#       outline: [{at: [0, 0], side: factory}, {at: [900, 0]}, {at: [900, 250]}, {at: [400, 600], round: 40}, {at: [0, 600]}]",
    "#       true edge: factory",
    "#       knots: [{at: [200, 150], across: 30}]",
    "# Parts keep clear of clamps, knots, pins and holes of a sheet or an offcut, and at the machine of those under cnc:,",
    "# each round (across), rectangular (size), or an outline; at is its middle from the lower left corner:",
    "#   clamps: [{at: [0, 600], size: 60 x 40}, {outline: [[0, 0], [80, 0], [0, 80]]}]",
    "boards:",
    ...boards,
    "",
    "# Router bits and drills. A bit that is not in the drawer: none.",
    "bits:",
    ...rows(shop.bits, ({ angle, ...bit }) => ({
      ...lengthsIn(bit, ["d", "measured", "cutting length", "shank", "up-cut", "bearing"]),
      ...(angle === undefined ? {} : { angle: degrees(angle) }),
    })),
    "",
    "# Guide bushes for the hand router: d outside, bore inside, stands: how far the barrel stands below the base.",
    "bushes:",
    ...rows(shop.bushes, (bush) => lengthsIn(bush, ["d", "bore", "stands"])),
    "",
    "# Threaded inserts: the hole on the bag comes first, makers differ.",
    "inserts:",
    ...rows(shop.inserts, (insert) => lengthsIn(insert, ["hole", "length"])),
    "",
    "bolts:",
    ...rows(shop.bolts, ({ head, clearance, lengths, ...bolt }) => ({
      ...lengthsIn(bolt, ["d", "pitch"]),
      head: lengthsIn(head, ["d", "height"]),
      clearance: lengthsIn(clearance, ["fine", "medium", "coarse"]),
      lengths: lengths.map(lengthText),
    })),
    "",
    "# Countersunk screws by diameter or gauge. Names that begin with # need quotes.",
    "screws:",
    ...rows(shop.screws, ({ head, lengths, ...screw }) => ({
      ...lengthsIn(screw, ["d", "root", "pilot", "clearance"]),
      head: { d: lengthText(head.d), angle: degrees(head.angle) },
      lengths: lengths.map(lengthText),
    })),
    "",
    "# Coverings: thick as laid, clamped under a panel, wrap on the back, reveal between two finished edges.",
    "coverings:",
    ...rows(shop.coverings, (each) => lengthsIn(each, ["thick", "clamped", "wrap", "reveal", "roll width"])),
    "",
  ].join("\n");
}

const intro = [
  "# What the workshop has and how it works. Everything here is built in already: keep what you change and delete the",
  "# rest. A row is laid over the built-in one of its name key by key; a new name adds a row, none takes one out:",
  "#   boards:",
  "#     mdf-18: {measured: 18.2}",
  "#   bits:",
  "#     3 straight: none",
];

const degrees = (angle: number): string => `${formatNumber((angle * 180) / Math.PI, 6)}deg`;

/** The machine a key a line: there is much to say of it. */
function cncLines({ clamps, knots, pins, holes, ...cnc }: Cnc): readonly string[] {
  const written: Row = {
    ...lengthsIn(cnc, ["length", "width", "clearance", "travel", "safe height", "plunge", "rapid"]),
    feed: lengthsIn(cnc.feed, ["least", "most"]),
    controller: lengthsIn(cnc.controller, ["chord"]),
    ...clearRow({ clamps, knots, pins, holes }),
  };
  return Object.entries(written).flatMap(([key, value]) => (value === undefined ? [] : [`  ${key}: ${inline(value)}`]));
}

function sawRow(saw: Saw): Row {
  const person = saw["one person"];
  return {
    ...lengthsIn(saw, ["kerf", "step", "longest rip", "longest cross-cut"]),
    ...(person && { "one person": lengthsIn(person, ["length", "width"]) }),
  };
}
