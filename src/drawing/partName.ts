import type { Part } from "../model/part.js";

/** "box top"; a part that bears its piece's name is called once. */
export function partName({ piece, role }: Pick<Part, "piece" | "role">): string {
  return String(piece) === role ? role : `${piece} ${roleName(role)}`;
}

/** "block 2" for the second of several. */
export function roleName(role: string): string {
  return role.replace(/[.](\d+)$/, " $1");
}

/** What parts that are cut alike are called together: "box left, box right"; "box block" for block.1 to block.6. */
export function namesOf(parts: readonly Part[]): string {
  return [...new Set(parts.map(({ piece, role }) => partName({ piece, role: role.replace(/[.]\d+$/, "") })))].join(
    ", ",
  );
}

/** "1 part", "3 parts". */
export function partCount(count: number): string {
  return counted(count, "part");
}

/** A whole number of things whose name takes an s. */
export function counted(count: number, thing: string): string {
  return `${count} ${thing}${count === 1 ? "" : "s"}`;
}
