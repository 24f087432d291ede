/** The same function, worked out once for each thing: plans and parts never change, and several checks ask alike. */
export function onceFor<Thing extends object, Result>(make: (thing: Thing) => Result): (thing: Thing) => Result {
  const made = new WeakMap<Thing, { readonly result: Result }>();
  return (thing) => {
    const known = made.get(thing);
    if (known !== undefined) return known.result;
    const result = make(thing);
    made.set(thing, { result });
    return result;
  };
}

/** The same for what follows from three things together. */
export function onceForThree<A extends object, B extends object, C extends object, Result>(
  make: (a: A, b: B, c: C) => Result,
): (a: A, b: B, c: C) => Result {
  const made = onceFor((a: A) => onceFor((b: B) => onceFor((c: C) => make(a, b, c))));
  return (a, b, c) => made(a)(b)(c);
}
