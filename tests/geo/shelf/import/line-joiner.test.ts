import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { WAY_KIND } from '../../../../geo/roads/roads.ts';
import { ByteStore } from '../../../../geo/shelf/import/byte-store.ts';
import { chooseByTags, WAY_RULE } from '../../../../geo/shelf/import/choose-by-tags.ts';
import { newTexts } from '../../../../geo/shelf/import/chosen-texts.ts';
import { LineJoiner } from '../../../../geo/shelf/import/line-joiner.ts';
import { WayRecord, writeFinePlaces, writeWay } from '../../../../geo/shelf/import/way-record.ts';
import { decodeTags } from '../../../../geo/shelf/tag-bytes.ts';

interface Road {
  readonly id: number;
  readonly refs: readonly number[];
  readonly highway: string;
}

/** Roads as they wait to be joined; node n lies at n thousandths of a degree. */
function linesOf(roads: readonly Road[]) {
  const out = new ByteStore();
  for (const { id, refs, highway } of roads) {
    const texts = newTexts();
    const choice = chooseByTags({ highway, name: `Road ${id}`, maxspeed: '50' }, 0, WAY_RULE, texts)!;
    const way = new ByteStore();
    writeWay({ id, choice, memberships: [], texts, refs: Float64Array.from(refs), count: refs.length }, way);
    way.at = 0;
    const record = new WayRecord();
    record.read(way);
    record.skipRefs(way);
    const refsTo = way.at;
    record.readTail(way);
    record.writeDrawn(way, refsTo, out);
    const places = Float64Array.from(refs, (ref) => ref / 1000);
    writeFinePlaces({ count: refs.length, lat: places, lon: places }, out);
  }
  return out;
}

function joined(roads: readonly Road[]) {
  const store = linesOf(roads);
  const joiner = new LineJoiner();
  joiner.read(store, store.at);
  const all: { id: number; kind: number; refs: number[]; lats: number[]; tags: object }[] = [];
  joiner.join(({ id, kind, ids, located, sets, setFrom, setTo }) =>
    all.push({
      id,
      kind,
      refs: [...ids.subarray(0, located.count)],
      lats: [...located.lat.subarray(0, located.count)],
      tags: decodeTags(sets, setFrom, setTo),
    }),
  );
  return all;
}

describe('lines drawn when zoomed out', () => {
  it('pieces of one road become one line, whichever way each runs and whatever they are called', () => {
    expect(
      joined([
        { id: 7, refs: [3, 4, 5], highway: 'primary' },
        { id: 5, refs: [3, 2, 1], highway: 'primary' },
        { id: 9, refs: [6, 5], highway: 'primary' },
      ]),
    ).toEqual([
      {
        id: 5,
        kind: WAY_KIND.road,
        refs: [6, 5, 4, 3, 2, 1],
        lats: [0.006, 0.005, 0.004, 0.003, 0.002, 0.001],
        tags: { highway: 'primary' },
      },
    ]);
  });

  it('a road of another kind is no part of it', () => {
    const lines = joined([
      { id: 1, refs: [1, 2], highway: 'primary' },
      { id: 2, refs: [2, 3], highway: 'secondary' },
    ]);
    expect(lines.map(({ refs }) => refs)).toEqual([
      [1, 2],
      [2, 3],
    ]);
  });

  it('every stretch of every road is in one line, whatever the order they come in', () => {
    const road = fc.record({
      refs: fc.array(fc.integer({ min: 1, max: 12 }), { minLength: 2, maxLength: 5 }),
      highway: fc.constantFrom('primary', 'trunk'),
    });
    fc.assert(
      fc.property(fc.array(road, { maxLength: 14 }), fc.integer(), (drawn, turn) => {
        const roads = drawn.map((one, i) => ({ ...one, id: 100 + i }));
        const lines = joined(roads);
        const stretches = (all: readonly { readonly refs: readonly number[] }[]) =>
          all
            .flatMap(({ refs }) =>
              refs.slice(1).map((ref, i) => [ref, refs[i]!].sort((a, b) => a - b).join()),
            )
            .sort();
        expect(stretches(lines)).toEqual(stretches(roads));
        expect(lines.every(({ refs, lats }) => refs.every((ref, i) => ref / 1000 === lats[i]))).toBe(true);
        const shift = roads.length > 0 ? Math.abs(turn) % roads.length : 0;
        expect(joined([...roads.slice(shift), ...roads.slice(0, shift)])).toEqual(lines);
      }),
    );
  });
});
