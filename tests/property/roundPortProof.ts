import { expect } from "vitest";
import { loadSolids } from "../../src/geometry/solids.js";
import { hasErrors } from "../../src/input/finding.js";
import { chambersOf } from "../../src/plan/checks/common/air.js";
import { insideClosed } from "../../src/plan/checks/insideClosed.js";
import { netVolume } from "../../src/plan/checks/netVolume.js";
import { tubesFit } from "../../src/plan/checks/tubesFit.js";
import { boardOf, wallOf } from "../../src/plan/solids.js";
import { starterShop } from "../../src/shop/starter.js";
import type { BoxSpec, PlannedBox } from "./boxes.js";
import { turnedTubeL } from "./turnedTube.js";

/**
 * Holds what a box with a port of tube must be: closed, the port's term that of a tube turned on a lathe, and the air as
 * measured on boards, tubes and dowels, to a ten thousandth. False where tubes meet something.
 */
export async function provePorted(planned: PlannedBox, box: BoxSpec): Promise<boolean> {
  const { job, plan } = planned;
  const { term, turned } = termsOf(planned, (box["round ports"] as readonly PortSpec[])[0]!);
  expect(Math.abs(term / turned - 1), `${term} by formula, ${turned} turned`).toBeLessThan(1e-4);
  if (hasErrors(await tubesFit.run(job, starterShop(), plan))) return false;
  const { measured, formula } = await volumesOf(planned);
  expect(Math.abs(measured / formula - 1), `${formula} by formula, ${measured} measured`).toBeLessThan(1e-4);
  const checks = [
    ...(await insideClosed.run(job, starterShop(), plan)),
    ...(await netVolume.run(job, starterShop(), plan)),
  ];
  expect(checks.map(({ code }) => code)).toEqual([]);
  return true;
}

type PortSpec = {
  readonly in: string;
  readonly outside?: number;
  readonly inside?: number;
  readonly wall?: number;
  readonly long: number;
  readonly flares?: { readonly outer?: Widens; readonly inner?: Widens };
  readonly elbow?: { readonly after: number; readonly radius: number; readonly turns: string };
};
type Widens = { readonly mouth: number; readonly long: number };

/** The port's own term, and the same turned on a lathe. */
function termsOf({ plan }: PlannedBox, spec: PortSpec) {
  const wall = plan.built.parts
    .filter(({ role }) => role === spec.in || role === `${spec.in} lining`)
    .reduce((sum, { thickness }) => sum + thickness, 0);
  const { long, flares, elbow } = spec;
  const turned = turnedTubeL({
    outside: spec.outside ?? spec.inside! + 2 * spec.wall!,
    long,
    wall,
    outer: flares?.outer,
    inner: flares?.inner,
    elbow: elbow && { ...elbow, turns: (Number.parseFloat(elbow.turns) * Math.PI) / 180 },
  });
  const [term] = plan.built.air.flatMap(({ terms }) => terms.filter(({ what }) => what === "port 1"));
  return { term: -term!.litres, turned };
}

/** What the boards, the tubes and the dowels leave of the air, measured, and the sum of the terms; L. */
async function volumesOf({ plan }: PlannedBox) {
  const kernel = await loadSolids();
  const [chamber] = chambersOf(plan);
  return kernel.within(() => {
    const walls = chamber!.walls.map((wall) => wallOf(kernel, wall, 1e-4, []));
    const bars = (plan.built.tubes ?? []).flatMap(({ stretches }) =>
      stretches.map(({ at, length, d, dTo }) => kernel.cone(d, dTo, 0, length, at)),
    );
    const shell = kernel.union([...walls, ...chamber!.others.map((other) => boardOf(kernel, other)), ...bars]);
    const skins = kernel.components(shell);
    // the largest first: last comes what is hollow
    const hollow = skins.at(-1)!;
    // a tube that only touches its wall may come as a skin of its own
    const { min, max } = kernel.extentsOf(hollow)!;
    const free = skins.filter((skin) => {
      const own = kernel.extentsOf(skin)!;
      return skin !== hollow && [0, 1, 2].every((i) => own.min[i]! >= min[i]! - 1e-3 && own.max[i]! <= max[i]! + 1e-3);
    });
    const measured = [hollow, ...free].reduce((sum, skin) => sum - kernel.volumeOf(skin), 0) / 1e6;
    return { measured, formula: chamber!.air.terms.reduce((sum, { litres }) => sum + litres, 0) };
  });
}
