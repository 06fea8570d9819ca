/** Index of the first value that is not below another, of those from `from` up to before `to`; `to` where all are below. */
export function firstAtLeast(
  rising: Float64Array,
  value: number,
  from = 0,
  to: number = rising.length,
): number {
  let low = from;
  let high = to;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (rising[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * The span between two neighbours that holds a value: the index of its lower end. What lies beyond the ends is held by
 * the first and the last span. @param first, last indices of the ends
 */
export function spanHolding(
  rising: Float64Array,
  value: number,
  first = 0,
  last: number = rising.length - 1,
): number {
  let low = first;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (rising[middle]! <= value) low = middle;
    else high = middle;
  }
  return low;
}

/** The least whole number from `low` to `high` of which something holds that holds of `high` and of all above the answer. */
export function leastWhere(low: number, high: number, holds: (index: number) => boolean): number {
  let [least, most] = [low, high];
  while (least < most) {
    const middle = (least + most) >> 1;
    if (holds(middle)) most = middle;
    else least = middle + 1;
  }
  return most;
}

/**
 * Where something begins to hold, between a value of which it does not and one of which it does, halved until they are
 * within `fine` of each other. Either may be the greater.
 */
export function halve(
  outside: number,
  inside: number,
  fine: number,
  holds: (value: number) => boolean,
): { readonly outside: number; readonly inside: number } {
  let [without, within] = [outside, inside];
  while (Math.abs(within - without) > fine) {
    const middle = (without + within) / 2;
    if (holds(middle)) within = middle;
    else without = middle;
  }
  return { outside: without, inside: within };
}
