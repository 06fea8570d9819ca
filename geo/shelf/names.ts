import { Refusal } from '../roads/refusal.ts';
import { Reader, ShortBytes, Writer } from './bytes.ts';
import { PER_DEGREE } from './encode-block.ts';
import { readText, writeText } from './tag-bytes.ts';

export const NAME_KINDS = ['place', 'road', 'site'] as const;
export type NameKind = (typeof NAME_KINDS)[number];

/** One name of the index and where it is found, degrees. */
export interface NameEntry {
  readonly name: string;
  readonly kind: NameKind;
  /** the value that says what it is: town, residential, camp_site, … */
  readonly what: string;
  readonly lat: number;
  readonly lon: number;
}

/** How a name is sorted and looked up: without case, accents and punctuation. */
export function foldName(name: string): string {
  return name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/ß/gu, 'ss')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}

/** Order of the index: by folded name, then kind, then place, so that the same map gives the same index. */
export function compareNames(a: NameEntry, b: NameEntry): number {
  return (
    compareTexts(foldName(a.name), foldName(b.name)) ||
    NAME_KINDS.indexOf(a.kind) - NAME_KINDS.indexOf(b.kind) ||
    compareTexts(a.name, b.name) ||
    a.lat - b.lat ||
    a.lon - b.lon
  );
}

/** By UTF-16 units, as no language's order is everybody's. */
export function compareTexts(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** The bytes of one block of the index; places to ten-millionths of a degree. */
export function encodeNames(entries: readonly NameEntry[]): Uint8Array<ArrayBuffer> {
  const out = new Writer();
  out.uint(entries.length);
  for (const { name, kind, what, lat, lon } of entries) {
    writeText(name, out);
    out.uint(NAME_KINDS.indexOf(kind));
    writeText(what, out);
    out.int(Math.round(lat * PER_DEGREE));
    out.int(Math.round(lon * PER_DEGREE));
  }
  return out.done();
}

/** What `encodeNames` wrote. Throws a Refusal where the bytes cannot be that. */
export function decodeNames(bytes: Uint8Array): NameEntry[] {
  return decoded(bytes, (reader) => {
    const name = readText(reader);
    const kind = NAME_KINDS[reader.uint()];
    if (kind === undefined) throw new ShortBytes();
    return {
      name,
      kind,
      what: readText(reader),
      lat: reader.int() / PER_DEGREE,
      lon: reader.int() / PER_DEGREE,
    };
  });
}

/** The first folded name of each block of the index, as bytes: the one block of the layer `nameKeys`. */
export function encodeNameKeys(keys: readonly string[]): Uint8Array<ArrayBuffer> {
  const out = new Writer();
  out.uint(keys.length);
  for (const key of keys) writeText(key, out);
  return out.done();
}

/** What `encodeNameKeys` wrote. Throws a Refusal where the bytes cannot be that. */
export function decodeNameKeys(bytes: Uint8Array): string[] {
  return decoded(bytes, readText);
}

/** Far more than one block of the index has. */
const NAMES_MOST = 1 << 20;

function decoded<T>(bytes: Uint8Array, read: (reader: Reader) => T): T[] {
  try {
    const reader = new Reader(bytes);
    const all: T[] = [];
    const count = reader.count();
    if (count > NAMES_MOST) throw new ShortBytes();
    for (let left = count; left > 0; left--) all.push(read(reader));
    if (reader.pos !== reader.end) throw new ShortBytes();
    return all;
  } catch (thrown) {
    if (thrown instanceof ShortBytes)
      throw new Refusal('shelf.damaged', 'a block of names that cannot be read');
    throw thrown;
  }
}
