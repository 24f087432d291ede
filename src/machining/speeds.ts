import type { Bit, Cnc } from "../model/shop.js";
import { cutOf } from "../shop/lookups.js";
import { chipLoad, depthShare } from "./chipLoad.js";
import type { Pace } from "./moves.js";

/** How a bit turns and moves in a board. `chip`: mm a tooth at the feed, for a pass as deep as the bit is wide. */
export type Speeds = {
  readonly rpm: number;
  readonly feed: number;
  readonly plunge: number;
  readonly chip: number;
  /** What the chip would be if the spindle could turn as slowly, or the machine go as fast, as it takes. */
  readonly wanted: number;
};

/** Why a bit cannot turn in this machine: its limit lies below the spindle's slowest. */
export type NoSpeed = { readonly limit: number; readonly least: number };

/** Teeth where nobody wrote them down: common practice, no source. */
const usualFlutes = 2;

/** rpm and feeds are set in whole steps of these: 1/min and mm/min. */
const rpmStep = 100;
const feedStep = 10;

/** A bit that goes straight down cuts with its tip alone: this share of the feed, common practice, no source. */
const plungeShare = 0.5;

/** Fastest for a diameter, so that the rim does not run too fast: 1/min by mm, common practice, no source. */
const rimLimits: readonly { readonly upTo: number; readonly rpm: number }[] = [
  { upTo: 25.4, rpm: 24_000 },
  { upTo: 50.8, rpm: 18_000 },
  { upTo: 63.5, rpm: 16_000 },
  { upTo: Number.POSITIVE_INFINITY, rpm: 12_000 },
];

/** Drills turn no faster than this where the spindle can turn so slowly, lest they burn: common practice, no source. */
const drillRpm = 6000;

/** Feed = rpm x teeth x chip, mm/min. Source: published feed formula (cncshop.eu, asttooling.com). */
export function feedOf(rpm: number, flutes: number, chip: number): number {
  return rpm * flutes * chip;
}

/** The fastest a bit may turn, 1/min: by its rim, and by what is marked on it, which always wins. */
export function fastest(bit: Bit): number {
  const byRim = rimLimits.find(({ upTo }) => cutOf(bit) <= upTo)!.rpm;
  return bit["most rpm"] ?? byRim;
}

/**
 * Speeds of a bit in a material. As fast as bit and spindle may turn; where the machine cannot go as fast as the chip
 * then asks, the rpm goes down to keep the chip, since too thin a chip burns the board; where the machine cannot go as
 * slowly, it goes up.
 */
export function speedsOf(cnc: Cnc, bit: Bit, material: string): Speeds | NoSpeed {
  const usual = bit.kind === "drill" ? Math.max(drillRpm, cnc.rpm.least) : cnc.rpm.most;
  const limit = Math.min(fastest(bit), usual, cnc.rpm.most);
  if (limit < cnc.rpm.least) return { limit, least: cnc.rpm.least };
  const flutes = bit.flutes ?? usualFlutes;
  const wanted = chipLoad(material, cutOf(bit)) * cnc["chip share"];
  const keeping = (feed: number) => feed / (flutes * wanted);
  const slowest = Math.max(cnc.rpm.least, keeping(cnc.feed.least));
  const rpm = stepDown(Math.min(limit, Math.max(slowest, keeping(cnc.feed.most))), rpmStep);
  const turning = Math.max(rpm, cnc.rpm.least);
  const feed = within(stepDown(feedOf(turning, flutes, wanted), feedStep), cnc.feed);
  const plunge = Math.max(feedStep, stepDown(Math.min(cnc.plunge, feed * plungeShare), feedStep));
  return { rpm: turning, feed, plunge, chip: feed / (turning * flutes), wanted };
}

/** The pace of passes this deep, mm; deeper than the bit is wide they go slower. */
export function paceOf(cnc: Cnc, speeds: Speeds, d: number, depth: number): Pace {
  const feed = within(stepDown(speeds.feed * depthShare(depth, d), feedStep), cnc.feed);
  return { feed, plunge: Math.min(speeds.plunge, feed), air: cnc.feed.most };
}

function stepDown(value: number, step: number): number {
  return Math.floor(value / step + 1e-9) * step;
}

function within(value: number, { least, most }: Cnc["feed"]): number {
  return Math.min(most, Math.max(least, value));
}
