import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../../geo/roads/roads.ts';
import type { PackedTags } from '../../../../geo/roads/sink.ts';
import { chooseByTags, NODE_RULE, WAY_RULE } from '../../../../geo/shelf/import/choose-by-tags.ts';
import { type ChosenTexts, newTexts } from '../../../../geo/shelf/import/chosen-texts.ts';
import { PackedChooser } from '../../../../geo/shelf/import/packed-choice.ts';

it('a place to fill up that is something else besides is a service point on the shelf as well', () => {
  expect(chooseByTags({ amenity: 'parking;fuel' }, 0, NODE_RULE, newTexts())?.service).toBe(true);
});

const KEYS = [
  'highway',
  'name',
  'ref',
  'building',
  'natural',
  'place',
  'amenity',
  'railway',
  'area',
  'note',
  'tunnel',
];
const VALUES = [
  'residential',
  'motorway',
  'yes',
  'no',
  'water',
  'town',
  'fuel',
  'station',
  'Straße 7',
  '北',
  'A 1',
  '',
];
const tagSets = fc.array(
  fc.dictionary(fc.constantFrom(...KEYS), fc.constantFrom(...VALUES), { noNullPrototype: true }),
  { minLength: 1, maxLength: 30 },
);

/** The tag sets of one block, by numbers in its table of texts. */
function packedOf(sets: readonly Tags[]): PackedTags[] {
  const texts = [...new Set(sets.flatMap((tags) => Object.entries(tags).flat()))];
  const table = {
    count: texts.length,
    get: (index: number) => texts[index]!,
    bytesOf: (index: number) => new TextEncoder().encode(texts[index]),
  };
  return sets.map((tags) => ({
    texts: table,
    keys: Float64Array.from(Object.keys(tags), (key) => texts.indexOf(key)),
    values: Float64Array.from(Object.values(tags), (value) => texts.indexOf(value)),
    count: Object.keys(tags).length,
  }));
}

function written({ tags, drawn, name }: ChosenTexts) {
  return [tags, drawn, name].map((store) => [...store.bytes.subarray(0, store.at)]);
}

describe('what is chosen by the numbers of texts', () => {
  it('is what is chosen by the texts themselves, block after block', () => {
    const ways = new PackedChooser(WAY_RULE);
    const nodes = new PackedChooser(NODE_RULE);
    fc.assert(
      fc.property(tagSets, fc.integer({ min: 0, max: 3 }), (sets, as) => {
        for (const [i, packed] of packedOf(sets).entries())
          for (const [chooser, rule] of [
            [ways, WAY_RULE],
            [nodes, NODE_RULE],
          ] as const) {
            const byNumbers = newTexts();
            const byTexts = newTexts();
            const chosen = chooser.choose(packed, as, byNumbers);
            expect(chosen).toEqual(
              chooseByTags<NonNullable<typeof chosen>>(sets[i]!, as, rule as never, byTexts),
            );
            if (chosen !== undefined) expect(written(byNumbers)).toEqual(written(byTexts));
          }
      }),
    );
  });

  it('is refused for a number outside the table', () => {
    const [packed] = packedOf([{ highway: 'residential' }]);
    const beyond = {
      ...packed!,
      values: Float64Array.of(7),
      texts: { ...packed!.texts, get: refuse, bytesOf: refuse },
    };
    expect(() => new PackedChooser(WAY_RULE).choose(beyond, 0, newTexts())).toThrow('outside');
  });
});

function refuse(): never {
  throw new Error('outside the table');
}
