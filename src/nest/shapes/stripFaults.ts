import {
  areaPathsD,
  EndType,
  FillRule,
  inflatePathsD,
  intersectD,
  JoinType,
  type PathD,
  type PathsD,
} from "clipper2-ts";

/** A published order of shapes for a strip that is as short as can be, in the source's own units. */
export type StripInstance = {
  readonly name: string;
  readonly stripHeight: number;
  readonly allowedRotationsDeg: readonly number[];
  readonly items: readonly {
    readonly id: number;
    readonly demand: number;
    readonly polygon: readonly (readonly [number, number])[];
  }[];
};

/** Where a shape lies: turned counter-clockwise, its extents' corner shifted to 0, 0, then moved by x, y. */
export type StripPlacement = {
  readonly id: number;
  readonly x: number;
  readonly y: number;
  readonly rotationDeg: number;
};

/** Depth to which shapes may run into each other or over the edge, as a share of the strip's height. */
export const stripTolerance = 1e-6;

/**
 * All that is wrong with a layout, in words; empty if it is sound. It shares nothing with the search: it turns the
 * published polygons itself, and clipper2 tells what overlaps, each polygon drawn in by half the tolerance.
 */
export function stripFaults(
  instance: StripInstance,
  placements: readonly StripPlacement[],
  length: number,
): readonly string[] {
  const scale = 1000 / instance.stripHeight;
  const laid = placements.map((placement) => layOut(instance, placement, scale));
  const faults = [...demandFaults(instance, placements), ...turnFaults(instance, placements)];
  const slack = 1000 * stripTolerance;
  laid.forEach(({ box, path }, i) => {
    if (box.x0 < -slack || box.y0 < -slack || box.x1 > length * scale + slack || box.y1 > 1000 + slack)
      faults.push(`${i} lies outside of the strip`);
    for (let j = 0; j < i; j++)
      if (
        meet(box, laid[j]!.box) &&
        areaPathsD(intersectD(path, laid[j]!.path, FillRule.NonZero, decimals)) > slack ** 2
      )
        faults.push(`${j} and ${i} overlap`);
  });
  return faults;
}

/** Decimals that clipper2 keeps of a strip 1000 high. */
const decimals = 6;

type Box = { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number };
type LaidOut = { readonly path: PathsD; readonly box: Box };

function layOut(instance: StripInstance, { id, x, y, rotationDeg }: StripPlacement, scale: number): LaidOut {
  const item = instance.items.find((each) => each.id === id);
  const turned = (item?.polygon ?? []).map(([px, py]) => turnDeg(px, py, rotationDeg));
  const dx = x - Math.min(...turned.map((p) => p.x));
  const dy = y - Math.min(...turned.map((p) => p.y));
  const path: PathD = turned.map((p) => ({ x: (p.x + dx) * scale, y: (p.y + dy) * scale }));
  const drawnIn = inflatePathsD([path], -500 * stripTolerance, JoinType.Miter, EndType.Polygon, 2, decimals);
  const xs = path.map((p) => p.x);
  const ys = path.map((p) => p.y);
  return {
    path: drawnIn,
    box: { x0: Math.min(...xs), y0: Math.min(...ys), x1: Math.max(...xs), y1: Math.max(...ys) },
  };
}

function turnDeg(x: number, y: number, degrees: number): { readonly x: number; readonly y: number } {
  const quarters = ((Math.round(degrees / 90) % 4) + 4) % 4;
  if (Math.abs(degrees - 90 * Math.round(degrees / 90)) < 1e-9)
    return [
      { x, y },
      { x: -y, y: x },
      { x: -x, y: -y },
      { x: y, y: -x },
    ][quarters]!;
  const c = Math.cos((degrees * Math.PI) / 180);
  const s = Math.sin((degrees * Math.PI) / 180);
  return { x: c * x - s * y, y: s * x + c * y };
}

function demandFaults(instance: StripInstance, placements: readonly StripPlacement[]): string[] {
  const strangers = placements.filter(({ id }) => !instance.items.some((item) => item.id === id));
  const counts = instance.items.map((item) => ({ item, laid: placements.filter(({ id }) => id === item.id).length }));
  return [
    ...strangers.map(({ id }) => `nothing is called ${id}`),
    ...counts
      .filter(({ item, laid }) => laid !== item.demand)
      .map(({ item, laid }) => `${item.id} lies there ${laid} times, not ${item.demand}`),
  ];
}

function turnFaults(instance: StripInstance, placements: readonly StripPlacement[]): string[] {
  const allowed = (degrees: number) =>
    instance.allowedRotationsDeg.some((one) => Math.abs(((((degrees - one) % 360) + 540) % 360) - 180) < 1e-6);
  return placements
    .filter((one) => !allowed(one.rotationDeg))
    .map((one) => `${one.id} is turned by ${one.rotationDeg}`);
}

const meet = (a: Box, b: Box): boolean => a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1;
