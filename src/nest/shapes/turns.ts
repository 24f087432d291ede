import { extentsOf, isCircle } from "../../geometry/measure.js";
import type { Profile, Region } from "../../geometry/profile.js";
import type { NestItem } from "../engine.js";
import { layBlank } from "../placed.js";

/** The item with only the turns in which its shape looks different: one for a ring, two for a rectangle. */
export function withoutLikeTurns(item: NestItem): NestItem {
  const looks = item.turns.map((turn) => lookOf(layBlank(item.shape, turn, false)));
  return { ...item, turns: item.turns.filter((_, i) => looks.indexOf(looks[i]!) === i) };
}

/** The same text for shapes that differ by no more than a shift and noise. */
function lookOf(shape: Region): string {
  const { min } = extentsOf(shape);
  const round = (value: number) => Math.round(value * 1e4) / 1e4 + 0;
  const look = (profile: Profile): string => {
    const whole = isCircle(profile);
    if (whole) return `o ${round(whole.center.x - min.x)} ${round(whole.center.y - min.y)} ${round(whole.radius)}`;
    return profile
      .map(({ x, y, bulge }) => `${round(x - min.x)} ${round(y - min.y)} ${round(bulge)}`)
      .sort()
      .join(",");
  };
  return [look(shape.outer), ...shape.holes.map(look).sort()].join(";");
}
