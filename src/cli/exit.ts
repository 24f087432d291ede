/** What the command tells the shell that ran it. */
export const exit = {
  done: 0,
  /** It ran, and findings of severity error say that something must not be made as it is. */
  errors: 1,
  /** A file, a folder or an argument cannot be used at all. */
  unusable: 2,
  /** A mistake of this program's own. The number is EX_SOFTWARE of BSD sysexits(3), from memory. */
  ourFault: 70,
} as const;

export type Exit = (typeof exit)[keyof typeof exit];
