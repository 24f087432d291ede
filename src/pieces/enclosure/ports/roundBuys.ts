import type { Dowel } from "./dowels.js";
import { type RoundPort, straightsOf } from "./roundPort.js";

/** What a round port is put together of, as one asks for it in a shop. */
export function portItems(port: RoundPort): readonly string[] {
  const { outside, spec, flares, elbow } = port;
  const tube = `${millimetres(outside)} outside${spec.wall === undefined ? "" : `, wall ${millimetres(spec.wall)}`}`;
  const [first, second] = straightsOf(port);
  const widened = [flares.outer, flares.inner];
  // the tube goes from flare to elbow, or from flare to flare
  const taken = second === undefined ? [lengthOf(widened)] : widened.map((flare) => flare?.length ?? 0);
  const straights = [first, second].flatMap((straight, i) => (straight === undefined ? [] : [straight - taken[i]!]));
  return [
    ...straights
      .filter((length) => length > leastTube)
      .map((length) => `port tube ${tube}, cut to ${millimetres(length)}`),
    ...(elbow
      ? [`port elbow ${degrees(elbow.turn)}, ${tube}, middle line of radius ${millimetres(elbow.radius)}`]
      : []),
    ...widened.flatMap((flare) =>
      flare
        ? [`port flare ${millimetres(outside)} to ${millimetres(flare.mouth)}, ${millimetres(flare.length)} long`]
        : [],
    ),
  ];
}

const lengthOf = (flares: readonly (RoundPort["flares"]["outer"] | undefined)[]): number =>
  flares.reduce((sum, flare) => sum + (flare?.length ?? 0), 0);

/** What is left of a tube shorter than this is none, mm. */
const leastTube = 0.5;

export const dowelItem = ({ thick, long }: Dowel): string =>
  `dowel ${millimetres(thick)} thick, cut square to ${millimetres(long)}`;

const millimetres = (value: number): string => `${Math.round(value * 10) / 10} mm`;
const degrees = (angle: number): string => `${Math.round((angle * 1800) / Math.PI) / 10} degrees`;
