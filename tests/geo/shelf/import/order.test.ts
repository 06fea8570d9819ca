import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ByteStore } from '../../../../geo/shelf/import/byte-store.ts';
import { IdSorter } from '../../../../geo/shelf/import/id-sorter.ts';
import { NodeLookup } from '../../../../geo/shelf/import/node-lookup.ts';
import { LineThinner } from '../../../../geo/shelf/import/thin-line.ts';

const anyId = fc.oneof(
  fc.integer({ min: -1000, max: 100_000 }),
  fc.maxSafeInteger(),
  fc.integer({ min: 12_000_000_000, max: 12_000_100_000 }),
);

describe('in the hot loops of an import', () => {
  it('ids come in order however far apart they are', () => {
    const sorter = new IdSorter();
    fc.assert(
      fc.property(fc.uniqueArray(anyId), (ids) => {
        sorter.sort(Float64Array.from(ids), ids.length);
        const sorted = Array.from(sorter.order.subarray(0, ids.length), (i) => ids[i]!);
        expect(sorted).toEqual(ids.toSorted((a, b) => a - b));
      }),
    );
  });

  it('a node is found by its id, and what is not there is not', () => {
    fc.assert(
      fc.property(fc.uniqueArray(anyId), fc.array(anyId), (ids, others) => {
        const id = Float64Array.from(ids.toSorted((a, b) => a - b));
        const lookup = new NodeLookup();
        lookup.add({
          count: id.length,
          id,
          lat: new Float64Array(id.length),
          lon: new Float64Array(id.length),
        });
        lookup.build();
        expect(lookup.ascending).toBe(true);
        for (const one of [...id, ...others]) expect(lookup.indexOf(one)).toBe(id.indexOf(one));
      }),
    );
  });

  it('numbers are read as they were written', () => {
    const number = fc.oneof(fc.integer(), fc.integer({ min: -(2 ** 52), max: 2 ** 52 }));
    fc.assert(
      fc.property(fc.array(number), (numbers) => {
        const store = new ByteStore(16);
        for (const one of numbers) {
          store.room(16);
          store.int(one);
          store.uint(Math.abs(one));
        }
        store.at = 0;
        for (const one of numbers) {
          expect(store.readInt()).toBe(one);
          expect(store.readUint()).toBe(Math.abs(one));
        }
      }),
    );
  });

  it('a line keeps its ends and every position that its thinned course would miss', () => {
    const thinner = new LineThinner();
    const x = Float64Array.of(0, 1, 2, 3, 4);
    const y = Float64Array.of(0, 0.1, 2, 0.1, 0);
    thinner.thin(x, y, 5, 0.5);
    expect([...thinner.keep.subarray(0, 5)]).toEqual([1, 1, 1, 1, 1]);
    thinner.thin(x, Float64Array.of(0, 0.1, 0.2, 0.1, 0), 5, 0.5);
    expect([...thinner.keep.subarray(0, 5)]).toEqual([1, 0, 0, 0, 1]);
  });
});
