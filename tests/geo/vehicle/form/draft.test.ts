import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { CardFigure } from '../../../../geo/vehicle/bounds.ts';
import { type VehicleCard, vehicleCardSchema } from '../../../../geo/vehicle/card.ts';
import { draftOf, EMPTY_DRAFT } from '../../../../geo/vehicle/form/draft.ts';
import { FIELDS } from '../../../../geo/vehicle/form/fields.ts';
import { readDraft } from '../../../../geo/vehicle/form/read-draft.ts';

/** A usual coach-built on a 3.5 t chassis. */
const USUAL: VehicleCard = {
  format: 'lanegauge.vehicle',
  version: 1,
  name: 'Usual',
  heightM: 3,
  widthM: 2.3,
  widthMirrorsM: 2.8,
  lengthM: 6.99,
  wheelbaseM: 3.8,
  frontOverhangM: 0.95,
  rearOverhangM: 2.24,
  grossKg: 3500,
  axleKg: { front: 1850, rear: 2000 },
};

const FOLDER = 'sample-routes/vehicles/';
const cards = readdirSync(FOLDER).map((name): [string, VehicleCard] => [
  name,
  vehicleCardSchema.parse(JSON.parse(readFileSync(FOLDER + name, 'utf8'))),
]);
const typed = (card: VehicleCard, key: string, text: string) => {
  const draft = draftOf(card, 'metric');
  return readDraft({ ...draft, text: { ...draft.text, [key]: text } });
};

const RACK = { lengthM: 0.7, widthM: 2, fitted: false };
const ORDER = { frontKg: 1500, rearKg: 1500, includesDriver: true, includesFreshWater: true };
/** Whether the schema itself takes the figure, whatever it says of the others. */
function figureTaken(key: CardFigure, value: number): boolean {
  const [path, data] = placed(key, value);
  const parsed = vehicleCardSchema.safeParse({ ...USUAL, ...data });
  const faults = parsed.error?.issues.filter(({ code }) => code === 'too_small' || code === 'too_big') ?? [];
  return !faults.some((issue) => issue.path.join('.') === path);
}
function placed(key: CardFigure, value: number): [string, object] {
  switch (key) {
    case 'rackLengthM':
      return ['rack.lengthM', { rack: { ...RACK, lengthM: value } }];
    case 'rackWidthM':
      return ['rack.widthM', { rack: { ...RACK, widthM: value } }];
    case 'rackLimitKg':
      return ['rack.limitKg', { rack: { ...RACK, limitKg: value } }];
    case 'axleFrontKg':
      return ['axleKg.front', { axleKg: { front: value, rear: 2000 } }];
    case 'axleRearKg':
      return ['axleKg.rear', { axleKg: { front: 1850, rear: value } }];
    case 'emptyFrontKg':
      return ['runningOrder.frontKg', { runningOrder: { ...ORDER, frontKg: value } }];
    case 'emptyRearKg':
      return ['runningOrder.rearKg', { runningOrder: { ...ORDER, rearKg: value } }];
    default:
      return [key, { [key]: value }];
  }
}

describe('a card in the form', () => {
  it.each(cards)('%s comes out as it went in', (_, card) => {
    expect(readDraft(draftOf(card, 'metric')).card).toEqual(card);
  });

  it('that is new is empty, and no card before its sizes and plates are in', () => {
    const { card, figures, faults } = readDraft(EMPTY_DRAFT);
    expect(card).toBeUndefined();
    expect(figures).toEqual({});
    const wanted = FIELDS.filter(({ optional }) => !optional).map(({ key }) => key);
    expect(Object.keys(faults).sort()).toEqual([...wanted, 'name'].sort());
  });

  it('takes feet and inches', () => {
    expect(typed(USUAL, 'heightM', '10\'3"').card?.heightM).toBeCloseTo(3.1242, 4);
  });

  it('believes just what the schema believes of each figure alone', () => {
    for (const { key, least, most, unit } of FIELDS)
      for (const [value, ok] of [
        [least - 0.01, false],
        [least, true],
        [most, true],
        [most + 0.01, false],
      ] as const) {
        if (value < 0) continue;
        const fault = typed(USUAL, key, `${value} ${unit}`).faults[key] ?? '';
        expect(!fault.includes('is not believed'), `${key} ${value}`).toBe(ok);
        expect(figureTaken(key, value), `${key} ${value}`).toBe(ok);
      }
  });

  it('comes out with three decimals as it went in, whatever the figure', () => {
    for (const { key, unit, least, most } of FIELDS) {
      if (unit !== 'kg') continue;
      for (const value of [least + 0.125, least + 12.125, least + 150.375, most - 0.625])
        if (value <= most)
          expect(typed(USUAL, key, String(value)).figures[key], `${key} ${value}`).toBe(value);
    }
  });

  it('takes no overhang at all for nought', () => {
    const draft = draftOf({ ...USUAL, frontOverhangM: 0, lengthM: 6.04 }, 'metric');
    expect(readDraft(draft).card?.frontOverhangM).toBe(0);
  });

  it('with a fitted rack of no length is no card', () => {
    const read = readDraft({ ...draftOf(USUAL, 'metric'), rackFitted: true });
    expect(read.card).toBeUndefined();
    expect(read.faults.rackLengthM).toContain('needs its length');
  });

  it('says what is missing or wrong, and is then no card', () => {
    for (const [key, text, sentence] of [
      ['heightM', '', 'Height is missing.'],
      ['heightM', '30', 'More than 5 m is not believed: write metres, such as 2.74.'],
      ['lengthM', '7ft 6', 'Read as 2.29 m. Less than 2.5 m is not believed: write metres, such as 7.07.'],
      ['heightM', '0.3', 'Less than 1.5 m is not believed: write metres, such as 2.74.'],
      ['grossKg', '0', 'Less than 500 kg is not believed: write kilograms, such as 5480.'],
      ['lengthM', '7.5', 'add up to 6.99 m, not 7.50 m'],
      ['widthMirrorsM', '2', 'Less than the body.'],
      ['turningCircleM', '7', 'not its radius'],
      ['turningCircleWallM', '8.5', 'not its radius'],
      ['rackLengthM', '0.7', ''],
    ] as const) {
      const read = typed(USUAL, key, text);
      expect(read.card).toBeUndefined();
      expect(Object.values(read.faults).join(' ')).toContain(sentence);
    }
  });

  it('a length typed in feet and inches stands there again when the card is opened', () => {
    const text = { ...draftOf(USUAL, 'metric').text, rearOverhangM: '', lengthM: `23'7"` };
    const parts = { frontOverhangM: '3-1', wheelbaseM: `12'6"`, rearOverhangM: `8' 0"` };
    const { card } = readDraft({ ...draftOf(USUAL, 'metric'), text: { ...text, ...parts } });
    expect(card && draftOf(card, 'both').text).toMatchObject({
      lengthM: `23'7"`,
      wheelbaseM: `12'6"`,
      frontOverhangM: `3'1"`,
    });
  });

  it('3050 in a field of metres asks for 3.05 m', () => {
    const draft = draftOf(USUAL, 'metric');
    const read = readDraft({ ...draft, text: { ...draft.text, heightM: '3050' } });
    expect(read.meant.heightM).toEqual([{ text: '3.05', says: '3.05 m', value: 3.05 }]);
    expect(readDraft({ ...draft, text: { ...draft.text, heightM: '3.05' } }).meant.heightM).toBeUndefined();
  });

  it('10.11 may be ten feet and eleven inches: both are offered, the taller first, and neither is taken', () => {
    const draft = draftOf(USUAL, 'metric');
    for (const heightM of ['10.11', '10,11', "10.11'", '10.11 ft', '10.11ft']) {
      const read = readDraft({ ...draft, text: { ...draft.text, heightM } });
      expect(read.figures.heightM, heightM).toBeUndefined();
      expect(read.meant.heightM?.map(({ text }) => text)).toEqual([`10'11"`, '3.0815']);
      expect(read.faults.heightM).toMatch(/10 ft 11 in \(3\.33 m\) or 10[.,]11 ft \(3\.09 m\)/);
    }
  });
});
