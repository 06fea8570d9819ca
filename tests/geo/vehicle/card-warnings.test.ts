import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { cardWarnings } from '../../../geo/vehicle/card-warnings.ts';
import { readVehicle } from '../../../geo/vehicle/read-vehicle.ts';

const read = readVehicle(readFileSync('sample-routes/vehicles/panel-van-6.0.json', 'utf8'), 'van');
if (!read.ok) throw new Error(read.error.message);
const van: VehicleCard = { ...read.value, widthMirrorsFoldedM: 2.2 };
const saidOf = (change: Partial<VehicleCard>) => cardWarnings({ ...van, ...change }).join(' ');

describe('a vehicle card', () => {
  it('of an ordinary panel van gives nothing to think of', () => {
    expect(cardWarnings(van)).toEqual([]);
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
});
