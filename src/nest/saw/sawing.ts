import type { Shop } from "../../model/shop.js";
import { rules } from "../../shop/rules.js";

/** What the workshop's saws and hands can do. Plain data, as it goes into an order. mm. */
export type Sawing = {
  readonly table: {
    readonly kerf: number;
    /** From blade to fence at most. */
    readonly reach: number;
    /** The longest cut on the sled. */
    readonly crossCut: number;
    /** The largest piece that one person brings to it. */
    readonly length: number;
    readonly width: number;
  };
  readonly track?: { readonly kerf: number; readonly longest: number };
  /** Smaller pieces are not held: neither to a fence nor on a sled. */
  readonly hold: { readonly length: number; readonly width: number };
  /** What the fence can be set to. */
  readonly step: number;
  /** The share of a sheet that one setting of fence or stop block is worth, or a turn of the sheet. */
  readonly setting: number;
};

const noLimit = 1e5;

export function sawingOf(shop: Pick<Shop, "saw" | "track saw">): Sawing {
  const { saw } = shop;
  const track = shop["track saw"];
  return {
    table: {
      kerf: saw.kerf,
      reach: saw["longest rip"] ?? noLimit,
      crossCut: saw["longest cross-cut"] ?? noLimit,
      length: saw["one person"]?.length ?? noLimit,
      width: saw["one person"]?.width ?? noLimit,
    },
    ...(track && { track: { kerf: track.kerf, longest: track["longest cut"] } }),
    hold: { length: rules.heldLength.value, width: rules.heldWidth.value },
    step: saw.step,
    setting: saw.setting ?? rules.settingWorth.value,
  };
}

/** Of the saws in use: layouts are searched with the widest kerf, and no two parts lie nearer than the narrowest. */
export const widestKerf = ({ table, track }: Sawing): number => Math.max(table.kerf, track?.kerf ?? 0);
export const narrowestKerf = ({ table, track }: Sawing): number => Math.min(table.kerf, track?.kerf ?? table.kerf);
