import type { TextTable } from '../../roads/sink.ts';
import { COMMON_WORDS } from '../common-words.ts';
import { ByteStore } from './byte-store.ts';

/** Words of the format's list by their bytes: found without making texts of them. */
const SLOTS = 4096;
const WORDS = COMMON_WORDS.map((word) => Uint8Array.from(word, (char) => char.charCodeAt(0)));
const SLOT_OF = placed(WORDS);

function placed(words: readonly Uint8Array[]): Int16Array {
  const slots = new Int16Array(SLOTS).fill(-1);
  for (const [code, word] of words.entries()) {
    let slot = hash(word) & (SLOTS - 1);
    while (slots[slot]! >= 0) slot = (slot + 1) & (SLOTS - 1);
    slots[slot] = code;
  }
  return slots;
}

function hash(bytes: Uint8Array): number {
  let mixed = bytes.length;
  for (let i = 0; i < bytes.length; i++) mixed = Math.imul(mixed ^ bytes[i]!, 0x01000193);
  return mixed ^ (mixed >>> 13);
}

function codeOf(bytes: Uint8Array): number {
  for (let slot = hash(bytes) & (SLOTS - 1); ; slot = (slot + 1) & (SLOTS - 1)) {
    const code = SLOT_OF[slot]!;
    if (code < 0 || isSame(WORDS[code]!, bytes)) return code;
  }
}

function isSame(a: Uint8Array, b: Uint8Array): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

/** Plain ASCII, whose units are its bytes, without what no text of a map can hold. */
function isPlain(bytes: Uint8Array): boolean {
  for (let i = 0; i < bytes.length; i++) {
    const byte = bytes[i]!;
    if (byte >= 0x80 || (byte < 0x20 && byte !== 0x09 && byte !== 0x0a && byte !== 0x0d)) return false;
  }
  return true;
}

/** The texts of one block as tag sets write them, each made once. */
export class TextBytes {
  readonly store = new ByteStore(64 * 1024);
  private lastCount = 0;
  private from = new Int32Array(0);
  private to = new Int32Array(0);

  /** Begins a block. */
  start(count: number): void {
    if (this.from.length < count) {
      this.from = new Int32Array(count * 2);
      this.to = new Int32Array(count * 2);
    }
    // beyond its table nothing is known: who asks there is refused
    this.from.fill(-1, 0, Math.max(count, this.lastCount));
    this.lastCount = count;
    this.store.at = 0;
  }

  /** Appends a text to a tag set. Throws a Refusal where it is none. */
  append(texts: TextTable, index: number, out: ByteStore): void {
    if (!(this.from[index]! >= 0)) this.make(texts, index);
    out.append(this.store.bytes, this.from[index]!, this.to[index]!);
  }

  private make(texts: TextTable, index: number): void {
    const bytes = texts.bytesOf(index);
    const { store } = this;
    this.from[index] = store.at;
    if (isPlain(bytes)) {
      store.room(8);
      const code = codeOf(bytes);
      if (code >= 0) store.uint(2 * code);
      else {
        store.uint(2 * bytes.length + 1);
        store.append(bytes);
      }
    } else writeUnits(texts.get(index), store);
    this.to[index] = store.at;
  }
}

/** As `writeText` of the codec writes a text that is no common word. */
function writeUnits(text: string, store: ByteStore): void {
  store.room(8 + text.length * 3);
  store.uint(2 * text.length + 1);
  for (let i = 0; i < text.length; i++) store.uint(text.charCodeAt(i));
}
