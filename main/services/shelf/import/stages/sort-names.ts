import { type Settlement, Settlements } from '../../../../../geo/shelf/around.ts';
import { ByteStore } from '../../../../../geo/shelf/import/byte-store.ts';
import { LAYER } from '../../../../../geo/shelf/layers.ts';
import { compareTexts, encodeNames, NAME_KINDS, type NameEntry } from '../../../../../geo/shelf/names.ts';
import { BlockOut, type BlockPlaces } from '../block-out.ts';
import { type BearerList, type Bearers, NameReader } from '../read-names.ts';
import { SpillReader } from '../spill.ts';
import type { SpillIndex } from '../spill-index.ts';

/** Entries of one block of the index. */
const PER_BLOCK = 512;
/** Blocks of one bucket are numbered from here on by bucket; the directory's numbers are made of them at the end. */
export const BLOCKS_PER_BUCKET = 2 ** 20;

export interface SortNamesSetup {
  readonly names: readonly SpillIndex[];
  readonly outFile: string;
  readonly outEnd: BigInt64Array;
}

export interface SortedNames {
  readonly blocks: BlockPlaces;
  /** first folded name of each block, by its number */
  readonly keys: readonly (readonly [block: number, key: string])[];
  /** places by which the map may be told */
  readonly settlements: readonly Settlement[];
}

/** Sorts the names of one bucket at a time into blocks of the index. */
export class NameSorter {
  private readonly reader: SpillReader;
  private readonly out: BlockOut;
  private readonly store = new ByteStore();
  private readonly names = new NameReader();
  private readonly settlements = new Settlements();
  private readonly keys: (readonly [number, string])[] = [];

  constructor(setup: SortNamesSetup) {
    this.reader = new SpillReader(setup.names);
    this.out = new BlockOut(setup.outFile, setup.outEnd);
  }

  run(bucket: number): void {
    const length = this.reader.read(bucket, this.store);
    let block = bucket * BLOCKS_PER_BUCKET;
    let first = '';
    let entries: NameEntry[] = [];
    const flush = () => {
      if (entries.length === 0) return;
      const bytes = encodeNames(entries);
      this.keys.push([block, first]);
      this.out.add(LAYER.names, block++, (out) => out.append(bytes));
      entries = [];
    };
    const names = this.names.read(this.store, length);
    const { list } = this.names;
    for (const { name, folded, kind, byCell } of names.sort(inOrder)) {
      for (const at of placesInOrder(byCell.values(), list)) {
        if (entries.length === 0) first = folded;
        const entry = { name, kind, what: list.what[at]!, lat: list.lat[at]!, lon: list.lon[at]! };
        entries.push(entry);
        if (kind === 'place') this.settlements.add(entry);
        if (entries.length === PER_BLOCK) flush();
      }
    }
    flush();
    this.out.flush();
  }

  end(): SortedNames {
    this.reader.close();
    return { blocks: this.out.close(), keys: this.keys, settlements: this.settlements.all() };
  }
}

/** As `compareNames` has them, with each name folded once. */
function inOrder(a: Bearers, b: Bearers): number {
  return (
    compareTexts(a.folded, b.folded) ||
    NAME_KINDS.indexOf(a.kind) - NAME_KINDS.indexOf(b.kind) ||
    compareTexts(a.name, b.name)
  );
}

/** From south to north; what stands in one place is told apart by what it is. */
function placesInOrder(places: Iterable<number>, { lat, lon, what }: BearerList): Uint32Array {
  return Uint32Array.from(places).sort(
    (a, b) => lat[a]! - lat[b]! || lon[a]! - lon[b]! || compareTexts(what[a]!, what[b]!),
  );
}
