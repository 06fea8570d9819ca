import { Reader } from '../../../../geo/shelf/bytes.ts';
import { ByteStore } from '../../../../geo/shelf/import/byte-store.ts';
import { tileNumberAt } from '../../../../geo/shelf/import/way-tiles.ts';
import { foldName, NAME_KINDS, type NameEntry, type NameKind } from '../../../../geo/shelf/names.ts';
import { readText } from '../../../../geo/shelf/tag-bytes.ts';
import { Spill, type SpillIndex } from './spill.ts';

/** By the first letters of the folded name, in their order, so that one bucket after the other is in order too. */
export const NAME_BUCKETS = 632;
/** One entry is kept of a road's name in each tile of this zoom. */
const SAME_ROAD_ZOOM = 10;

/** An entry of the index as it waits to be sorted. */
export interface WaitingName {
  readonly entry: NameEntry;
  readonly folded: string;
  readonly id: number;
  /** where a road's name is said once */
  readonly tile: number;
}

/** Gathers the names of the index. */
export class NamesOut {
  private readonly spill: Spill;
  private readonly record = new ByteStore(512);
  private readonly buckets = new Map<string, number>();

  constructor(path: string) {
    this.spill = new Spill(path, NAME_BUCKETS);
  }

  /** @param text name, kind and what, as `encodeName` writes them */
  put(
    text: Uint8Array,
    { id, lat, lon }: { readonly id: number; readonly lat: number; readonly lon: number },
  ): void {
    const bucket = this.bucketOf(readText(new Reader(text)));
    if (bucket === undefined) return;
    const { record } = this;
    record.at = 0;
    record.room(40 + text.length);
    record.uint(text.length);
    record.append(text);
    record.double(id);
    record.double(lat);
    record.double(lon);
    this.spill.add(bucket, record.bytes.subarray(0, record.at));
  }

  end(): SpillIndex {
    return this.spill.end();
  }

  private bucketOf(name: string): number | undefined {
    const known = this.buckets.get(name);
    if (known !== undefined) return known;
    const folded = foldName(name);
    if (folded === '') return undefined;
    if (this.buckets.size > 20_000) this.buckets.clear();
    const bucket = nameBucket(folded);
    this.buckets.set(name, bucket);
    return bucket;
  }
}

/** In order of the first letter; of a…z, where most names are, of the second too. */
function nameBucket(folded: string): number {
  const first = folded.charCodeAt(0);
  if (first < 0x61) return Math.max(0, Math.min(15, first - 0x30));
  if (first <= 0x7a) {
    const second = folded.length > 1 ? folded.charCodeAt(1) : 0;
    return 16 + (first - 0x61) * 8 + (second < 0x61 ? 0 : Math.min(7, 1 + ((second - 0x61) >>> 2)));
  }
  if (first < GREEK) return 224 + ((first - 0x7b) >>> 4);
  // Greek, Cyrillic, Armenian, Hebrew: two letters a bucket
  if (first < ARABIC) return 272 + ((first - GREEK) >>> 1);
  return 600 + ((first - ARABIC) >>> 11);
}

const GREEK = 0x370;
const ARABIC = 0x600;

/** Reads a bucket of names. */
export function readNames(store: ByteStore, length: number): WaitingName[] {
  const all: WaitingName[] = [];
  store.at = 0;
  while (store.at < length) {
    const size = store.readUint();
    const reader = new Reader(store.bytes, store.at, store.at + size);
    const name = readText(reader);
    const kind = readText(reader) as NameKind;
    const what = readText(reader);
    store.at += size;
    const id = store.readDouble();
    const lat = store.readDouble();
    const lon = store.readDouble();
    all.push({
      entry: { name, kind: NAME_KINDS.includes(kind) ? kind : 'site', what, lat, lon },
      folded: foldName(name),
      id,
      tile: tileNumberAt(lat, lon, SAME_ROAD_ZOOM),
    });
  }
  return all;
}
