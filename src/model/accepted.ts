import type { NestedSheet } from "./build.js";
import type { BoardId } from "./ids.js";

/** A layout that the fabricator accepted: what was bought is what is cut. One group for each board and way of cutting. */
export type AcceptedLayout = {
  readonly version: 1;
  /** Hash of the groups: tells a file that was changed by hand. */
  readonly sum: string;
  readonly groups: readonly AcceptedGroup[];
};

export type AcceptedGroup = {
  readonly board: BoardId;
  readonly byMachine: boolean;
  /** What each part's blank was, as a hash, by the part's id. */
  readonly parts: Readonly<Record<string, string>>;
  readonly sheets: readonly NestedSheet[];
};
