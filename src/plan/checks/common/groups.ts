/** Things with the same key, together, in the order in which each key first came. */
export function groupsOf<T>(things: readonly T[], keyOf: (thing: T) => string): readonly (readonly T[])[] {
  const groups = new Map<string, T[]>();
  for (const thing of things) {
    const group = groups.get(keyOf(thing));
    if (group === undefined) groups.set(keyOf(thing), [thing]);
    else group.push(thing);
  }
  return [...groups.values()];
}
