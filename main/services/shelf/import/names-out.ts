import { Reader } from '../../../../geo/shelf/bytes.ts';
import { ByteSets } from '../../../../geo/shelf/import/byte-sets.ts';
import { ByteStore } from '../../../../geo/shelf/import/byte-store.ts';
import { CELL_ZOOM, columnAt, RowFinder } from '../../../../geo/shelf/import/grid.ts';
import { foldName, NAME_KINDS, type NameEntry, type NameKind } from '../../../../geo/shelf/names.ts';
import { readText } from '../../../../geo/shelf/tag-bytes.ts';
import { Spill, type SpillIndex } from './spill.ts';

/** By the first letters of the folded name, in their order, so that one bucket after the other is in order too. */
export const NAME_BUCKETS = 632;
/** One entry is kept of a road's name in each tile of this zoom. */
const SAME_ROAD_ZOOM = 10;

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
    const bucket = this.bucketOf(text);
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

  private bucketOf(text: Uint8Array): number | undefined {
    const plain = plainBucket(text);
    if (plain !== undefined) return plain;
    const name = readText(new Reader(text));
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

/**
 * The bucket of a name that begins with two plain units, the first a letter or digit of ASCII: folding leaves these
 * but for their case, and what is no letter or digit sorts before all that are.
 */
function plainBucket(text: Uint8Array): number | undefined {
  const lead = text[0]!;
  // short enough for one byte, and no common word
  if (lead >= 0x80 || lead % 2 === 0 || lead < 5) return undefined;
  const first = lower(text[1]!);
  const second = lower(text[2]!);
  if (second >= 0x80 || !isLetterOrDigit(first)) return undefined;
  return first < 0x61 ? first - 0x30 : bucketOfTwo(first, isLetterOrDigit(second) ? second : 0);
}

function lower(unit: number): number {
  return unit >= 0x41 && unit <= 0x5a ? unit + 0x20 : unit;
}

function isLetterOrDigit(unit: number): boolean {
  return (unit >= 0x30 && unit <= 0x39) || (unit >= 0x61 && unit <= 0x7a);
}

/** In order of the first letter; of a…z, where most names are, of the second too. */
function nameBucket(folded: string): number {
  const first = folded.charCodeAt(0);
  if (first < 0x61) return Math.max(0, Math.min(15, first - 0x30));
  if (first <= 0x7a) return bucketOfTwo(first, folded.length > 1 ? folded.charCodeAt(1) : 0);
  if (first < GREEK) return 224 + ((first - 0x7b) >>> 4);
  // Greek, Cyrillic, Armenian, Hebrew: two letters a bucket
  if (first < ARABIC) return 272 + ((first - GREEK) >>> 1);
  return 600 + ((first - ARABIC) >>> 11);
}

function bucketOfTwo(first: number, second: number): number {
  return 16 + (first - 0x61) * 8 + (second < 0x61 ? 0 : Math.min(7, 1 + ((second - 0x61) >>> 2)));
}

const GREEK = 0x370;
const ARABIC = 0x600;

/** An entry of the index, to be sorted. */
export interface WaitingName {
  readonly entry: NameEntry;
  readonly folded: string;
}

interface Bearer {
  readonly id: number;
  readonly lat: number;
  readonly lon: number;
  readonly what: string;
}

/** All that bears one name and is of one kind; of roads one in each cell. */
interface Bearers {
  readonly name: string;
  readonly kind: NameKind;
  readonly byCell: Map<number, Bearer>;
}

/** Reads a bucket of names; of a road's pieces within one tile of SAME_ROAD_ZOOM the one of the lowest id is kept. */
export function readNames(store: ByteStore, length: number): WaitingName[] {
  const all = new Map<string, Bearers>();
  const texts = new ByteSets();
  const known: { readonly bearers: Bearers; readonly what: string }[] = [];
  const rows = new RowFinder();
  let others = 0;
  store.at = 0;
  while (store.at < length) {
    const size = store.readUint();
    const text = texts.add(store.bytes, store.at, store.at + size);
    store.at += size;
    const id = store.readDouble();
    const lat = store.readDouble();
    const lon = store.readDouble();
    // each text is made but once
    known[text] ??= bearersOf(new Reader(texts.store.bytes, texts.start[text], texts.start[text + 1]), all);
    const { bearers, what } = known[text];
    const column = columnAt(lon) >> (CELL_ZOOM - SAME_ROAD_ZOOM);
    const row = rows.rowAt(lat) >> (CELL_ZOOM - SAME_ROAD_ZOOM);
    const cell = bearers.kind === 'road' ? (row << SAME_ROAD_ZOOM) | column : --others;
    const there = bearers.byCell.get(cell);
    if (there === undefined || there.id > id) bearers.byCell.set(cell, { id, lat, lon, what });
  }
  return [...all.values()].flatMap(({ name, kind, byCell }) => {
    const folded = foldName(name);
    return [...byCell.values()].map(({ lat, lon, what }) => ({
      entry: { name, kind, what, lat, lon },
      folded,
    }));
  });
}

function bearersOf(reader: Reader, all: Map<string, Bearers>): { bearers: Bearers; what: string } {
  const name = readText(reader);
  const said = readText(reader);
  const kind = NAME_KINDS.find((one) => one === said) ?? 'site';
  const what = readText(reader);
  const key = `${kind} ${name}`;
  const bearers = all.get(key) ?? { name, kind, byCell: new Map() };
  all.set(key, bearers);
  return { bearers, what };
}
