import type { NestedSheet } from "../model/build.js";

/** Whether a sheet has to be bought: neither is it in the rack, nor what another sheet leaves. */
export const isBought = ({ offcut, onHand, restOf }: Pick<NestedSheet, "offcut" | "onHand" | "restOf">): boolean =>
  offcut === undefined && onHand === undefined && restOf === undefined;
