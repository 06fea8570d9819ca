import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Refusal } from '../../../geo/roads/refusal.ts';
import type { Member } from '../../../geo/roads/sink.ts';
import type { BlockContent } from '../../../geo/shelf/block.ts';
import { Writer } from '../../../geo/shelf/bytes.ts';
import { decodeBlock } from '../../../geo/shelf/decode-block.ts';
import { encodeBlock } from '../../../geo/shelf/encode-block.ts';
import { decodeTags, encodeTags, encodeText } from '../../../geo/shelf/tag-bytes.ts';

const id = fc.integer({ min: -(2 ** 44), max: 2 ** 45 });
const ascendingIds = (max: number) =>
  fc.uniqueArray(id, { maxLength: max }).map((ids) => ids.sort((a, b) => a - b));
const tags = fc.dictionary(fc.string({ unit: 'binary' }), fc.string({ unit: 'binary' }), { maxKeys: 4 });
const degrees = fc.oneof(
  fc.integer({ min: -900_000_000, max: 900_000_000 }).map((units) => units / 1e7),
  fc.double({ min: -90, max: 90, noNaN: true }),
);

const member: fc.Arbitrary<Member> = fc.record({
  type: fc.constantFrom('node' as const, 'way' as const, 'relation' as const),
  id,
  role: fc.string({ maxLength: 8 }),
});

const content: fc.Arbitrary<BlockContent> = fc
  .record({
    sets: fc.array(tags, { minLength: 1, maxLength: 5 }),
    nodes: ascendingIds(12),
    places: fc.array(fc.option(fc.tuple(degrees, degrees), { freq: 5 }), { minLength: 12, maxLength: 12 }),
    ways: ascendingIds(6),
    pick: fc.array(fc.nat(), { minLength: 80, maxLength: 80 }),
    relations: ascendingIds(3),
    members: fc.array(member, { maxLength: 4 }),
  })
  .map(({ sets, nodes, places, ways, pick, relations, members }) => {
    const count = nodes.length;
    const lengths = ways.map((_, way) => (count === 0 ? 0 : pick[way]! % 9));
    const start = Uint32Array.from([0, ...lengths.map((_, i) => sum(lengths.slice(0, i + 1)))]);
    const tagged = nodes.map((_, node) => node).filter((node) => pick[node + 10]! % 2 === 0);
    return {
      sets: sets.map((set) => encodeTags(set)),
      nodes: {
        count,
        id: Float64Array.from(nodes),
        lat: Float64Array.from(nodes, (_, i) => places[i]?.[0] ?? Number.NaN),
        lon: Float64Array.from(nodes, (_, i) => places[i]?.[1] ?? Number.NaN),
        tagged: {
          node: Uint32Array.from(tagged),
          set: Uint32Array.from(tagged, (node) => pick[node]! % sets.length),
        },
      },
      ways: {
        count: ways.length,
        id: Float64Array.from(ways),
        kind: Uint8Array.from(ways, (_, way) => pick[way + 30]! % 4),
        set: Uint32Array.from(ways, (_, way) => pick[way + 40]! % sets.length),
        start,
        refs: Uint32Array.from({ length: start.at(-1)! }, (_, at) => pick[at]! % count),
      },
      relations: relations.map((relation) => ({ id: relation, set: 0, members })),
    };
  });

const NO_WAYS = {
  count: 0,
  id: new Float64Array(),
  kind: new Uint8Array(),
  set: new Uint32Array(),
  start: Uint32Array.of(0),
  refs: new Uint32Array(),
};

function sum(values: readonly number[]): number {
  return values.reduce((all, one) => all + one, 0);
}

describe('a block of the shelf', () => {
  it('gives back what was put in, places to the last bit', () => {
    fc.assert(
      fc.property(content, (block) => {
        const { sets, ...rest } = decodeBlock(encodeBlock(block));
        const read = { ...rest, sets: Array.from({ length: sets.length }, (_, set) => sets.at(set)) };
        expect(read).toEqual(block);
      }),
    );
  });

  it('takes any text in tags, in order', () => {
    fc.assert(
      fc.property(tags, (set) => {
        const read = decodeTags(encodeTags(set));
        expect(Object.entries(read)).toEqual(Object.entries(set));
      }),
    );
  });

  it('is refused, never misread without end, when damaged', () => {
    fc.assert(
      fc.property(content, fc.nat(), fc.integer({ min: 0, max: 255 }), (block, at, byte) => {
        const bytes = encodeBlock(block);
        bytes[at % bytes.length] = byte;
        try {
          decodeBlock(bytes);
        } catch (thrown) {
          expect(thrown).toBeInstanceOf(Refusal);
        }
      }),
    );
  });

  it('that claims more than its bytes can hold is refused before room is made for it', () => {
    const claims = (...numbers: readonly number[]) => {
      const out = new Writer();
      for (const number of numbers) out.uint(number);
      return out.done();
    };
    for (const bytes of [claims(2 ** 32), claims(0, 2 ** 32), claims(0, 0, 0, 0, 0, 2 ** 32)])
      expect(() => decodeBlock(bytes)).toThrow(Refusal);
    // two nodes want four bytes at least
    expect(() => decodeBlock(claims(0, 2, 1, 1))).toThrow(Refusal);
  });

  it('with bytes behind it, places of no known kind or more members than any map has is refused', () => {
    const written = (...numbers: readonly number[]) => {
      const out = new Writer();
      for (const number of numbers) out.uint(number);
      return out.done();
    };
    // no sets, nodes, lacking places; kind of places; no tagged nodes, ways, relations
    const [empty, strange] = [written(0, 0, 0, 0, 0, 0, 0), written(0, 0, 0, 9, 0, 0, 0)];
    expect(decodeBlock(empty).nodes.count).toBe(0);
    expect(() => decodeBlock(strange)).toThrow(Refusal);
    expect(() => decodeBlock(Uint8Array.from([...empty, 0]))).toThrow(Refusal);
    const room = new Uint8Array(4_000_000);
    const crowd = written(0, 0, 0, 0, 0, 0, 1_200_000);
    room.set(crowd);
    expect(() => decodeBlock(room)).toThrow(Refusal);
    // a common word that is none
    expect(() => decodeTags(written(2 * 100_000, 2))).toThrow();
  });

  it('with a node that is not on Earth is refused', () => {
    const nodesAt = (lat: number, lon: number) => ({
      count: 1,
      id: Float64Array.of(1),
      lat: Float64Array.of(lat),
      lon: Float64Array.of(lon),
      tagged: { node: new Uint32Array(), set: new Uint32Array() },
    });
    const blockAt = (lat: number, lon: number) =>
      encodeBlock({ sets: [], nodes: nodesAt(lat, lon), ways: NO_WAYS, relations: [] });
    for (const [lat, lon] of [
      [90, 180],
      [-90, -180],
    ] as const)
      expect(decodeBlock(blockAt(lat, lon)).nodes.count).toBe(1);
    for (const [lat, lon] of [
      [90.0000001, 0],
      [0, 180.0000001],
      [1e300, 0],
    ] as const)
      expect(() => decodeBlock(blockAt(lat, lon))).toThrow(Refusal);
  });

  it('whose tags cannot be read is refused as a whole', () => {
    const whole = encodeTags({ highway: 'residential', name: 'Am Bach' });
    const nodes = {
      count: 0,
      id: new Float64Array(),
      lat: new Float64Array(),
      lon: new Float64Array(),
      tagged: { node: new Uint32Array(), set: new Uint32Array() },
    };
    const blockOf = (set: Uint8Array) => encodeBlock({ sets: [set], nodes, ways: NO_WAYS, relations: [] });
    expect(decodeBlock(blockOf(whole)).sets).toHaveLength(1);
    expect(() => decodeBlock(blockOf(whole.subarray(0, -1)))).toThrow(Refusal);
    expect(() => decodeBlock(blockOf(encodeText('highway')))).toThrow(Refusal);
    expect(() => decodeBlock(blockOf(Uint8Array.of(0xfe, 0x7f, 0xfe, 0x7f)))).toThrow(Refusal);
  });

  it('keeps texts of any length', () => {
    for (const length of [0, 1, 64, 65, 4096, 4097, 8192, 20_001]) {
      const text = 'ä'.repeat(length);
      expect(decodeTags(encodeTags({ note: text }))['note']).toBe(text);
    }
  });

  it('is refused when cut short', () => {
    fc.assert(
      fc.property(content, fc.nat(), (block, at) => {
        const bytes = encodeBlock(block);
        expect(() => decodeBlock(bytes.subarray(0, at % bytes.length))).toThrow(Refusal);
      }),
    );
  });
});
