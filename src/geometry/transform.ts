import type { Path, Point, Profile, Region, Vertex } from "./profile.js";

const origin: Point = { x: 0, y: 0 };

/** Shifted, mm. */
export function moved(chain: Profile | Path, dx: number, dy: number): Vertex[] {
  return chain.map((v) => ({ ...v, x: v.x + dx, y: v.y + dy }));
}

/** Turned counter-clockwise, rad, about a place. Quarter turns are exact. */
export function turned(chain: Profile | Path, angle: number, about: Point = origin): Vertex[] {
  const [c, s] = cosSin(angle);
  return chain.map((v) => {
    const x = v.x - about.x;
    const y = v.y - about.y;
    return { ...v, x: about.x + x * c - y * s, y: about.y + x * s + y * c };
  });
}

/** A profile seen in a mirror: x becomes -x. Walked the other way, so that it is counter-clockwise again. */
export function mirrored(profile: Profile): Profile {
  const n = profile.length;
  return profile.map((_, i) => {
    const at = profile[n - 1 - i]!;
    const edge = profile[(2 * n - 2 - i) % n]!;
    return { x: 0 - at.x, y: at.y, bulge: edge.bulge, by: edge.by };
  });
}

/** An open chain seen in a mirror: x becomes -x. It still starts where it started. */
export function mirroredPath(path: Path): Path {
  return path.map((v) => ({ ...v, x: 0 - v.x, bulge: 0 - v.bulge }));
}

export function moveRegion(region: Region, dx: number, dy: number): Region {
  return mapRegion(region, (loop) => moved(loop, dx, dy));
}

/** Turned counter-clockwise, rad, about a place. */
export function turnRegion(region: Region, angle: number, about: Point = origin): Region {
  return mapRegion(region, (loop) => turned(loop, angle, about));
}

/** x becomes -x. */
export function mirrorRegion(region: Region): Region {
  return mapRegion(region, mirrored);
}

function mapRegion(region: Region, change: (loop: Profile) => Profile): Region {
  return { outer: change(region.outer), holes: region.holes.map(change) };
}

/** Cosine and sine; those of quarter turns are exact. */
export function cosSin(angle: number): readonly [number, number] {
  const quarters = angle / (Math.PI / 2);
  const whole = Math.round(quarters);
  if (Math.abs(quarters - whole) > 1e-15 * Math.max(1, Math.abs(quarters))) return [Math.cos(angle), Math.sin(angle)];
  return (
    [
      [1, 0],
      [0, 1],
      [-1, 0],
      [0, -1],
    ] as const
  )[((whole % 4) + 4) % 4]!;
}
