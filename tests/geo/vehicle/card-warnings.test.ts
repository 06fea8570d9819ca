import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { given } from '../../../geo/given.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { cardCautions, cardRemarks, cardWarnings, toAffirm } from '../../../geo/vehicle/card-warnings.ts';
import { bodyOf, noteOf } from '../../../geo/vehicle/form/place-note.ts';
import { EMPTY_ROW } from '../../../geo/vehicle/form/place-rows.ts';
import { inEmptyWeight, LIQUIDS } from '../../../geo/vehicle/liquids.ts';
import { readVehicle } from '../../../geo/vehicle/read-vehicle.ts';
import { sayEmptyWeight } from '../../../geo/vehicle/say-empty-weight.ts';

const read = readVehicle(readFileSync('sample-routes/vehicles/panel-van-6.0.json', 'utf8'), 'van');
if (!read.ok) throw new Error(read.error.message);
const van: VehicleCard = { ...read.value, widthMirrorsFoldedM: 2.2 };
const saidOf = (change: Partial<VehicleCard>) => cardWarnings({ ...van, ...change }, 'metric').join(' ');

describe('a vehicle card', () => {
  it('of an ordinary panel van gives nothing to think of', () => {
    expect(cardWarnings(van, 'metric')).toEqual([]);
  });

  it('may have 1.8 m behind a 3 m wheelbase and no more (gov.uk, 2010, its own example)', () => {
    const sizes = { wheelbaseM: 3, frontOverhangM: 1 };
    expect(saidOf({ ...sizes, rearOverhangM: 1.8, lengthM: 5.8 })).not.toContain('60 %');
    expect(saidOf({ ...sizes, rearOverhangM: 1.9, lengthM: 5.9 })).toContain('63 % of the wheelbase');
  });

  it('counts a rack to the overhang when it is fitted', () => {
    const rack = { lengthM: 1.6, widthM: 1.8 };
    expect(saidOf({ rack: { ...rack, fitted: true } })).toContain('with the rack');
    expect(saidOf({ rack: { ...rack, fitted: false } })).toBe('');
  });

  it('is asked about plates that cannot be, heights that need a notice and plates above a car licence', () => {
    expect(saidOf({ axleKg: { front: 1500, rear: 1500 } })).toContain('less than the gross plate');
    expect(saidOf({ heightM: 3.01 })).toContain('height notice');
    expect(saidOf({ grossKg: 3501, axleKg: { front: 2100, rear: 2400 } })).toContain('3500 kg');
    expect(saidOf({ widthM: 2.56, widthMirrorsM: 2.9 })).toContain('2.55 m');
  });

  it('is asked about a length over 12 m with its rack, and about an empty weight over its plates', () => {
    expect(saidOf({ lengthM: 11.5, rack: { lengthM: 0.6, widthM: 1.8, fitted: true } })).toContain(
      'Longer than 12 m',
    );
    const plates = { grossKg: 3500, axleKg: { front: 1850, rear: 2000 } };
    const empty = { includesDriver: true, includesFreshWater: false };
    expect(saidOf({ ...plates, runningOrder: { ...empty, frontKg: 1600, rearKg: 2050 } })).toBe(
      'Empty and ready to drive, an axle already weighs more than its plate. Empty and ready to drive, it already weighs more than its gross plate.',
    );
    expect(saidOf({ ...plates, runningOrder: { ...empty, frontKg: 1900, rearKg: 1500 } })).toContain(
      'an axle already',
    );
    expect(saidOf({ ...plates, runningOrder: { ...empty, frontKg: 1600, rearKg: 1500 } })).toBe('');
  });

  it('lower than its body is wide, or than a coach-built body can be, is asked about and has to be affirmed', () => {
    const coachBuilt = { widthM: 2.35, widthMirrorsM: 2.7 };
    expect(saidOf({ ...coachBuilt, heightM: 2.1 })).toContain(
      'A height of 2.10 m is lower than such a vehicle can be with a body 2.35 m wide. Is it 3.10 m?',
    );
    expect(toAffirm({ ...van, ...coachBuilt, heightM: 2.59 }, 'metric')).toContain('2.59 m');
    expect(toAffirm({ ...van, heightM: van.widthM - 0.01 }, 'metric')).toBeDefined();
    expect(toAffirm({ ...van, heightM: 1.5 }, 'metric')).toContain('Measure again.');
    expect(toAffirm({ ...van, ...coachBuilt, heightM: 2.6 }, 'metric')).toBeUndefined();
    expect(toAffirm(van, 'metric')).toBeUndefined();
  });

  it('with masses that may be pounds, or that cannot stand together, is asked about', () => {
    // 7716 lb of 0.45359237 kg are 3499.9 kg
    expect(saidOf({ grossKg: 7716 })).toContain(
      '7716 lb is 3500 kg: is the most it may weigh given in pounds?',
    );
    expect(saidOf({ grossKg: 3650, axleKg: { front: 1850, rear: 2000 } })).not.toContain('pounds');
    expect(saidOf({ unladenKg: van.grossKg + 1 })).toContain('unladen mass is more');
    expect(saidOf({ axleKg: { front: 4079, rear: 4409 } })).toContain('far more than the gross plate');
    expect(cardCautions({ ...van, grossKg: 7716 }, 'metric').join()).toContain('The vehicle card: 7716 lb');
    expect(cardCautions({ ...van, heightM: 3.01 }, 'metric')).toEqual([]);
    expect(cardRemarks({ ...van, heightM: 3.01 }, 'metric').join()).toContain('height notice');
  });

  it('says what its empty weight holds', () => {
    const weights = { frontKg: 1600, rearKg: 1300 };
    expect(sayEmptyWeight({ ...weights, includesDriver: true, includesFreshWater: false })).toBe(
      'with driver, no fresh water, 90 % fuel',
    );
    expect(sayEmptyWeight({ ...weights, includesDriver: false, includesFreshWater: true })).toBe(
      'without driver, with fresh water, 90 % fuel',
    );
    expect(LIQUIDS.map((liquid) => inEmptyWeight(liquid))).toEqual([
      undefined,
      undefined,
      undefined,
      '90 % are in the empty weight',
      'in the empty weight',
      undefined,
    ]);
  });
});

describe('a place on the card while it is written', () => {
  const body = bodyOf({ frontOverhangM: 1, wheelbaseM: 4, rearOverhangM: 2 });
  const row = (xM: string) => ({ ...EMPTY_ROW, xM });
  const read = (xM: number | undefined) => ({ ...given({ xM }), faults: {} });

  it('says how a distance was understood where its text does not, and what lies outside the body', () => {
    expect(bodyOf({ frontOverhangM: 1, wheelbaseM: 4 })).toBeUndefined();
    expect(body).toEqual({ noseM: -1, tailM: 6 });
    expect(noteOf(row('2.75'), read(2.75), body)).toBe('');
    expect(noteOf(row('x'), read(undefined), body)).toBe('');
    expect(noteOf(row(`9'0"`), read(2.7432), body)).toContain('behind the front axle.');
    expect(noteOf(row('-0.4'), read(-0.4), body)).toContain('ahead of the front axle.');
    expect(noteOf(row('6.5'), read(6.5), body)).toContain('That is behind the body');
    expect(noteOf(row('-1.5'), read(-1.5), body)).toContain('That is ahead of the body');
    expect(noteOf(row('6.5'), read(6.5), undefined)).toBe('');
  });
});
