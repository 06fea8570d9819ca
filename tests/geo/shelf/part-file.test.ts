import { crc32 } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Refusal } from '../../../geo/roads/refusal.ts';
import { Writer } from '../../../geo/shelf/bytes.ts';
import { type Directory, decodeDirectory, encodeDirectory, findBlock } from '../../../geo/shelf/directory.ts';
import {
  compareNames,
  decodeNameKeys,
  decodeNames,
  encodeNameKeys,
  encodeNames,
  foldName,
  NAME_KINDS,
} from '../../../geo/shelf/names.ts';
import { decodeTrailer, encodeTrailer, TRAILER_BYTES } from '../../../geo/shelf/part-file.ts';

const entry = fc.record({
  layer: fc.integer({ min: 0, max: 7 }),
  tile: fc.nat({ max: 4 ** 13 }),
  offset: fc.nat({ max: 2 ** 40 }),
  length: fc.nat({ max: 2 ** 26 }),
  crc: fc.nat({ max: 2 ** 32 - 1 }),
});
const directory: fc.Arbitrary<Directory> = fc
  .uniqueArray(entry, { selector: ({ layer, tile }) => `${layer}/${tile}`, maxLength: 30 })
  .map((entries) => {
    const sorted = entries.sort((a, b) => a.layer - b.layer || a.tile - b.tile);
    return {
      count: sorted.length,
      layer: Uint8Array.from(sorted, (one) => one.layer),
      tile: Float64Array.from(sorted, (one) => one.tile),
      offset: Float64Array.from(sorted, (one) => one.offset),
      length: Uint32Array.from(sorted, (one) => one.length),
      crc: Uint32Array.from(sorted, (one) => one.crc),
    };
  });

describe('the directory of a part', () => {
  it('gives back every block, found by layer and tile, and no other', () => {
    fc.assert(
      fc.property(directory, entry, (whole, other) => {
        const read = decodeDirectory(encodeDirectory(whole));
        expect(read).toEqual(whole);
        for (let i = 0; i < whole.count; i++)
          expect(findBlock(read, whole.layer[i]!, whole.tile[i]!)).toBe(i);
        const there = whole.layer.findIndex(
          (layer, i) => layer === other.layer && whole.tile[i] === other.tile,
        );
        expect(findBlock(read, other.layer, other.tile)).toBe(there);
      }),
    );
  });

  it('is refused when cut short', () => {
    fc.assert(
      fc.property(directory, fc.nat(), (whole, at) => {
        const bytes = encodeDirectory(whole);
        expect(() => decodeDirectory(bytes.subarray(0, at % bytes.length))).toThrow(Refusal);
      }),
    );
  });
});

describe('the end of a part', () => {
  const trailer = {
    choiceVersion: 1,
    directory: { offset: 5000, length: 300, crc: 7 },
    meta: { offset: 5300, length: 100, crc: 0xffffffff },
    fileBytes: 5400 + TRAILER_BYTES,
  };
  const crc = (bytes: Uint8Array) => crc32(bytes);

  it('says where the rest lies', () => {
    const bytes = encodeTrailer(trailer, crc);
    expect(bytes.length).toBe(TRAILER_BYTES);
    expect(decodeTrailer(bytes, trailer.fileBytes, crc)).toEqual(trailer);
  });

  it('is refused with any byte changed, and on a file of another length', () => {
    for (let at = 0; at < TRAILER_BYTES; at++) {
      const bytes = encodeTrailer(trailer, crc);
      bytes[at]! ^= 0x10;
      expect(() => decodeTrailer(bytes, trailer.fileBytes, crc)).toThrow(Refusal);
    }
    expect(() => decodeTrailer(encodeTrailer(trailer, crc), trailer.fileBytes + 1, crc)).toThrow(Refusal);
  });

  it('of another format is told apart from damage, and one that points outside of its file is damaged', () => {
    const changed = (change: (view: DataView) => void) => {
      const bytes = encodeTrailer(trailer, crc);
      const view = new DataView(bytes.buffer);
      change(view);
      view.setUint32(64, crc(bytes.subarray(0, 64)), true);
      return () => decodeTrailer(bytes, trailer.fileBytes, crc);
    };
    expect(changed((view) => view.setUint32(8, 999, true))).toThrow(
      'it is of format 999, and this program reads',
    );
    for (const at of [16, 24, 32, 40])
      for (const value of [-1, 1e12, Number.NaN])
        expect(changed((view) => view.setFloat64(at, value, true))).toThrow('its end points outside of it');
  });
});

describe('the name index', () => {
  it('looks past case, accents and punctuation', () => {
    expect(foldName('Große Straße')).toBe('grosse strasse');
    expect(foldName("  St. Mary's-Élan ")).toBe('st mary s elan');
  });

  it('gives back its entries', () => {
    const name = fc.record({
      name: fc.string({ unit: 'grapheme' }),
      kind: fc.constantFrom(...NAME_KINDS),
      what: fc.constantFrom('town', 'residential', 'camp_site'),
      lat: fc.integer({ min: -900_000_000, max: 900_000_000 }).map((units) => units / 1e7),
      lon: fc.integer({ min: -1_800_000_000, max: 1_800_000_000 }).map((units) => units / 1e7),
    });
    fc.assert(
      fc.property(fc.array(name, { maxLength: 20 }), (entries) => {
        const sorted = entries.sort(compareNames);
        expect(decodeNames(encodeNames(sorted))).toEqual(sorted);
      }),
    );
  });
});

describe('names and directories whose bytes are no such thing', () => {
  const written = (...numbers: readonly number[]) => {
    const out = new Writer();
    for (const number of numbers) out.uint(number);
    return out.done();
  };

  it('are refused: another kind of name, bytes behind the last, blocks before the first, more than any has', () => {
    const town = { name: 'Weir', kind: 'place', what: 'town', lat: 52, lon: 7 } as const;
    const bytes = encodeNames([town]);
    expect(decodeNames(bytes)).toEqual([town]);
    expect(() => decodeNames(Uint8Array.from([...bytes, 0]))).toThrow(Refusal);
    const kindAt = bytes.findIndex((byte, i) => i > 5 && byte === NAME_KINDS.indexOf('place'));
    expect(() => decodeNames(bytes.with(kindAt, 99))).toThrow(Refusal);
    const many = new Uint8Array(2_200_000);
    many.set(written(1_100_000));
    expect(() => decodeNames(many)).toThrow(Refusal);
    expect(() => decodeNameKeys(written(1))).toThrow(Refusal);
    expect(decodeNameKeys(encodeNameKeys(['weir', 'wharf']))).toEqual(['weir', 'wharf']);
    // a block that lies before the file begins: zigzag −1 is 1
    expect(() => decodeDirectory(written(1, 0, 0, 1, 0, 0))).toThrow(Refusal);
    expect(() => decodeDirectory(Uint8Array.from([...written(1, 0, 0, 0, 0, 0), 0]))).toThrow(Refusal);
  });

  it('two places of one name and kind are told apart by where they lie', () => {
    const at = (lat: number, lon: number) =>
      ({ name: 'Weir', kind: 'place', what: 'town', lat, lon }) as const;
    const sorted = [at(52, 8), at(52, 7), at(51, 9)].sort(compareNames);
    expect(sorted.map(({ lat, lon }) => [lat, lon])).toEqual([
      [51, 9],
      [52, 7],
      [52, 8],
    ]);
  });
});
