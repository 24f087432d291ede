import { all, type Finding, mm } from "../../../input/finding.js";
import { partId } from "../../../model/ids.js";
import type { Around } from "../../../model/piece.js";
import { type EnclosureSpec, type SizeName, sizeNames } from "../schema.js";
import type { Shape } from "../shape.js";
import { dowelsOf } from "./dowels.js";
import { portBlockSteps } from "./portBlockParts.js";
import { portBlocksOf } from "./portBlocks.js";
import { portName, type RoundPort, roundPortsOf } from "./roundPort.js";

/** What is done with dowels, and with ports that do not pass their holes, before the last panel closes the box. */
export function roundStepsInside(spec: EnclosureSpec, shape: Shape, around: Around) {
  const held = roundPortsOf(spec, shape, around).filter((port) => !passes(port));
  const blocks = portBlocksOf(roundPortsOf(spec, shape, around), spec, shape, around);
  return [
    ...dowelSteps(spec, shape, around),
    ...portBlockSteps(blocks, around),
    ...portSteps(held, "ports inside", heldWords, around),
  ];
}

/** The ports that go in through their holes, when the box is together. */
export function roundStepsOutside(spec: EnclosureSpec, shape: Shape, around: Around) {
  const pushed = roundPortsOf(spec, shape, around).filter(passes);
  return portSteps(pushed, "ports", pushedWords, around);
}

const seal = "seal it all round with glue or sealant, inside and outside: a gap there whistles";
const heldWords = `Glue {ports} into place before the last panel goes on, since what bends, widens or bears a block does not pass the hole; ${seal}`;
const pushedWords = `Glue {ports} in through the hole, flush with the outside; ${seal}`;

/** Whether a port goes in from outside: straight, and nowhere wider behind its wall than its hole, no block on it. */
const passes = ({ elbow, flares: { inner }, hole, spec: { blocks } }: RoundPort): boolean =>
  elbow === undefined && blocks?.inner === undefined && (inner?.mouth ?? 0) <= hole;

function portSteps(ports: readonly RoundPort[], name: string, words: string, { id }: Around) {
  if (ports.length === 0) return [];
  const parts = [...new Set(ports.map(({ face }) => partId(id, face.name)))];
  return [{ name, parts, words, facts: { ports: all(ports.map(portName)) }, cautions: ["formaldehyde"] }];
}

const from: Readonly<Record<SizeName, string>> = { width: "left", depth: "rear", height: "lower" };

function dowelSteps(spec: EnclosureSpec, shape: Shape, around: Around) {
  const stand = dowelsOf(spec, shape, around).stand.map(({ name, index }) => ({ name, ...spec.dowels![index]! }));
  if (stand.length === 0) return [];
  const facts = stand.flatMap(({ at }, i): [string, Finding["facts"][string]][] => [
    [`one${i + 1}`, mm(at[0])],
    [`other${i + 1}`, mm(at[1])],
  ]);
  const places = stand.map(({ name, across }, i) => {
    const [one, other] = sizeNames.filter((size) => size !== across).map((size) => from[size]);
    return `${name} {one${i + 1}} from the outside of the ${one} side and {other${i + 1}} from the ${other}`;
  });
  return [
    {
      name: "dowels",
      parts: [],
      words: `Glue the dowels between their walls as the box goes together, a screw or a pin through the wall into each end: ${places.join("; ")}`,
      facts: Object.fromEntries(facts),
      cautions: [],
    },
  ];
}
