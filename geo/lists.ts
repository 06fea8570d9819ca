/** The least of the numbers; Infinity of none. Spread into Math.min, a long list would overflow the stack. */
export function smallest(values: Iterable<number>): number {
  let found = Number.POSITIVE_INFINITY;
  for (const value of values) found = Math.min(found, value);
  return found;
}

/** The greatest of the numbers; -Infinity of none. */
export function largest(values: Iterable<number>): number {
  let found = Number.NEGATIVE_INFINITY;
  for (const value of values) found = Math.max(found, value);
  return found;
}

/** Adds all of `more` at the end of a list, however many they are. */
export function append<T>(list: T[], more: Iterable<T>): void {
  for (const one of more) list.push(one);
}
