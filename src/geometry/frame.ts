/** A place in space, mm, or a direction. */
export type Vector = readonly [number, number, number];
/** A unit quaternion [x, y, z, w]. */
export type Quaternion = readonly [number, number, number, number];

/**
 * Where something stands: a turn, then a shift. Right-handed. A point p of the frame lies at `origin + turn(quat, p)`
 * of the frame that holds it.
 */
export type Frame = { readonly origin: Vector; readonly quat: Quaternion };

export const identity: Frame = { origin: [0, 0, 0], quat: [0, 0, 0, 1] };

/** A frame that is only shifted, mm. */
export function shifted(x: number, y: number, z: number): Frame {
  return { origin: [x, y, z], quat: [0, 0, 0, 1] };
}

/** The frame with these unit vectors as its x and y axes; z = x cross y. The two must stand square to each other. */
export function frameFromAxes(origin: Vector, x: Vector, y: Vector): Frame {
  return { origin, quat: quaternionOf(x, y, cross(x, y)) };
}

/** A frame whose z axis runs this way, a unit vector; where its x axis points does not matter. */
export function frameAlong(origin: Vector, z: Vector): Frame {
  const square = cross(z, Math.abs(z[0]) < Math.abs(z[1]) ? [1, 0, 0] : [0, 1, 0]);
  const first = scale(square, 1 / Math.hypot(...square));
  return frameFromAxes(origin, first, cross(z, first));
}

/** Where a point of the frame lies in the frame that holds it. */
export function place(frame: Frame, p: Vector): Vector {
  const turned = turn(frame.quat, p);
  return [frame.origin[0] + turned[0], frame.origin[1] + turned[1], frame.origin[2] + turned[2]];
}

/** A direction of the frame, seen in the frame that holds it. */
export function turn(q: Quaternion, v: Vector): Vector {
  const u: Vector = [q[0], q[1], q[2]];
  const t = scale(cross(u, v), 2);
  const c = cross(u, t);
  return [v[0] + q[3] * t[0] + c[0], v[1] + q[3] * t[1] + c[1], v[2] + q[3] * t[2] + c[2]];
}

/** `inner`, given in the frame `outer`, seen from what holds `outer`. */
export function compose(outer: Frame, inner: Frame): Frame {
  return { origin: place(outer, inner.origin), quat: multiply(outer.quat, inner.quat) };
}

/** The frame that undoes this one: compose(inverse(f), f) is the identity. */
export function inverse(frame: Frame): Frame {
  const [x, y, z, w] = frame.quat;
  const back: Quaternion = [-x, -y, -z, w];
  const o = turn(back, frame.origin);
  return { origin: [-o[0], -o[1], -o[2]], quat: back };
}

/** Four columns of four numbers. */
export type Matrix = [...Column, ...Column, ...Column, ...Column];
type Column = [number, number, number, number];

/** The frame as a 4 x 4 matrix, column by column. */
export function matrixOf(frame: Frame): Matrix {
  const x = turn(frame.quat, [1, 0, 0]);
  const y = turn(frame.quat, [0, 1, 0]);
  const z = turn(frame.quat, [0, 0, 1]);
  return [...x, 0, ...y, 0, ...z, 0, ...frame.origin, 1];
}

export function cross(a: Vector, b: Vector): Vector {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

export function dot(a: Vector, b: Vector): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

function scale(v: Vector, s: number): Vector {
  return [v[0] * s, v[1] * s, v[2] * s];
}

function multiply(a: Quaternion, b: Quaternion): Quaternion {
  return [
    a[3] * b[0] + a[0] * b[3] + a[1] * b[2] - a[2] * b[1],
    a[3] * b[1] - a[0] * b[2] + a[1] * b[3] + a[2] * b[0],
    a[3] * b[2] + a[0] * b[1] - a[1] * b[0] + a[2] * b[3],
    a[3] * b[3] - a[0] * b[0] - a[1] * b[1] - a[2] * b[2],
  ];
}

/** Shepperd's method: divide by the largest of the four terms, so that none is lost to noise (S. W. Shepperd,
 *  "Quaternion from Rotation Matrix", J. Guidance and Control 1(3), 1978; from memory). */
function quaternionOf(x: Vector, y: Vector, z: Vector): Quaternion {
  const trace = x[0] + y[1] + z[2];
  if (trace > 0) {
    const s = 2 * Math.sqrt(trace + 1);
    return [(y[2] - z[1]) / s, (z[0] - x[2]) / s, (x[1] - y[0]) / s, s / 4];
  }
  if (x[0] > y[1] && x[0] > z[2]) {
    const s = 2 * Math.sqrt(1 + x[0] - y[1] - z[2]);
    return [s / 4, (y[0] + x[1]) / s, (z[0] + x[2]) / s, (y[2] - z[1]) / s];
  }
  if (y[1] > z[2]) {
    const s = 2 * Math.sqrt(1 + y[1] - x[0] - z[2]);
    return [(y[0] + x[1]) / s, s / 4, (z[1] + y[2]) / s, (z[0] - x[2]) / s];
  }
  const s = 2 * Math.sqrt(1 + z[2] - x[0] - y[1]);
  return [(z[0] + x[2]) / s, (z[1] + y[2]) / s, s / 4, (x[1] - y[0]) / s];
}
