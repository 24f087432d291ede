/** A rule of thumb: the number, and where it comes from. Lengths mm unless said. */
export type Rule = { readonly value: number; readonly source: string };

const practice = "common practice, no source";
const boardMakers = "MDF makers' published advice on screwing";

/** The numbers of the trade that checks and pieces go by. What a job or shop file says comes first. */
export const rules = {
  /** Screw or insert threaded into a face: to the board's edge. */
  faceThreadToEdge: { value: 12, source: boardMakers },
  /** Screw or insert threaded into a face: to the board's corner. */
  faceThreadToCorner: { value: 25, source: boardMakers },
  /** Screw threaded into an edge: to the corner. */
  edgeThreadToCorner: { value: 70, source: boardMakers },
  /** On a short wall a quarter of its length will do, but never less than this. */
  edgeThreadLeast: { value: 25, source: practice },
  /** Walls shorter than this may have their edge screws nearer to the corner: a quarter of their length. */
  shorterWall: { value: 280, source: practice },
  /** Walls shorter than this need not keep the spacing of edge screws. */
  shortWall: { value: 200, source: practice },
  /** A board whose edge takes screws is at least this thick. */
  edgeScrewBoard: { value: 15, source: practice },
  /** Screw through a wall into what stands inside: to the wall's edge. */
  insideScrewToEdge: { value: 12, source: practice },
  /** Between screws along a joint. */
  screwSpacing: { value: 150, source: practice },
  /** What a screw needs in the edge of the second board. */
  edgeBite: { value: 25, source: practice },
  /** A joint screw is this many boards long at least. */
  screwInBoards: { value: 2, source: practice },
  /** Board left between a driver's cut-out and its pilots or bolt holes. */
  web: { value: 3, source: practice },
  /** From an insert's centre to the board's edge, in diameters of its hole. */
  insertEdge: { value: 1.5, source: practice },
  /** An insert's hole is deeper than the insert by this. */
  insertHoleDeeper: { value: 1, source: practice },
  /** A pilot goes deeper than the screw by this. */
  pilotDeeper: { value: 1, source: boardMakers },
  /** Least and most that a pilot in MDF is of the screw's root. */
  pilotLeast: { value: 0.85, source: "Composite Panel Association; MDF makers' published advice on screwing" },
  pilotMost: { value: 0.95, source: boardMakers },
  /** Board left under a blind hole or before a screw's tip. */
  tipFloor: { value: 3, source: practice },
  /** Board left under a bolt's head that is sunk. */
  underHead: { value: 6, source: practice },
  /** A bolt engages its thread by this many diameters. */
  boltEngages: { value: 1, source: practice },
  /** A bolt stops this short of the hole's bottom. */
  boltShort: { value: 1, source: practice },
  /** Inserts set by hand land within this. */
  insertBySight: { value: 1, source: practice },
  /** Where inserts are set by hand, holes in the trim are the bolt's diameter and this. */
  trimHoleWider: { value: 2, source: practice },
  /** Left on a cap that is trimmed flush, each side. */
  flushAllowance: { value: 3, source: practice },
  /** Behind a closed magnet. */
  magnetGap: { value: 6, source: practice },
  /** Behind a vented pole. */
  ventedMagnetGap: { value: 25, source: practice },
  /** Round a terminal's hole: the radius of its corners. */
  openingCorner: { value: 6, source: practice },
  /** Side of a square block glued behind an insert. */
  blockSide: { value: 40, source: practice },
  /** Round a panel that is bolted on between its neighbours, each side: it must come out again. */
  removableGap: { value: 1, source: practice },
  /** Least width of a batten that takes inserts. */
  battenWidth: { value: 30, source: practice },
  /** A bolt of a row stands this far from its end. */
  boltToEnd: { value: 25, source: practice },
  /** Less than this inside leaves no room to work or for air. */
  leastInside: { value: 30, source: practice },
  /** How high a box may grow where the space has no height. */
  mostHeight: { value: 1000, source: practice },
  /** Round a plate, where the job does not say: to the space's sides. */
  plateGap: { value: 3, source: practice },
  /** How far a covering goes round to the back. */
  wrap: { value: 40, source: practice },
  /** Least of it that lies on the back. */
  leastWrap: { value: 25, source: practice },
  /** Between two finished edges. */
  reveal: { value: 0.5, source: practice },
  /** A covering under a clamped edge, as a share of its thickness, where nobody measured. */
  clampedShare: { value: 0.5, source: practice },
  /** Groove or rebate on the back: at most this share of the board. */
  backDepth: { value: 1 / 3, source: practice },
  /** The groove on the back keeps this far from holes. */
  grooveStopsShort: { value: 3, source: practice },
  /** Round a driver's frame in its recess, each side. */
  frameClearance: { value: 0.5, source: practice },
  /** Width of the groove on the back at the wrap line. */
  wrapGroove: { value: 4, source: practice },
  /** A chamfer reads through a covering when its face is this many times as wide as the covering is thick. */
  chamferOverCovering: { value: 3, source: practice },
  /** Left unused along each edge of a sheet, where the shop does not say. */
  trim: { value: 5, source: practice },
  /** What is left over goes to the rack if it is at least this long ... */
  leastOffcutLength: { value: 300, source: practice },
  /** ... and this wide. */
  leastOffcutWidth: { value: 100, source: practice },
  /** A board of the rack that misses a part by no more than this is worth a second look. */
  nearMiss: { value: 3, source: practice },
  /** Through cuts go this far into the spoilboard. */
  intoSpoilboard: { value: 0.3, source: practice },
  /** The hand router takes no more than this in one pass (1/4 in with a 1/2 in bit) ... */
  handPass: { value: 6, source: practice },
  /** ... and no more than this share of the bit's diameter. */
  handPassShare: { value: 0.5, source: practice },
  /** A piece is cut at the saw while it is at least this long ... */
  heldLength: { value: 300, source: practice },
  /** ... and this wide: shorter and narrower parts come last, from a longer strip. */
  heldWidth: { value: 50, source: practice },
  /** Between fence and blade: with less room than this a push stick goes through, never a hand. */
  pushStick: { value: 150, source: practice },
  /** One setting of fence or stop block, in sheets of board. */
  settingWorth: { value: 0.01, source: practice },
  /** Left on outside the line of what is cut free roughly, to be routed off. */
  roughAllowance: { value: 3, source: practice },
  /** Between a bit and the bush round it, each side. */
  bushClearance: { value: 0.5, source: practice },
  /** Circles of a lesser radius are no work for a circle jig: the pivot lies under the router's base. */
  jigRadius: { value: 40, source: practice },
  /** Of two passes beside each other, the second takes this share of the bit's diameter at most. */
  besidePass: { value: 0.8, source: practice },
  /** Dowels that keep a turned sheet in register. */
  pin: { value: 8, source: practice },
  /** They go so far into the spoilboard. */
  pinInto: { value: 10, source: practice },
  /** From the ends of the sheet: not equal, so that it goes on one way only. */
  pinFromLeft: { value: 15, source: practice },
  pinFromRight: { value: 25, source: practice },
  /** Board left whole round a dowel. */
  pinWall: { value: 6, source: practice },
  /** A bit measured further off its mark than this was mostly measured wrong. */
  bitMeasuredOff: { value: 0.5, source: practice },
  /** What a caliper reads may be off by this. */
  readingOff: { value: 0.05, source: practice },
  /** MDF that nobody measured, up to 19 mm thick ... */
  mdfThickness: { value: 0.2, source: "EN 622-1, measured to EN 324-1; from memory" },
  /** ... and thicker. */
  thickMdfThickness: { value: 0.3, source: "EN 622-1, measured to EN 324-1; from memory" },
  mdfThick: { value: 19, source: "EN 622-1, measured to EN 324-1; from memory" },
  /** Sanded plywood that nobody measured: this, and a share of its thickness (the lower limit, which is the wider). */
  plywoodThickness: { value: 0.4, source: "EN 315; from memory" },
  plywoodThicknessShare: { value: 0.03, source: "EN 315; from memory" },
  /** A size cut by a CNC router is off by no more. */
  cncOff: { value: 0.1, source: practice },
  /** One set by hand is off by no more than this share of the step it is set in. */
  stepOff: { value: 0.5, source: practice },
  /** Joints made for one thickness still go together when the board is off by this. */
  thicknessAgrees: { value: 0.2, source: practice },
  /** Over this a part or box is lifted by two, kg. */
  twoPeopleKg: { value: 25, source: "NIOSH lifting equation (23 kg load constant), rounded; from memory" },
  /** Blades tilt no further, degrees. */
  bladeTiltDeg: { value: 45, source: practice },
} as const satisfies Record<string, Rule>;
