import load from "manifold-3d";

const module = await load();
module.setup();

/** Chords round a tube: it loses 2 / 3 (pi / n)2 of its section, a twenty thousandth. */
const chords = 360;
/** Points along a flare. */
const points = 64;

type Widens = { readonly mouth: number; readonly long: number } | undefined;

/** A port by what stands in the job: outside sizes, mm and rad. `wall`: how deep the wall that it stands in. */
export type TurnedTube = {
  readonly outside: number;
  readonly long: number;
  readonly wall: number;
  readonly outer: Widens;
  readonly inner: Widens;
  readonly elbow: { readonly after: number; readonly radius: number; readonly turns: number } | undefined;
};

/** What of a tube stands behind its wall, L: its outline turned on a lathe of another library, its elbow swept round. */
export function turnedTubeL({ outside, long, wall, outer, inner, elbow }: TurnedTube): number {
  const first = elbow?.after ?? long;
  const last = elbow === undefined ? 0 : long - elbow.after - elbow.radius * elbow.turns;
  const straight = turned(outside, first, outer, elbow === undefined ? inner : undefined, wall);
  return (straight + (elbow ? swept(outside, elbow) + turned(outside, last, undefined, inner, 0) : 0)) / 1e6;
}

/** A straight run from 0 to `long`, cut off at `from`. */
function turned(outside: number, long: number, outer: Widens, inner: Widens, from: number): number {
  // a quarter of an ellipse, by the angle at its middle
  const quarter = ({ mouth, long: f }: NonNullable<Widens>) =>
    Array.from({ length: points + 1 }, (_, i): [number, number] => {
      const angle = ((i / points) * Math.PI) / 2;
      return [mouth / 2 - (mouth / 2 - outside / 2) * Math.cos(angle), f - f * Math.sin(angle)];
    });
  const begins: [number, number][] = outer ? quarter(outer).reverse() : [[outside / 2, 0]];
  const ends: [number, number][] = inner
    ? quarter(inner).map(([r, s]): [number, number] => [r, long - s])
    : [[outside / 2, long]];
  const outline: [number, number][] = [[0, long], [0, 0], ...begins, ...ends];
  const section = new module.CrossSection(outline, "Positive");
  const solid = section.revolve(chords);
  const cut = solid.trimByPlane([0, 0, 1], from);
  const volume = cut.volume();
  for (const each of [section, solid, cut]) each.delete();
  return volume;
}

function swept(outside: number, { radius, turns }: NonNullable<TurnedTube["elbow"]>): number {
  const middle = module.CrossSection.circle(outside / 2, chords);
  const circle = middle.translate([radius, 0]);
  const solid = circle.revolve(chords, (turns * 180) / Math.PI);
  const volume = solid.volume();
  for (const each of [middle, circle, solid]) each.delete();
  return volume;
}
