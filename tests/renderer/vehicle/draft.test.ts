import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type VehicleCard, vehicleCardSchema } from '../../../geo/vehicle/card.ts';
import { BLANK_CARD } from '../../../renderer/vehicle/blank-card.ts';
import { draftOf, readDraft } from '../../../renderer/vehicle/draft.ts';

const FOLDER = 'sample-routes/vehicles/';
const cards = readdirSync(FOLDER).map((name): [string, VehicleCard] => [
  name,
  vehicleCardSchema.parse(JSON.parse(readFileSync(FOLDER + name, 'utf8'))),
]);
const typed = (card: VehicleCard, key: string, text: string) => {
  const draft = draftOf(card);
  return readDraft({ ...draft, text: { ...draft.text, [key]: text } });
};

describe('a card in the form', () => {
  it.each(cards)('%s comes out as it went in', (_, card) => {
    expect(readDraft(draftOf(card)).card).toEqual(card);
  });

  it('that is new is a usable card from the first', () => {
    expect(vehicleCardSchema.safeParse(BLANK_CARD).success).toBe(true);
    expect(readDraft(draftOf(BLANK_CARD)).card).toEqual(BLANK_CARD);
  });

  it('takes feet and inches', () => {
    expect(typed(BLANK_CARD, 'heightM', '10\'3"').card?.heightM).toBeCloseTo(3.1242, 4);
  });

  it('says what is missing or wrong, and is then no card', () => {
    for (const [key, text, sentence] of [
      ['heightM', '', 'Height is missing.'],
      ['heightM', '30', 'More than 5 m is not believed.'],
      ['grossKg', '0', 'It must be more than nought.'],
      ['lengthM', '7.5', 'add up to 6.99 m, not 7.50 m'],
      ['widthMirrorsM', '2', 'Less than the body.'],
      ['rackLengthM', '0.7', ''],
    ] as const) {
      const read = typed(BLANK_CARD, key, text);
      expect(read.card).toBeUndefined();
      expect(Object.values(read.faults).join(' ')).toContain(sentence);
    }
  });
});
