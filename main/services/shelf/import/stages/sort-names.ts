import { ByteStore } from '../../../../../geo/shelf/import/byte-store.ts';
import { LAYER } from '../../../../../geo/shelf/layers.ts';
import { compareTexts, encodeNames, NAME_KINDS } from '../../../../../geo/shelf/names.ts';
import { BlockOut, type BlockPlaces } from '../block-out.ts';
import { readNames, type WaitingName } from '../names-out.ts';
import { type SpillIndex, SpillReader } from '../spill.ts';

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
}

/** Sorts the names of one bucket at a time into blocks of the index. */
export class NameSorter {
  private readonly reader: SpillReader;
  private readonly out: BlockOut;
  private readonly store = new ByteStore();
  private readonly keys: (readonly [number, string])[] = [];

  constructor(setup: SortNamesSetup) {
    this.reader = new SpillReader(setup.names);
    this.out = new BlockOut(setup.outFile, setup.outEnd);
  }

  run(bucket: number): void {
    const length = this.reader.read(bucket, this.store);
    const names = inOrder(readNames(this.store, length));
    for (let i = 0; i < names.length; i += PER_BLOCK) {
      const block = bucket * BLOCKS_PER_BUCKET + i / PER_BLOCK;
      const here = names.slice(i, i + PER_BLOCK);
      this.keys.push([block, here[0]!.folded]);
      const bytes = encodeNames(here.map(({ entry }) => entry));
      this.out.add(LAYER.names, block, (out) => out.append(bytes));
    }
    this.out.flush();
  }

  end(): SortedNames {
    this.reader.close();
    return { blocks: this.out.close(), keys: this.keys };
  }
}

/** As `compareNames` has them, with each name folded once; what stands in one place is told apart by what it is. */
function inOrder(names: WaitingName[]): WaitingName[] {
  return names.sort(
    (a, b) =>
      compareTexts(a.folded, b.folded) ||
      NAME_KINDS.indexOf(a.entry.kind) - NAME_KINDS.indexOf(b.entry.kind) ||
      compareTexts(a.entry.name, b.entry.name) ||
      a.entry.lat - b.entry.lat ||
      a.entry.lon - b.entry.lon ||
      compareTexts(a.entry.what, b.entry.what),
  );
}
