/** A binary min-heap of (key, value) number pairs. Equal keys leave in no fixed order but always the same one. */
export interface Heap {
  readonly keys: number[];
  readonly values: number[];
}

/** An empty heap: the smallest key comes out first. */
export function createHeap(): Heap {
  return { keys: [], values: [] };
}

export function pushTo({ keys, values }: Heap, key: number, value: number): void {
  let at = keys.length;
  keys.push(key);
  values.push(value);
  while (at > 0) {
    const above = (at - 1) >> 1;
    const aboveKey = keys[above]!;
    if (aboveKey <= key) break;
    keys[at] = aboveKey;
    values[at] = values[above]!;
    at = above;
  }
  keys[at] = key;
  values[at] = value;
}

/** Removes the least entry and returns its value; -1 when empty. */
export function popFrom({ keys, values }: Heap): number {
  const top = values[0];
  const key = keys.pop();
  const value = values.pop();
  if (top === undefined || key === undefined || value === undefined) return -1;
  const size = keys.length;
  if (size === 0) return top;
  let at = 0;
  for (;;) {
    let below = 2 * at + 1;
    if (below >= size) break;
    if (below + 1 < size && keys[below + 1]! < keys[below]!) below++;
    const belowKey = keys[below]!;
    if (belowKey >= key) break;
    keys[at] = belowKey;
    values[at] = values[below]!;
    at = below;
  }
  keys[at] = key;
  values[at] = value;
  return top;
}
