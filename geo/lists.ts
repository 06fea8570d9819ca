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

/** The one at a place of a list that reaches so far; a place beyond its ends is a fault of the program's, and thrown. */
export function itemAt<T>(list: ArrayLike<T>, index: number): T {
  const found = list[index];
  if (found === undefined) throw new RangeError(`no item ${index} in a list of ${list.length}`);
  return found;
}

/** How long a line is whose places lie so far from its start, in their order: 0 of no places. */
export function lastOrZero(alongM: ArrayLike<number>): number {
  return alongM[alongM.length - 1] ?? 0;
}
