import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loadResultSchema } from '../../../../geo/load/result.ts';
import { weigh } from '../../../../geo/load/weigh/weigh.ts';
import { anyItem, CARD, HEAVY, thing, weighed } from '../load-card.ts';

const saying = (items: Parameters<typeof weighed>[0], card = CARD) => {
  const { warnings, notes } = weighed(items, card);
  return [...warnings, ...notes].join(' ');
};

describe('a load', () => {
  it('adds to each axle by moments: 100 kg over the rear axle is on the rear axle alone', () => {
    expect(weighed([thing('box', 100, 4)])).toMatchObject({ frontKg: 1550, rearKg: 1550, grossKg: 3100 });
    expect(weighed([thing('box', 100, 0)])).toMatchObject({ frontKg: 1650, rearKg: 1450 });
    expect(weighed([thing('box', 100, 2)])).toMatchObject({ frontKg: 1600, rearKg: 1500 });
  });

  it('behind the rear axle relieves the front, ahead of the front axle the rear', () => {
    expect(weighed([thing('bikes', 60, 6)])).toMatchObject({ frontKg: 1520, rearKg: 1540 });
    expect(weighed([thing('nose', 40, -1)])).toMatchObject({ frontKg: 1600, rearKg: 1440 });
  });

  it('of nothing is the empty weight', () => {
    expect(weighed([])).toMatchObject({
      grossKg: 3000,
      payloadKg: 500,
      payloadLeftKg: 500,
      over: [],
      spare: { grossKg: 500, frontKg: 300, rearKg: 550 },
      bindsFirst: 'front',
    });
  });

  it('always adds up: both axles carry all there is', () => {
    fc.assert(
      fc.property(fc.array(anyItem, { maxLength: 12 }), (items) => {
        const result = weighed(items);
        const mass = items.reduce((sum, { massKg }) => sum + massKg, 3000);
        expect(result.frontKg + result.rearKg).toBeCloseTo(mass, 6);
        expect(result.grossKg).toBeCloseTo(mass, 6);
        expect(loadResultSchema.safeParse(result).success).toBe(true);
      }),
    );
  });

  it('moved rearwards never lightens the rear axle', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 150, noNaN: true }),
        fc.double({ min: -0.9, max: 6, noNaN: true }),
        fc.double({ min: 0, max: 3, noNaN: true }),
        (massKg, xM, back) => {
          const before = weighed([thing('box', massKg, xM)]);
          const after = weighed([thing('box', massKg, xM + back)]);
          expect(after.rearKg).toBeGreaterThanOrEqual(before.rearKg - 1e-9);
          expect(after.frontKg).toBeLessThanOrEqual(before.frontKg + 1e-9);
        },
      ),
    );
  });

  it('weighs the same in whatever order it is listed', () => {
    fc.assert(
      fc.property(
        fc
          .array(anyItem, { maxLength: 10 })
          .chain((items) =>
            fc.tuple(fc.constant(items), fc.shuffledSubarray(items, { minLength: items.length })),
          ),
        ([items, shuffled]) => {
          const [a, b] = [weighed(items), weighed(shuffled)];
          expect(a.frontKg).toBeCloseTo(b.frontKg, 6);
          expect(a.rearKg).toBeCloseTo(b.rearKg, 6);
        },
      ),
    );
  });

  it('to the very plate is within it, a gram more is over', () => {
    expect(weighed([thing('box', 500, 4)]).over).toEqual([]);
    expect(weighed([thing('box', 500.001, 4)]).over).toEqual(['gross']);
    expect(weighed([thing('box', 300, 0)]).over).toEqual([]);
    expect(weighed([thing('box', 300.001, 0)]).over).toEqual(['front']);
    // 100 kg on the rack put 160 on the rear axle: 1450 + 4 × 160 is over 2000 before 3500 is reached
    expect(weighed([thing('box', 345, 6.4)]).over).toContain('rear');
  });

  it('needs an empty weight, and says how to get one', () => {
    const { runningOrder: _, ...card } = CARD;
    const result = weigh(card, []);
    expect(result.ok ? '' : result.error.message).toContain('weigh the vehicle axle by axle');
  });

  it('that takes off more than there is cannot be', () => {
    const result = weigh(CARD, [thing('engine', -3100, 0)]);
    expect(result.ok ? '' : result.error.message).toContain('cannot be');
    expect(weigh(CARD, [thing('engine', -1600, 0)]).ok).toBe(false);
  });
});

describe('a rack', () => {
  it('carries what lies behind the body, against its own limit', () => {
    expect(weighed([thing('bikes', 45, 6.3), thing('chairs', 40, 5.9)]).rack).toEqual({
      onKg: 45,
      limitKg: 60,
      spareKg: 15,
      limitFrom: 'card',
    });
    const over = weighed([thing('e-bikes', 67, 6.3)]);
    expect(over.over).toEqual(['rack']);
    expect(over.warnings.join()).toContain('7 kg more than its limit');
  });

  it('without a limit on the card is held to 60 kg, common practice, as a warning', () => {
    const card = { ...CARD, rack: { lengthM: 0.6, widthM: 2, fitted: true } };
    const result = weighed([thing('e-bikes', 67, 6.3)], card);
    expect(result.over).toEqual([]);
    expect(result.rack?.limitFrom).toBe('common practice');
    expect(result.warnings.join()).toContain('common practice');
  });

  it('that is not fitted carries nothing: what lies there is asked about', () => {
    const card = { ...CARD, rack: { lengthM: 0.6, widthM: 2, fitted: false } };
    expect(weighed([thing('bikes', 30, 6.3)], card).rack).toBeUndefined();
    expect(saying([thing('bikes', 30, 6.3)], card)).toContain('"bikes" lies 0.25 m behind the body');
  });
});

describe('what is counted', () => {
  const running = (includesDriver: boolean, includesFreshWater: boolean) => ({
    ...CARD,
    runningOrder: { frontKg: 1550, rearKg: 1450, includesDriver, includesFreshWater },
  });
  const driver = thing('Driver', 75, 0.4);
  const water = thing('Fresh water, 100 l', 100, 2.5);

  it('holds the driver once: listed beside an empty weight that has one is warned of', () => {
    expect(saying([driver])).toContain('holds a driver already');
    expect(saying([driver], running(false, false))).not.toContain('already');
    expect(saying([], running(false, false))).toContain('add the driver');
    expect(saying([thing('Passenger beside the driver', 70, 0.4)])).not.toContain('already');
    expect(saying([thing('Jo', 80, 0.4, { kind: 'driver' })])).toContain('holds a driver already');
  });

  it('holds the water once, and says when there is none', () => {
    expect(saying([water], running(true, true))).toContain('holds fresh water already');
    expect(saying([water])).not.toContain('already');
    expect(saying([])).toContain('the tank counts as empty');
    expect(saying([thing('Fresh water drained', -100, 2.5)], running(true, true))).not.toContain('already');
    expect(saying([thing('Water bottles', 12, 2)], running(true, true))).not.toContain('already');
  });

  it('tells litres that do not go with their kilograms', () => {
    expect(saying([thing('water', 10, 2, { litres: 100 })])).toContain('do not go together');
    expect(saying([thing('water', 100, 2, { litres: 100 })])).not.toContain('do not go together');
  });

  it('keeps 40 to 70 % on the front axle, one British handbook’s rule', () => {
    expect(saying([thing('box', 800, 5.4)], HEAVY)).toContain('builder’s handbook (2008)');
    expect(saying([])).not.toContain('handbook');
  });

  it('tells lockers and tanks that hold too much', () => {
    expect(saying([thing('box', 35, -0.4, { place: 'Nose' })])).toContain(
      '"Nose" holds 35 kg; its limit is 30 kg',
    );
    expect(saying([thing('w', 130, 2.5, { kind: 'fresh-water', place: 'Fresh tank' })])).toContain(
      'holds 120 l',
    );
  });

  it('lies within the vehicle', () => {
    expect(saying([thing('box', 5, -1.2)])).toContain('0.25 m ahead of the vehicle');
    expect(saying([thing('box', 5, 7)])).toContain('behind the end of the rack');
  });
});
