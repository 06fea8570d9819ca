import { describe, expect, it } from 'vitest';
import { fullLockSwingM } from '../../../../geo/swing/circle.ts';
import { swingVehicleOf } from '../../../../geo/swing/swing-vehicle.ts';
import {
  readYard,
  withoutMeasured,
  type YardDraft,
  yardDraftOf,
} from '../../../../geo/swing/yard/read-yard.ts';
import { yardPlanOf } from '../../../../geo/swing/yard/yard-plan.ts';
import { vehicleCardSchema } from '../../../../geo/vehicle/card.ts';
import { COACH_BUILT } from '../../../support/coach-built.ts';

const TODAY = '2026-05-01';
const racked = { ...COACH_BUILT, rack: { lengthM: 0.7, widthM: 2.32, fitted: true } };
const typed = (text: Partial<YardDraft['text']>, more: Partial<YardDraft> = {}): YardDraft => {
  const empty = yardDraftOf(COACH_BUILT, 'metric');
  return { ...empty, ...more, text: { ...empty.text, ...text } };
};

describe('the yard as it is drawn', () => {
  it.each([
    ['the body', COACH_BUILT],
    ['the rack', racked],
  ])(
    'has the farthest mark as far out as the tail swings, beside where the rear axle stood: %s',
    (_, card) => {
      const vehicle = swingVehicleOf(card);
      const { marks, tailFoot } = yardPlanOf(vehicle);
      expect(tailFoot.yM - marks.B.yM).toBeCloseTo(fullLockSwingM(vehicle), 9);
      expect(marks.B.xM).toBeCloseTo(marks.A.xM, 9);
    },
  );

  it('has the circle that gives the radius back when it is measured across', () => {
    const plan = yardPlanOf(swingVehicleOf({ ...COACH_BUILT, trackM: 1.82 }));
    const [from, to] = plan.across;
    const across = Math.hypot(from.xM - to.xM, from.yM - to.yM);
    const read = readYard(typed({ rearWheelCircleM: across.toFixed(4), trackM: '1.82' }), COACH_BUILT, TODAY);
    expect(read.lock?.radiusM).toBeCloseTo(4.985, 3);
  });
});

describe('what is typed off the sheet', () => {
  it('goes on the card with its day, in metres or centimetres, and comes off again', () => {
    const read = readYard(
      typed(
        { rearWheelCircleM: '8.15', tailOutM: '46 cm', tailAheadM: '-10 cm', chalkOffM: '0.02' },
        { by: 'AB' },
      ),
      COACH_BUILT,
      TODAY,
    );
    expect(read.card?.measured).toEqual({
      rearWheelCircleM: 8.15,
      tailOutM: 0.46,
      tailAheadM: -0.1,
      chalkOffM: 0.02,
      on: TODAY,
      by: 'AB',
    });
    expect(vehicleCardSchema.safeParse(read.card).success).toBe(true);
    expect(yardDraftOf(read.card ?? COACH_BUILT, 'metric').text.tailOutM).toBe('0.46');
    expect(withoutMeasured(read.card ?? racked)).toEqual(COACH_BUILT);
  });

  it('says of the rack whether it was on when the tail was marked', () => {
    const on = readYard(typed({ tailOutM: '0.75' }, { withRack: true }), racked, TODAY);
    expect(on.card?.measured?.withRack).toBe(true);
    expect(on.lock?.radiusM).toBeCloseTo(4.94, 1);
    const off = readYard(typed({ tailOutM: '0.46' }, { withRack: false }), racked, TODAY);
    expect(off.lock?.radiusM).toBeCloseTo(4.97, 1);
  });

  it.each([
    [{ rearWheelCircleM: 'wide' }, 'rearWheelCircleM', /is no length/],
    [
      { rearWheelCircleM: '2' },
      'rearWheelCircleM',
      /^No vehicle of this wheelbase turns in so small a circle/,
    ],
    [{ rearWheelCircleM: '45' }, 'rearWheelCircleM', /More than 30\.00 m is not believed/],
    [{ tailOutM: '46' }, 'tailOutM', /^More than 3\.00 m is not believed\. Did you mean 0\.46 m \(46 cm\)\?/],
    [{ tailOutM: '0.46', tailAheadM: '5' }, 'tailAheadM', /not believed\. Did you mean 0\.05 m/],
    [{ rearWheelCircleM: '8.15', trackM: '2.4' }, 'trackM', /^Not less than the body/],
    [{ tailOutM: '1.2' }, 'tailOutM', /^Farther than a tail of this length can swing/],
    [{ tailAheadM: '0.1' }, 'tailAheadM', /^B itself is missing/],
  ] as const)('is refused at its own field, and no card is made of it: %j', (text, field, says) => {
    const read = readYard(typed(text), COACH_BUILT, TODAY);
    expect(read.faults[field]).toMatch(says);
    expect(read.card).toBeUndefined();
  });

  it('with nothing measured makes no card and finds no fault', () => {
    expect(readYard(typed({}), COACH_BUILT, TODAY)).toEqual({ faults: {}, doubts: [] });
  });
});
