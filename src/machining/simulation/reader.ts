import { type Word, wordsOf } from "./words.js";

export type Place = readonly [x: number, y: number, z: number];

/** One motion as the machine carries it out, mm; `line` counts from 1. An arc turns left where `sweep`, rad, is positive. */
export type Step = {
  readonly line: number;
  readonly rapid: boolean;
  readonly from: Place;
  readonly to: Place;
  readonly arc?: { readonly center: readonly [number, number]; readonly radius: number; readonly sweep: number };
  /** mm/min; of a rapid 0. */
  readonly feed: number;
  readonly tool: number;
  /** 0: the spindle stands. */
  readonly rpm: number;
};

/** Something wrong in a program, at a line; 0: in all of it. */
export type Fault = { readonly line: number; readonly words: string };

export type Reading = { readonly steps: readonly Step[]; readonly faults: readonly Fault[] };

/** What the machine remembers from line to line. Where it stands is not known before it is told. */
type State = {
  at: [number, number, number];
  motion: number | undefined;
  unit: number | undefined;
  feed: number;
  tool: number;
  speed: number;
  turning: boolean;
  ended: boolean;
};

/** The words of the start that change nothing here because only this one of their kind is taken. */
const taken = new Set([17, 40, 43, 49, 54, 64, 80, 90, 94]);
const stops = new Set([0, 1, 6, 7, 8, 9]);

/** How far the radii at an arc's two ends may differ, in the unit of the program. Source: the RS274/NGC interpreter of
 *  NISTIR 6556, TOLERANCE_MM and TOLERANCE_INCH. */
const mostApart = (unit: number) => (unit === 1 ? 0.002 : 0.0002 * unit);

/**
 * Reads a program in absolute coordinates and feed a minute, arcs by their centre, and says what the machine does: a
 * reader of its own, which knows nothing of how the text was made. Everything it does not know is a fault.
 *
 * Source: NISTIR 6556, tables of G and M codes and 3.5.3 (arcs in centre form).
 */
export function readProgram(text: string): Reading {
  const steps: Step[] = [];
  const faults: Fault[] = [];
  const nowhere = Number.NaN;
  const state: State = {
    at: [nowhere, nowhere, nowhere],
    motion: undefined,
    unit: undefined,
    feed: 0,
    tool: 0,
    speed: 0,
    turning: false,
    ended: false,
  };
  text.split("\n").forEach((content, i) => {
    const line = i + 1;
    const fault = (words: string) => faults.push({ line, words });
    const { words, bad } = wordsOf(content);
    if (bad !== undefined) fault(`no word: ${bad}`);
    if (words.length === 0) return;
    if (state.ended) fault("words after the end");
    const step = carryOut(words, state, line, fault);
    if (step !== undefined) steps.push(step);
  });
  if (!state.ended) faults.push({ line: 0, words: "no end" });
  return { steps, faults };
}

function carryOut(
  words: readonly Word[],
  state: State,
  line: number,
  fault: (words: string) => void,
): Step | undefined {
  const dwell = words.some(({ letter, value }) => letter === "G" && value === 4);
  const axes = new Map<string, number>();
  for (const { letter, value } of words) {
    if ("XYZIJ".includes(letter)) axes.set(letter, value);
    else if (letter === "P" && dwell) continue;
    else setMode(letter, value, state, fault);
  }
  return axes.size === 0 ? undefined : move(axes, state, line, fault);
}

function setMode(letter: string, value: number, state: State, fault: (words: string) => void): void {
  const unknown = () => fault(`${letter}${value} is not known`);
  if (letter === "F") state.feed = value * (state.unit ?? 1);
  else if (letter === "S") state.speed = value;
  else if (letter === "T") state.tool = value;
  else if (letter === "H" && value === state.tool) return;
  else if (letter === "G") setG(value, state, unknown);
  else if (letter === "M") setM(value, state, unknown);
  else unknown();
}

function setG(value: number, state: State, unknown: () => void): void {
  if (value <= 3) state.motion = value;
  else if (value === 20 || value === 21) state.unit = value === 20 ? 25.4 : 1;
  else if (value !== 4 && !taken.has(value)) unknown();
}

function setM(value: number, state: State, unknown: () => void): void {
  if (value === 3) state.turning = true;
  else if (value === 5) state.turning = false;
  else if (value === 2 || value === 30) state.ended = true;
  else if (!stops.has(value)) unknown();
}

function move(
  axes: ReadonlyMap<string, number>,
  state: State,
  line: number,
  fault: (words: string) => void,
): Step | undefined {
  const { motion, unit, feed, tool } = state;
  if (unit === undefined || motion === undefined) {
    fault("moves before unit and motion are told");
    return undefined;
  }
  const from: Place = [...state.at];
  const to = ["X", "Y", "Z"].map((axis, i) => (axes.has(axis) ? axes.get(axis)! * unit : from[i]!)) as [
    number,
    number,
    number,
  ];
  state.at = to;
  const rpm = state.turning ? state.speed : 0;
  const common = { line, rapid: motion === 0, from, to, feed: motion === 0 ? 0 : feed, tool, rpm };
  if (motion > 0 && [...from, ...to].some(Number.isNaN)) fault("feeds from a place that is not known");
  if (motion > 0 && !(feed > 0)) fault("feeds without a feed");
  if (motion < 2) {
    if (axes.has("I") || axes.has("J")) fault("a centre without an arc");
    return common;
  }
  const arc = arcOf(axes, from, to, motion === 3, unit);
  if (arc.apart > mostApart(unit)) fault(`radii of an arc differ by ${arc.apart.toFixed(5)} mm`);
  if (arc.radius === 0) fault("an arc without a radius");
  return { ...common, arc };
}

function arcOf(axes: ReadonlyMap<string, number>, from: Place, to: Place, left: boolean, unit: number) {
  const center = [from[0] + (axes.get("I") ?? 0) * unit, from[1] + (axes.get("J") ?? 0) * unit] as const;
  const radius = Math.hypot(from[0] - center[0], from[1] - center[1]);
  const apart = Math.abs(radius - Math.hypot(to[0] - center[0], to[1] - center[1]));
  const angle = (p: Place) => Math.atan2(p[1] - center[1], p[0] - center[0]);
  const turn = 2 * Math.PI;
  const ahead = (((angle(to) - angle(from)) % turn) + turn) % turn;
  const round = from[0] === to[0] && from[1] === to[1];
  const sweep = round ? turn : left ? ahead : turn - ahead;
  return { center, radius, sweep: left ? sweep : -sweep, apart };
}
