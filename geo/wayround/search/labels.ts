import { createHeap, type Heap, popFrom, pushTo } from '../../graph/heap.ts';

/** What a search knows of one state in one layer. Tenths of seconds. */
interface Entries {
  readonly key: number[];
  readonly cost: number[];
  readonly time: number[];
  readonly gives: number[];
  /** entry it was come to from; -1 - i at the source of index i */
  readonly parent: number[];
  readonly settled: boolean[];
}

/**
 * Labels of one side of a search, by key (state and layer). The table by key is the map's and lasts; only what was
 * touched is cleared, so that a search costs nothing for the map's size.
 */
export class Labels {
  readonly entries: Entries = { key: [], cost: [], time: [], gives: [], parent: [], settled: [] };
  private readonly heap: Heap = createHeap();
  private readonly entryOf: Int32Array;

  constructor(table: Int32Array) {
    this.entryOf = table;
  }

  /** The entry of a key, -1 while there is none. */
  at(key: number): number {
    return this.entryOf[key]!;
  }

  /** Takes a label that is less than the known one; @param rank what the entry is taken up by */
  offer(key: number, label: Label, rank: number): void {
    const { entries, entryOf } = this;
    const known = entryOf[key]!;
    const isKnown = known >= 0;
    if (isKnown && !isLess(label, entries.gives[known]!, entries.cost[known]!)) return;
    const entry = isKnown ? known : entries.key.length;
    entryOf[key] = entry;
    entries.key[entry] = key;
    entries.cost[entry] = label.cost;
    entries.time[entry] = label.time;
    entries.gives[entry] = label.gives;
    entries.parent[entry] = label.parent;
    entries.settled[entry] = false;
    pushTo(this.heap, rank, entry);
  }

  /** Rank of the next entry; Infinity when nothing is left. */
  top(): number {
    return this.heap.keys[0] ?? Number.POSITIVE_INFINITY;
  }

  /** How many entries wait, those already settled included. */
  waiting(): number {
    return this.heap.keys.length;
  }

  /** Settles the next entry; -1 when nothing is left. */
  take(): number {
    for (;;) {
      const entry = popFrom(this.heap);
      if (entry < 0) return -1;
      if (this.entries.settled[entry] === true) continue;
      this.entries.settled[entry] = true;
      return entry;
    }
  }

  /** Keys from an entry back to where it began. */
  back(entry: number): number[] {
    const keys: number[] = [];
    for (let at = entry; at >= 0; at = this.entries.parent[at]!) keys.push(this.entries.key[at]!);
    return keys;
  }

  /** The index of the source that an entry comes from. */
  sourceOf(entry: number): number {
    let at = entry;
    while (at >= 0) at = this.entries.parent[at]!;
    return -1 - at;
  }

  clear(): void {
    for (const key of this.entries.key) this.entryOf[key] = -1;
  }
}

export interface Label {
  readonly cost: number;
  readonly time: number;
  readonly gives: number;
  readonly parent: number;
}

function isLess({ gives, cost }: Label, knownGives: number, knownCost: number): boolean {
  return gives < knownGives || (gives === knownGives && cost < knownCost);
}

const tables = new WeakMap<object, Int32Array[]>();

/** Labels for searches on one graph; give them back by `clear`. @param side 0 or 1: two may be in use at once */
export function labelsFor(graph: object, keys: number, side: 0 | 1): Labels {
  const known = tables.get(graph) ?? [];
  tables.set(graph, known);
  known[side] ??= new Int32Array(keys).fill(-1);
  return new Labels(known[side]);
}
