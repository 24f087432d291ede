import type { SawCut, SawnPiece, SawWay } from "../../model/rip.js";
import { sameSize } from "./handling.js";

/** What is set for a cut: the line at the track, the fence, the stop block. */
export type Guide = "track" | SawWay;

/** A guide and where it stands; the same key, the same setting. */
export type Setting = { readonly guide: Guide; readonly key: string };

/** A piece that lies ready for its next cut. */
export type Ready = {
  readonly sheet: string;
  readonly name: string;
  readonly board: SawnPiece;
  readonly cut: SawCut;
  /** What may be set for it; the first is the usual one. */
  readonly settings: readonly [Setting, ...Setting[]];
  /** When it was laid there: the newest goes on first. */
  readonly since: number;
};

/** The next cut, and what is set for it. `waits`: it is set for this, and not all cuts of that setting can be made yet. */
export type Next = { readonly ready: Ready; readonly setting: Setting; readonly waits?: boolean };

/** What may be set for a cut; the first is the usual one. */
export function settingsFor({ saw, way, sledToo, along, size }: SawCut): Ready["settings"] {
  const at = Math.round(size / sameSize);
  const setting = (guide: Guide): Setting => ({ guide, key: `${guide} ${guide === "track" ? along : ""} ${at}` });
  if (saw === "track") return [setting("track")];
  return sledToo ? [setting(way), setting("cross-cut")] : [setting(way)];
}

/**
 * The pieces at hand, and how often each setting serves: for cuts that can be made now, one after another, and for all that
 * are still to come. By their settings, so that a thousand parts are looked through in no time.
 */
export type AtHand = {
  readonly track: Set<Ready>;
  readonly table: Map<string, Ready[]>;
  readonly now: Map<string, number>;
  readonly toCome: Map<string, number>;
};

/** Nothing at hand yet of these pieces. */
export function nothingYet(pieces: readonly SawnPiece[]): AtHand {
  const toCome = new Map<string, number>();
  const walk = ({ cut }: SawnPiece): void => {
    if (!cut) return;
    for (const { key } of settingsFor(cut)) count(toCome, key, 1);
    if (cut.off) walk(cut.off);
    if (cut.rest) walk(cut.rest);
  };
  for (const piece of pieces) walk(piece);
  return { track: new Set(), table: new Map(), now: new Map(), toCome };
}

/** Lays a piece at hand. */
export function lay({ track, table, now }: AtHand, ready: Ready): void {
  if (ready.cut.saw === "track") track.add(ready);
  else
    for (const { key } of ready.settings) {
      table.set(key, [...(table.get(key) ?? []), ready]);
      count(now, key, reachable(ready.board, key));
    }
}

/** Takes a piece away to be cut. */
export function take({ track, table, now, toCome }: AtHand, ready: Ready): void {
  track.delete(ready);
  for (const { guide, key } of ready.settings) {
    count(toCome, key, -1);
    if (guide === "track") continue;
    const others = table.get(key)!.filter((each) => each !== ready);
    if (others.length > 0) table.set(key, others);
    else table.delete(key);
    count(now, key, -reachable(ready.board, key));
  }
}

/**
 * What is cut next: along the track, then what the fence or the stop block stands right for, then the setting that serves
 * best. Undefined when all is done.
 */
export function nextOf(hand: AtHand, stands: ReadonlyMap<Guide, string>, last: Ready | undefined): Next | undefined {
  return nextTrack(hand, last) ?? nextSet(hand, stands, last) ?? nextSetting(hand);
}

/** A sheet that is begun is finished; of its pieces the one that was cut last goes on. */
function nextTrack({ track }: AtHand, last: Ready | undefined): Next | undefined {
  if (track.size === 0) return undefined;
  const all = [...track].sort((a, b) => b.since - a.since);
  const here = all.filter(({ sheet }) => sheet === last?.sheet);
  const again = here.find(({ settings }) => settings[0].key === last?.settings[0].key);
  const ready = again ?? here.find(({ cut }) => cut.along === last?.cut.along) ?? here[0] ?? all[0]!;
  return { ready, setting: ready.settings[0] };
}

/** What can be cut without setting anything; the rest of the last cut first. */
function nextSet({ table }: AtHand, stands: ReadonlyMap<Guide, string>, last: Ready | undefined): Next | undefined {
  const choices = [...stands].flatMap(([guide, key]) =>
    guide === "track" ? [] : (table.get(key) ?? []).map((ready): Next => ({ ready, setting: { guide, key } })),
  );
  const goesOn = choices.find(({ ready }) => ready.board === last?.cut.rest);
  if (goesOn) return goesOn;
  const [first, ...others] = choices;
  return first && others.reduce((newest, each) => (each.ready.since > newest.ready.since ? each : newest), first);
}

/**
 * A setting all of whose cuts can be made now, with what else is cut by it; of several the rips before the cross-cuts, the
 * widest first. Where two guides serve, that which serves more.
 */
function nextSetting({ table, now, toCome }: AtHand): Next | undefined {
  let best: { readonly next: Next; readonly rank: readonly number[] } | undefined;
  for (const [key, all] of table) {
    const ready = all.at(-1)!;
    const setting = ready.settings.find((each) => each.key === key)!;
    const coming = toCome.get(key) ?? 0;
    const waits = coming > (now.get(key) ?? 0);
    const isLesser = ready.settings.some((each) => (toCome.get(each.key) ?? 0) > coming);
    const rank = [waits ? 1 : 0, isLesser ? 1 : 0, setting.guide === "cross-cut" ? 1 : 0, -ready.cut.size];
    if (best === undefined || comesBefore(rank, best.rank)) best = { next: { ready, setting, waits }, rank };
  }
  return best?.next;
}

/** How many cuts of one setting can be made of a piece, one after another, before a bevel. */
function reachable({ cut, bevels }: SawnPiece, key: string): number {
  if (!cut || bevels || !settingsFor(cut).some((setting) => setting.key === key)) return 0;
  return 1 + (cut.off ? reachable(cut.off, key) : 0) + (cut.rest ? reachable(cut.rest, key) : 0);
}

function comesBefore(a: readonly number[], b: readonly number[]): boolean {
  const i = a.findIndex((value, place) => value !== b[place]);
  return i >= 0 && a[i]! < b[i]!;
}

const count = (counts: Map<string, number>, key: string, by: number) => counts.set(key, (counts.get(key) ?? 0) + by);
