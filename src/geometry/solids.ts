import type { Manifold, Vec3 } from "manifold-3d";
import type { KernelModule } from "#manifold";
import { type Frame, identity, inverse, matrixOf, type Vector } from "./frame.js";
import type { Point, Profile, Region } from "./profile.js";
import { chordsOf, tessellate } from "./tessellate.js";
import { tolerance } from "./tolerance.js";

/** A solid of a kernel, valid until the `within` in which it was made returns. */
export type SolidRef = number & { readonly __brand: "solid" };

/** A block whose sides are parallel to the axes of some frame, mm. */
export type Block = { readonly min: Vector; readonly max: Vector };

/** How much two solids share. */
export type Overlap = { readonly volume: number; readonly depth: number };

/**
 * Solids, for as long as the work on them takes.
 *
 * Units:   mm, mm3; a frame is where the solid's own axes stand.
 * Circles: stand inside the true circle by at most `tolerance.chord`.
 * Throws:  only for our own mistakes: a solid made outside `within`, or used after it.
 */
export type SolidKernel = {
  /** Frees every solid made in `work` when it returns or throws; only plain data may leave. Calls may be nested. */
  within<T>(work: () => T): T;
  /** A board: face at z = 0, back at z = -thickness. Empty where the outline or the thickness makes none. */
  extrude(region: Region, thickness: number, at: Frame): SolidRef;
  /** A round bar about the frame's z axis between two heights, whichever way round they are given. */
  cylinder(d: number, from: number, to: number, at: Frame): SolidRef;
  /** A frustum about the frame's z axis: `d` wide at height `from`, `dTo` wide at height `to`. */
  cone(d: number, dTo: number, from: number, to: number, at: Frame): SolidRef;
  box(block: Block, at: Frame): SolidRef;
  /** Of none: an empty solid. */
  union(solids: readonly SolidRef[]): SolidRef;
  difference(from: SolidRef, taken: readonly SolidRef[]): SolidRef;
  intersection(a: SolidRef, b: SolidRef): SolidRef;
  /**
   * The separate skins of a solid, the largest first. A hollow that the solid closes in all round comes as a skin of its
   * own, with a negative volume: so a box whose air is shut in has one, and a leaking box has none.
   */
  components(solid: SolidRef): readonly SolidRef[];
  volumeOf(solid: SolidRef): number;
  /** Along the axes of a frame, in its coordinates; along the world's where none is given. None: it is empty. */
  extentsOf(solid: SolidRef, along?: Frame): Block | undefined;
  isEmpty(solid: SolidRef): boolean;
  /** Whether a point lies in the solid; on its skin either answer may come. */
  contains(solid: SolidRef, point: Vector): boolean;
  overlap(a: SolidRef, b: SolidRef, along: readonly Frame[]): Overlap;
};

/** Of a cube the mean thickness is a third of its side; what is thinner than this share is a sliver. */
const sliver = 0.3;

let loading: Promise<SolidKernel> | undefined;

/** The kernel; its code is fetched and started on the first call only (about 70 ms). */
export function loadSolids(): Promise<SolidKernel> {
  loading ??= start();
  return loading;
}

async function start(): Promise<SolidKernel> {
  const { default: load } = await import("#manifold");
  const module = await load();
  module.setup();
  return kernelOn(module);
}

function kernelOn(module: KernelModule): SolidKernel {
  const { Manifold } = module;
  // A stack: `within` notes its height and cuts it back, so inner work may use what outer work made.
  const alive: Manifold[] = [];
  let depth = 0;

  function keep(solid: Manifold): SolidRef {
    if (depth === 0) {
      solid.delete();
      throw new Error("a solid was made outside `within`");
    }
    return (alive.push(solid) - 1) as SolidRef;
  }

  function solidOf(ref: SolidRef): Manifold {
    const solid = alive[ref];
    if (solid === undefined) throw new Error("a solid was used after its `within` returned");
    return solid;
  }

  function within<T>(work: () => T): T {
    const height = alive.length;
    depth += 1;
    try {
      return work();
    } finally {
      depth -= 1;
      for (const solid of alive.splice(height)) solid.delete();
    }
  }

  function placed(solid: Manifold, at: Frame): SolidRef {
    if (at === identity) return keep(solid);
    const moved = solid.transform(matrixOf(at));
    solid.delete();
    return keep(moved);
  }

  function extrude(region: Region, thickness: number, at: Frame): SolidRef {
    const loops = [region.outer, ...region.holes].map((profile, index) => outlineOf(profile, index > 0));
    // The kernel would read past its memory at a place that is not a number, and stop at a loop without area.
    if (!(thickness > 0) || !loops.every(isLoop)) return keep(Manifold.union([]));
    const outlines = new module.Vector2_vec2();
    try {
      for (const loop of loops) {
        const points = new module.Vector_vec2();
        for (const { x, y } of loop) points.push_back({ x, y });
        outlines.push_back(points);
        points.delete();
      }
      const standing = module._Extrude(outlines, thickness, 0, 0, { x: 1, y: 1 });
      const hanging = standing.translate(0, 0, -thickness);
      standing.delete();
      return placed(hanging, at);
    } finally {
      outlines.delete();
    }
  }

  function cone(d: number, dTo: number, from: number, to: number, at: Frame): SolidRef {
    const [low, high] = from < to ? [d, dTo] : [dTo, d];
    const segments = chordsOf(Math.max(d, dTo) / 2, 2 * Math.PI, tolerance.chord);
    const standing = Manifold.cylinder(Math.abs(to - from), low / 2, high / 2, segments);
    const lifted = standing.translate(0, 0, Math.min(from, to));
    standing.delete();
    return placed(lifted, at);
  }

  function box({ min, max }: Block, at: Frame): SolidRef {
    const cube = Manifold.cube([max[0] - min[0], max[1] - min[1], max[2] - min[2]]);
    const shifted = cube.translate(min[0], min[1], min[2]);
    cube.delete();
    return placed(shifted, at);
  }

  function extentsOf(ref: SolidRef, along: Frame = identity): Block | undefined {
    const solid = solidOf(ref);
    if (solid.isEmpty()) return undefined;
    if (along === identity) return solid.boundingBox();
    const seen = solid.transform(matrixOf(inverse(along)));
    const extents = seen.boundingBox();
    seen.delete();
    return extents;
  }

  /** Counts how often a ray from the point leaves through the skin. */
  function contains(ref: SolidRef, point: Vector): boolean {
    const extents = extentsOf(ref);
    if (extents === undefined) return false;
    // In no board's plane and along no board's edge, so that the ray meets faces and not their seams.
    const reach = 2 * Math.hypot(...minus(extents.max, extents.min)) + Math.hypot(...minus(extents.max, point));
    const end: Vec3 = [point[0] + 0.2673 * reach, point[1] + 0.5345 * reach, point[2] + 0.8018 * reach];
    return solidOf(ref).rayCast([...point], end).length % 2 === 1;
  }

  /**
   * How deep: per separate piece of what is shared, its least extent along any axis of the given frames. A thin sliver
   * round a circle reaches far along every axis: a piece whose mean thickness (twice volume over surface) is a small
   * part of its least extent counts by that thickness instead. The deepest piece is told.
   */
  function overlap(a: SolidRef, b: SolidRef, along: readonly Frame[]): Overlap {
    return within(() => {
      const shared = kernel.intersection(a, b);
      if (kernel.isEmpty(shared)) return { volume: 0, depth: 0 };
      const depths = kernel.components(shared).map((piece) => {
        const extents = along.flatMap((frame) => extentsOf(piece, frame) ?? []);
        const least = Math.min(...extents.flatMap(({ min, max }) => minus(max, min)));
        const thickness = (2 * solidOf(piece).volume()) / solidOf(piece).surfaceArea();
        return thickness < sliver * least ? thickness : least;
      });
      return { volume: kernel.volumeOf(shared), depth: Math.max(...depths) };
    });
  }

  const kernel: SolidKernel = {
    within,
    extrude,
    cylinder: (d, from, to, at) => cone(d, d, from, to, at),
    cone,
    box,
    union: (solids) => keep(Manifold.union(solids.map(solidOf))),
    difference: (from, taken) => keep(Manifold.difference([solidOf(from), ...taken.map(solidOf)])),
    intersection: (a, b) => keep(Manifold.intersection([solidOf(a), solidOf(b)])),
    components: (solid) =>
      (solidOf(solid).isEmpty() ? [] : solidOf(solid).decompose())
        .map(keep)
        .sort((a, b) => solidOf(b).volume() - solidOf(a).volume()),
    volumeOf: (solid) => solidOf(solid).volume(),
    extentsOf,
    isEmpty: (solid) => solidOf(solid).isEmpty(),
    contains,
    overlap,
  };
  return kernel;
}

/** A loop that may have area: three places at least, all of them numbers. */
function isLoop(points: readonly Point[]): boolean {
  return points.length > 2 && points.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y));
}

/** A profile as straight pieces; a hole runs the other way round, as the kernel asks. */
function outlineOf(profile: Profile, hole: boolean) {
  const points = tessellate(profile, tolerance.chord);
  return hole ? points.toReversed() : points;
}

function minus(a: Vector, b: Vector): Vector {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}
