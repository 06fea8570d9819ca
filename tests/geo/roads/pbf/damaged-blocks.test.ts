import { describe, expect, it } from 'vitest';
import { readBlobHeader, unpackBlob } from '../../../../geo/roads/pbf/blob.ts';
import { readBlock } from '../../../../geo/roads/pbf/block.ts';
import { kindsIn } from '../../../../geo/roads/pbf/kinds.ts';
import { Refusal } from '../../../../geo/roads/refusal.ts';
import { bytesOf, field, number } from '../../../support/pbf-file.ts';

// Field numbers are those of the format: https://wiki.openstreetmap.org/wiki/PBF_Format

const raw = (...bytes: number[]) => Uint8Array.from(bytes);
const letters = (text: string) => new TextEncoder().encode(text);
const unpack = {
  inflate: (bytes: Uint8Array) => bytes,
  text: (bytes: Uint8Array) => new TextDecoder().decode(bytes),
};
/** What a damaged piece is refused with; 'read' where it is none. */
function said(read: () => unknown): string {
  try {
    read();
    return 'read';
  } catch (thrown) {
    if (!(thrown instanceof Refusal)) throw thrown;
    return thrown.message;
  }
}

const LARGE = [0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0x7f];
const TEXTS = field(1, bytesOf([field(1, raw()), field(1, letters('highway')), field(1, letters('stop'))]));

describe('a block of a map that is no block', () => {
  it('is refused where it holds too much, nothing, or other than it says', () => {
    const over = 33 * 1024 * 1024;
    const blob = (...parts: Uint8Array[]) => said(() => unpackBlob(bytesOf(parts), unpack));
    expect(said(() => unpackBlob(field(1, new Uint8Array(over)), unpack))).toContain(
      "over the format's 32 MB",
    );
    expect(blob(number(2, 5))).toContain('without content');
    expect(blob(field(3, raw(1, 2)))).toContain('size is missing');
    expect(blob(number(2, over), field(3, raw(1, 2)))).toContain('over 32 MB');
    expect(blob(number(2, 5), field(3, raw(1, 2)))).toContain('of another size than it says');
    expect(blob(number(2, 2), field(3, raw(1, 2)))).toBe('read');
    const header = (...parts: Uint8Array[]) => said(() => readBlobHeader(bytesOf(parts), unpack));
    const data = field(1, letters('OSMData'));
    expect(header(data)).toContain('said to hold nothing');
    expect(header(data, number(3, over))).toContain(`${over} bytes`);
    expect(header(data, number(3, 7))).toBe('read');
  });
});

describe('a block of elements', () => {
  const block = (...parts: Uint8Array[]) =>
    said(() => readBlock(bytesOf(parts), unpack, { nodes: () => {}, way: () => {} }));
  const dense = (...parts: Uint8Array[]) => block(TEXTS, field(2, field(2, bytesOf(parts))));
  const plain = (...parts: Uint8Array[]) => block(TEXTS, field(2, field(1, bytesOf(parts))));
  const two = [field(1, raw(2, 2)), field(8, raw(2, 2)), field(9, raw(2, 2))];

  it('needs texts, and places that are of some size', () => {
    expect(block()).toContain('without texts');
    expect(block(TEXTS, number(17, 0))).toContain('coordinates of no size');
    // of offsets of its places there are few, and they are read
    expect(block(TEXTS, number(19, 100), number(20, 100))).toBe('read');
    expect(block(TEXTS, field(17, raw()))).toContain('field 17 of the wrong type');
    expect(block(TEXTS, raw(0x88, 0x01, ...LARGE))).toContain('beyond 2^53');
  });

  it('of many nodes tells as much of each', () => {
    expect(dense(...two)).toBe('read');
    expect(dense(...two, number(3, 1), field(5, bytesOf([number(1, 1), field(6, raw(1, 1))])))).toBe('read');
    expect(dense(...two, field(5, field(6, raw(1))))).toContain('too few marks');
    expect(dense(...two, field(10, raw(1, 2, 0)))).toContain('tags cut off');
    expect(dense(...two, field(10, raw(1, 2, 0, 0, 0)))).toContain('more node tags than nodes');
    expect(dense(field(1, raw(2, 2)), field(8, raw(2)), field(9, raw(2)))).toContain('without places');
  });

  it('holds numbers that end, and that a computer can count to', () => {
    expect(dense(field(1, raw(0x80)))).toContain('cut off');
    expect(dense(field(1, raw(0x80, 0x80, 0x80, 0x80)))).toContain('cut off or too long');
    expect(dense(field(1, raw(...LARGE)))).toContain('beyond 2^53');
    expect(plain(bytesOf([raw(1 << 3), raw(...LARGE)]))).toContain('beyond 2^53');
    expect(plain(field(1, raw(2)))).toContain('field 1 of the wrong type');
  });

  it('of single nodes has an id and a value to each key', () => {
    const place = [number(8, 2), number(9, 2)];
    expect(plain(number(1, 2), ...place)).toBe('read');
    expect(plain(number(1, 2), field(4, number(1, 1)), ...place)).toBe('read');
    expect(plain(...place)).toContain('a node without an id');
    expect(plain(number(1, 2), field(2, raw(1)), ...place)).toContain('node 1 with a key and no value');
  });

  it('may hold an empty group, which tells no kind', () => {
    const kinds = kindsIn(bytesOf([TEXTS, field(2, raw()), field(2, field(3, raw()))]));
    expect(kinds).toEqual({ nodes: false, ways: true, relations: false });
  });
});
