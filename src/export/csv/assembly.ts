import type { Vector } from "../../geometry/frame.js";
import { formatNumber } from "../../input/number.js";
import { type JointPlace, jointPlaces } from "../../lists/jointPlaces.js";
import type { Build } from "../../model/build.js";
import type { Part } from "../../model/part.js";

// What puts parts together, to the micron: each part's share begins with its number, since parts that are cut alike
// have neighbours of their own.

const exact = (value: number) => formatNumber(value, 6);
const words: Readonly<Record<JointPlace["form"], string>> = {
  butt: "butts on",
  mitre: "mitres with",
  rebate: "is rebated into",
  groove: "runs in a groove of",
  lap: "lies on",
};

/** Face outlines: every edge by name with the corner where it begins; a bowed edge with its bulge behind. */
export const outlinesOf = (parts: readonly Part[]) =>
  shares(parts, ({ profile }) =>
    profile.outer.map(({ by, x, y, bulge }) =>
      [by, exact(x), exact(y), ...(bulge === 0 ? [] : ["bulge", exact(bulge)])].join(" "),
    ),
  );

/** Tilts of the blade: above 0 the back is smaller. */
export const bevelsOf = (parts: readonly Part[]) =>
  shares(parts, ({ edges }) =>
    Object.entries(edges).flatMap(([by, { bevel }]) =>
      bevel === 0 ? [] : [`${by} ${exact((bevel * 180) / Math.PI)}`],
    ),
  );

/** Which edge stands where on which part: its ends in that part's outline and below its face, and the angle inside. */
export const jointsOf = (parts: readonly Part[], build: Build) =>
  shares(parts, (part) =>
    jointPlaces(part, build).map(({ form, edge, on, angle, from, to }) => {
      const degrees = exact((angle * 180) / Math.PI);
      return `${edge} ${words[form]} ${on.number} at ${degrees} deg from ${placed(from)} to ${placed(to)}`;
    }),
  );

const placed = (at: Vector) => at.map(exact).join(" ");

function shares(parts: readonly Part[], of: (part: Part) => readonly string[]): string {
  return parts
    .map((part) => ({ part, own: of(part) }))
    .filter(({ own }) => own.length > 0)
    .map(({ part, own }) => `${part.number}: ${own.join("; ")}`)
    .join(" | ");
}
