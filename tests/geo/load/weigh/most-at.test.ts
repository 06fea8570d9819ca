import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mostAt } from '../../../../geo/load/weigh/most-at.ts';
import { anyItem, CARD, HEAVY, thing, weighed } from '../load-card.ts';

describe('the most at a place', () => {
  it('is what the first limit leaves', () => {
    const loaded = weighed([]);
    expect(mostAt(CARD, loaded, 0)).toMatchObject({ massKg: 300, binds: 'front' });
    expect(mostAt(CARD, loaded, 3)).toMatchObject({ massKg: 500, binds: 'gross' });
    expect(mostAt(CARD, loaded, 5)).toMatchObject({ massKg: 440, binds: 'rear' });
    expect(mostAt(CARD, loaded, 6.3)).toMatchObject({ massKg: 60, binds: 'rack' });
  });

  it('is nothing where something is over already', () => {
    expect(mostAt(CARD, weighed([thing('box', 520, 4)]), 0)).toMatchObject({ massKg: 0, binds: 'gross' });
  });

  it('comes with the mass at which a handbook’s 40 % on the front axle is reached', () => {
    const { handbookKg } = mostAt(HEAVY, weighed([], HEAVY), 5);
    const at = weighed([thing('box', handbookKg ?? 0, 5)], HEAVY);
    expect(at.frontShare).toBeCloseTo(0.4, 9);
  });

  it('keeps every limit, and 0.1 kg more does not', () => {
    fc.assert(
      fc.property(
        fc.array(anyItem, { maxLength: 6 }),
        fc.double({ min: -0.9, max: 6.6, noNaN: true }),
        (items, xM) => {
          const loaded = weighed(items);
          fc.pre(loaded.over.length === 0);
          const { massKg } = mostAt(CARD, loaded, xM);
          expect(weighed([...items, thing('more', massKg - 0.001, xM)]).over).toEqual([]);
          expect(weighed([...items, thing('more', massKg + 0.1, xM)]).over).not.toEqual([]);
        },
      ),
    );
  });
});
