import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fullLockSwingM } from '../../../../geo/swing/circle.ts';
import { swingVehicleOf } from '../../../../geo/swing/swing-vehicle.ts';
import type { VehicleCard } from '../../../../geo/vehicle/card.ts';
import { cardWarnings } from '../../../../geo/vehicle/card-warnings.ts';
import { draftOf } from '../../../../geo/vehicle/form/draft.ts';
import { readDraft } from '../../../../geo/vehicle/form/read-draft.ts';
import { fullLockOf } from '../../../../geo/vehicle/lock/full-lock.ts';
import type { YardMeasures } from '../../../../geo/vehicle/lock/lock-sizes.ts';
import {
  type MeasureFault,
  measuredLock,
  measureFaults,
  USUAL_OFF_M,
} from '../../../../geo/vehicle/lock/measured-lock.ts';
import { sayMeasureFault } from '../../../../geo/vehicle/lock/say-measure-fault.ts';
import { readVehicle } from '../../../../geo/vehicle/read-vehicle.ts';
import { COACH_BUILT } from '../../../support/coach-built.ts';
import { FOOT_M, figureOf, publishedOf } from '../../../support/published-turning.ts';

const measuredCard = (measured: YardMeasures, more: Partial<VehicleCard> = {}): VehicleCard => ({
  ...COACH_BUILT,
  ...more,
  measured: measured as NonNullable<VehicleCard['measured']>,
});

/** Sizes of a motorhome, its true least radius, and errors of every kind as shares of the most they may be. */
const yards = fc.record({
  wheelbaseM: fc.double({ min: 3, max: 5, noNaN: true }),
  overhangShare: fc.double({ min: 0.4, max: 0.62, noNaN: true }),
  widthM: fc.double({ min: 2, max: 2.5, noNaN: true }),
  lockDeg: fc.double({ min: 30, max: 45, noNaN: true }),
  rack: fc.option(
    fc.record({
      lengthM: fc.double({ min: 0.3, max: 0.9, noNaN: true }),
      widthM: fc.double({ min: 1.2, max: 2.5, noNaN: true }),
    }),
    { nil: undefined },
  ),
  errors: fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 6, maxLength: 6 }),
});

describe('a vehicle measured in the yard', () => {
  it('has its true radius within the range that chalk and tape leave, by the circle and by the tail', () => {
    let told = 0;
    fc.assert(
      fc.property(yards, ({ wheelbaseM, overhangShare, widthM, lockDeg, rack, errors }) => {
        const [tape = 0, chalkA = 0, chalkB = 0, size = 0, track = 0, tapeTail = 0] = errors;
        const truth = {
          ...COACH_BUILT,
          wheelbaseM,
          widthM,
          rearOverhangM: overhangShare * wheelbaseM,
          trackM: widthM - 0.45,
          rearAxleRadiusMinM: wheelbaseM / Math.tan((lockDeg * Math.PI) / 180),
          ...(rack ? { rack: { ...rack, fitted: true } } : {}),
        };
        const marks = (chalkA + chalkB) * USUAL_OFF_M.chalk;
        const card = {
          ...truth,
          // what was read off the body is itself not exact
          rearOverhangM: truth.rearOverhangM + size * 0.02,
          trackM: truth.trackM + track * 0.02,
        };
        const circle = {
          rearWheelCircleM: 2 * truth.rearAxleRadiusMinM - truth.trackM + tape * USUAL_OFF_M.tape + marks,
        };
        const tail = {
          tailOutM: fullLockSwingM(swingVehicleOf(truth)) + tapeTail * USUAL_OFF_M.tape + marks,
          withRack: rack !== undefined,
        };
        for (const measured of [circle, tail, { ...circle, ...tail }]) {
          const lock = measuredLock({ ...card, measured });
          if (!lock) {
            expect(measureFaults({ ...card, measured }).every(({ kind }) => kind === 'tells nothing')).toBe(
              true,
            );
            continue;
          }
          told++;
          expect(truth.rearAxleRadiusMinM).toBeGreaterThan(lock.lowM - 1e-9);
          expect(truth.rearAxleRadiusMinM).toBeLessThan(lock.highM + 1e-9);
          expect(lock.radiusM).toBeGreaterThanOrEqual(lock.lowM);
          expect(lock.radiusM).toBeLessThanOrEqual(lock.highM);
          expect(lock.atOdds).toBe(false);
        }
      }),
      { numRuns: 300, seed: 12 },
    );
    expect(told).toBeGreaterThan(600);
  });

  it('comes back exactly where nothing is off', () => {
    const exact = { tapeOffM: 0, chalkOffM: 0 };
    const swingM = fullLockSwingM(swingVehicleOf(COACH_BUILT));
    expect(measuredLock(measuredCard({ ...exact, tailOutM: swingM }))?.radiusM).toBeCloseTo(4.985, 9);
    const acrossM = 2 * 4.985 - 1.82;
    const lock = measuredLock(measuredCard({ ...exact, rearWheelCircleM: acrossM }, { trackM: 1.82 }));
    expect(lock?.radiusM).toBeCloseTo(4.985, 9);
    // nothing but the track's own centimetres is left
    expect(lock?.highM).toBeCloseTo(4.995, 9);
  });

  it.each(publishedOf('min_inside_radius_from_centreline_radius'))(
    '$id: the inner rear wheel of a published table gives the table’s own radius [$source]',
    (one) => {
      const feet = (name: string) => figureOf(one.inputs[`${name}_ft`]) * FOOT_M;
      const sizes = {
        wheelbaseM: feet('wheelbase'),
        frontOverhangM: 1,
        rearOverhangM: 1,
        widthM: feet('width'),
        trackM: feet('width'),
      };
      const innerM = figureOf(one.expected_ft) * FOOT_M;
      const lock = measuredLock({ ...sizes, measured: { rearWheelCircleM: 2 * innerM } });
      const frontM = Math.hypot(figureOf(lock?.radiusM), sizes.wheelbaseM);
      expect(Math.abs(frontM - feet('front_axle_centre_radius'))).toBeLessThan(
        figureOf(one.tolerance_ft) * FOOT_M,
      );
    },
  );

  it('counts before every other figure of the card, which is told where it does not agree', () => {
    const card = measuredCard({ rearWheelCircleM: 8.15 }, { trackM: 1.82, turningCircleM: 11 });
    expect(fullLockOf(card).from).toBe('measured');
    expect(cardWarnings(card, 'metric')).toContain(
      "The turning circle between kerbs on the card comes to 2.83 m at the rear axle; measured in the yard it is 4.96 to 5.01 m. What was measured counts. Mend the card's figure or measure again.",
    );
    expect(cardWarnings({ ...card, turningCircleM: 14.28 }, 'metric').join()).not.toMatch(
      /measured in the yard/,
    );
  });

  it('is told where the circle and the tail do not agree, and where the farthest mark lies in the wrong place', () => {
    const atOdds = measuredCard({ rearWheelCircleM: 8.15, tailOutM: 0.3 });
    expect(cardWarnings(atOdds, 'metric').join(' ')).toMatch(/do not agree/);
    expect(fullLockOf(atOdds).highM).toBeGreaterThan(6);
    const late = measuredCard({ tailOutM: 0.45, tailAheadM: 1.4 });
    expect(cardWarnings(late, 'metric').join(' ')).toMatch(/was not hard over when it began to roll/);
    expect(cardWarnings(measuredCard({ tailOutM: 0.45, tailAheadM: 0.3 }), 'metric').join(' ')).not.toMatch(
      /hard over/,
    );
  });

  it.each([
    [{ rearWheelCircleM: 2 }, /no vehicle of this wheelbase turns in so small a circle/],
    [{ rearWheelCircleM: 25 }, /wider than any road vehicle of this wheelbase needs/],
    [{ tailOutM: 1.4 }, /farther than a tail of this length can swing/],
    [{ tailOutM: 0.1 }, /less than a tail of this length swings at full lock/],
    [{ rearWheelCircleM: 80 }, /rearWheelCircleM/],
    [{ withRack: true }, /neither the circle of the inner rear wheel nor the swing/],
  ])('is refused with a sentence where it cannot be: %j', (measured, says) => {
    const read = readVehicle(JSON.stringify({ ...COACH_BUILT, measured }), 'card.json');
    expect(read.ok ? '' : read.error.message).toMatch(says);
  });

  it('says that a short tail tells nothing', () => {
    const van = { ...COACH_BUILT, rearOverhangM: 1, measured: { tailOutM: 0.085 } };
    expect(measureFaults(van)).toEqual([{ field: 'tailOutM', kind: 'tells nothing' }]);
    expect(measuredLock(van)).toBeUndefined();
  });

  it('is kept when the card is written anew in the form, and a wheelbase that does not go with it is told', () => {
    const card = measuredCard({ rearWheelCircleM: 8.15 });
    const draft = draftOf(card, 'metric');
    expect(readDraft(draft).card?.measured).toEqual(card.measured);
    const text = { ...draft.text, wheelbaseM: '14', lengthM: '17.37' };
    const read = readDraft({ ...draft, text });
    expect(read.card).toBeUndefined();
    expect(read.faults.wheelbaseM).toMatch(/what was measured in the yard cannot be/);
  });
});

describe('a measurement that cannot be', () => {
  const said = (field: 'rearWheelCircleM' | 'tailOutM') =>
    (['too tight', 'too wide', 'tells nothing'] as const).map((kind) =>
      sayMeasureFault({ field, kind } as MeasureFault),
    );

  it('is refused with what was likely done instead', () => {
    expect(said('rearWheelCircleM').map((text) => text.split(/[;,]/u)[0])).toEqual([
      'no vehicle of this wheelbase turns in so small a circle',
      'wider than any road vehicle of this wheelbase needs',
      'the tape and chalk are too far off to tell the circle by',
    ]);
    expect(said('tailOutM').map((text) => text.split(/[;,]/u)[0])).toEqual([
      'farther than a tail of this length can swing',
      'less than a tail of this length swings at full lock',
      'this tail is too short to tell the turning circle by',
    ]);
  });
});
