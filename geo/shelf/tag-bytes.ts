import type { Tags } from '../roads/roads.ts';
import { Reader, ShortBytes, Writer } from './bytes.ts';
import { COMMON_WORDS } from './common-words.ts';

/** Written anew each time: what is handed out is a copy. */
const scratch = new Writer();

const CODES = new Map(COMMON_WORDS.map((word, code) => [word, code]));

/**
 * Writes one tag set: key, value, key, value, … Each is a varint, twice a code of COMMON_WORDS, or twice a length plus
 * one and that many UTF-16 units, a varint each. Any text survives, sound or not.
 */
export function writeTags(tags: Tags, out: Writer): void {
  for (const key in tags) {
    writeText(key, out);
    writeText(tags[key]!, out);
  }
}

/** One tag set as bytes of its own, for `decodeTags`. The same tags in the same order give the same bytes. */
export function encodeTags(tags: Tags): Uint8Array<ArrayBuffer> {
  scratch.length = 0;
  writeTags(tags, scratch);
  return scratch.done();
}

/**
 * The tags of one set's bytes, as an object without a prototype: nearly every one has keys of its own, and those are
 * looked up many times as fast in such an object. Throws ShortBytes where they are damaged.
 */
export function decodeTags(bytes: Uint8Array, from = 0, to = bytes.length): Tags {
  const reader = new Reader(bytes, from, to);
  const tags: Record<string, string> = Object.create(null);
  while (reader.pos < to) {
    const key = readText(reader);
    tags[key] = readText(reader);
  }
  return tags;
}

/** Whether any key of one set's bytes fits; no value is read. Throws ShortBytes where they are damaged. */
export function hasKeyIn(bytes: Uint8Array, fits: (key: string) => boolean): boolean {
  const reader = new Reader(bytes);
  while (reader.pos < bytes.length) {
    if (fits(readText(reader))) return true;
    skipText(reader);
  }
  return false;
}

/** Nothing real has as many; nor is an object with more quickly made. */
const TAGS_MOST = 1 << 16;

/** Passes one set that ends there. Throws ShortBytes where `decodeTags` would, or where it is beyond belief. */
export function skipTags(reader: Reader, to: number): void {
  let texts = 0;
  for (; reader.pos < to; texts++) skipText(reader);
  if (reader.pos !== to || texts % 2 !== 0 || texts > 2 * TAGS_MOST) throw new ShortBytes();
}

function skipText(reader: Reader): void {
  const lead = reader.uint();
  if (lead % 2 === 0) {
    if (lead / 2 >= COMMON_WORDS.length) throw new ShortBytes();
  } else for (let left = (lead - 1) / 2; left > 0; left--) reader.uint();
}

/** Writes one text as in a tag set. */
export function writeText(text: string, out: Writer): void {
  const code = CODES.get(text);
  if (code !== undefined) {
    out.uint(2 * code);
    return;
  }
  out.uint(2 * text.length + 1);
  for (let i = 0; i < text.length; i++) out.uint(text.charCodeAt(i));
}

/** One text as in a tag set, as bytes of its own. */
export function encodeText(text: string): Uint8Array<ArrayBuffer> {
  scratch.length = 0;
  writeText(text, scratch);
  return scratch.done();
}

/** Up to here unit by unit is fastest; a long text put together so would take many times its room. */
const SHORT_TEXT = 64;
const PIECE = 4096;

/** Reads one text as in a tag set. */
export function readText(reader: Reader): string {
  const lead = reader.uint();
  if (lead % 2 === 0) {
    const word = COMMON_WORDS[lead / 2];
    if (word === undefined) throw new ShortBytes();
    return word;
  }
  const length = (lead - 1) / 2;
  if (length > reader.end - reader.pos) throw new ShortBytes();
  let text = '';
  if (length <= SHORT_TEXT) for (let i = 0; i < length; i++) text += String.fromCharCode(reader.uint());
  else
    for (let left = length; left > 0; left -= PIECE) {
      const units = Uint16Array.from({ length: Math.min(PIECE, left) }, () => reader.uint());
      text += Reflect.apply(String.fromCharCode, undefined, units);
    }
  return text;
}
