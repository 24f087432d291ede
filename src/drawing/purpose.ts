import type { Axis } from "../model/joint.js";
import type { Feature } from "../model/part.js";

export type Role = Axis["stack"][number]["role"];

const roleWords: Readonly<Record<Role, string>> = {
  clearance: "clearance for",
  thread: "threaded insert for",
  pilot: "pilot for",
};

const stageWords: Readonly<Record<Feature["stage"], string | undefined>> = {
  sheet: undefined,
  bench: "on the loose part",
  assembled: "only after glue-up",
};

/** What a hole does for the fastener that runs through it; undefined where none does. */
export function roleOf(feature: Feature, axes: readonly Axis[]): Role | undefined {
  return stackEntry(feature, axes)?.role;
}

/** What a feature is for and when it is cut, in a few words; none where it speaks for itself. */
export function purposeOf(feature: Feature, axes: readonly Axis[]): readonly string[] {
  const entry = stackEntry(feature, axes);
  const words = [
    entry && `${roleWords[entry.role]} ${entry.fastener}`,
    feature.filledBy && `for ${feature.filledBy}`,
    stageWords[feature.stage],
  ];
  return words.filter((each) => each !== undefined);
}

function stackEntry(feature: Feature, axes: readonly Axis[]) {
  const axis = axes.find(({ id }) => id === feature.axis);
  const place = axis?.stack.find((each) => each.feature === feature.id);
  return axis && place ? { role: place.role, fastener: axis.fastener } : undefined;
}
