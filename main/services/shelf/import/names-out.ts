import { Reader } from '../../../../geo/shelf/bytes.ts';
import { ByteStore } from '../../../../geo/shelf/import/byte-store.ts';
import { RowFinder } from '../../../../geo/shelf/import/grid.ts';
import { foldName } from '../../../../geo/shelf/names.ts';
import { readText } from '../../../../geo/shelf/tag-bytes.ts';
import { sameRoadCell } from './read-names.ts';
import { RecentNames } from './recent-names.ts';
import { Spill } from './spill.ts';
import type { SpillIndex } from './spill-index.ts';

/** By the first letters of the folded name, in their order, so that one bucket after the other is in order too. */
const NAME_BUCKETS = 1048;

/** Gathers the names of the index. */
export class NamesOut {
  private readonly spill: Spill;
  private readonly record = new ByteStore(512);
  private readonly buckets = new Map<string, number>();
  private readonly recent = new RecentNames();
  private readonly rows = new RowFinder();
  /** where the text of the name begun last stands in its record */
  private textAt = 0;
  /** of the name begun last; undefined where it is not listed */
  private bucket: number | undefined;

  constructor(path: string) {
    this.spill = new Spill(path, NAME_BUCKETS);
  }

  /** Begins with the text of a name, bytes[from … to): name, kind and what, as `encodeNaming` follows a name. */
  begin(bytes: Uint8Array, from: number, to: number): void {
    const { record } = this;
    this.bucket = this.bucketOf(bytes, from, to);
    record.at = 0;
    record.room(40 + to - from);
    record.uint(to - from);
    this.textAt = record.at;
    record.append(bytes, from, to);
  }

  /** Puts the name begun last at a place where a road bears it. @param id of its way */
  putRoad(id: number, lat: number, lon: number): void {
    const { record, textAt } = this;
    const cell = sameRoadCell(this.rows, lat, lon);
    if (!this.recent.has(record.bytes, textAt, record.at, { cell, id })) this.put(id, lat, lon);
  }

  /** Puts the name begun last at a place. @param id of what bears it */
  put(id: number, lat: number, lon: number): void {
    const { record, bucket } = this;
    if (bucket === undefined) return;
    record.double(id);
    record.double(lat);
    record.double(lon);
    this.spill.add(bucket, record.bytes, 0, record.at);
  }

  end(): SpillIndex {
    return this.spill.end();
  }

  private bucketOf(bytes: Uint8Array, from: number, to: number): number | undefined {
    const plain = plainBucket(bytes, from);
    if (plain >= 0) return plain;
    const name = readText(new Reader(bytes, from, to));
    const known = this.buckets.get(name);
    if (known !== undefined) return known;
    const folded = foldName(name);
    if (folded === '') return undefined;
    if (this.buckets.size > 20_000) this.buckets.clear();
    const unit = (i: number) => (i < folded.length ? folded.charCodeAt(i) : 0);
    const bucket = bucketOfUnits(unit(0), unit(1), unit(2));
    this.buckets.set(name, bucket);
    return bucket;
  }
}

/**
 * The bucket of a name that begins with plain units, letters or digits of ASCII but for a space: folding leaves these
 * but for their case. -1 for any other.
 */
function plainBucket(text: Uint8Array, at: number): number {
  const lead = text[at]!;
  // short enough for one byte, no common word, three units at least
  if (lead >= 0x80 || lead % 2 === 0 || lead < 7) return -1;
  const first = lower(text[at + 1]!);
  const second = lower(text[at + 2]!);
  const third = lower(text[at + 3]!);
  const plain =
    isLetterOrDigit(first) && (isLetterOrDigit(second) || second === SPACE) && isLetterOrDigit(third);
  return plain ? bucketOfUnits(first, second, third) : -1;
}

function lower(unit: number): number {
  return unit >= 0x41 && unit <= 0x5a ? unit + 0x20 : unit;
}

function isLetterOrDigit(unit: number): boolean {
  return (unit >= 0x30 && unit <= 0x39) || (unit >= A && unit <= Z);
}

const SPACE = 0x20;
const A = 0x61;
const Z = 0x7a;
const GREEK = 0x370;
const ARABIC = 0x600;

/** Buckets of each letter of a…z: numbers of roads such as “A 7” or “K1234” are many and differ by their digits. */
const PER_LETTER = 24;

/** In order of the first unit of the folded name; of a…z, where most names are, of the second and third too. */
function bucketOfUnits(first: number, second: number, third: number): number {
  if (first < A) return Math.max(0, Math.min(15, first - 0x30));
  if (first <= Z) return 16 + (first - A) * PER_LETTER + withinLetter(second, third);
  const beyond = 16 + 26 * PER_LETTER;
  if (first < GREEK) return beyond + ((first - 0x7b) >>> 4);
  // Greek, Cyrillic, Armenian, Hebrew: two letters a bucket
  if (first < ARABIC) return beyond + 48 + ((first - GREEK) >>> 1);
  return beyond + 48 + 328 + ((first - ARABIC) >>> 11);
}

/** Nothing or a space with what follows it, a digit, a letter: 0…6, 7…16, 17…23. */
function withinLetter(second: number, third: number): number {
  if (second < 0x30) return third < 0x30 ? 0 : third < A ? 1 + Math.min(4, (third - 0x30) >>> 1) : 6;
  if (second < A) return 7 + Math.min(9, second - 0x30);
  return 17 + Math.min(6, (second - A) >>> 2);
}
