import { describe, expect, it } from 'vitest';
import { loadResult } from '../../../../geo/load/load-result.ts';
import { loadCardOf, readyKg, unladenFrom } from '../../../../geo/load/weigh/load-card.ts';
import { headlineOf, sayPlate, sumText } from '../../../../geo/load/weigh/say-plates.ts';
import { plateSums } from '../../../../geo/load/weigh/sums.ts';
import { CARD, thing } from '../load-card.ts';

const { runningOrder: _, ...UNWEIGHED } = CARD;
const TOTAL = { ...UNWEIGHED, unladenKg: 2800 };

describe('a card with one figure of a weighbridge', () => {
  it('is loaded by an estimate: fuel and driver are added, the axles share it as their plates do', () => {
    // no fuel tank on the card: 67.5 l of diesel at 0.83 kg/l, and 75 kg for the driver
    expect(readyKg(TOTAL)).toBeCloseTo(2800 + 67.5 * 0.83 + 75, 6);
    const ready = loadCardOf(TOTAL);
    if (!ready.ok) throw new Error(ready.error.message);
    const { frontKg, rearKg, includesDriver } = ready.value.runningOrder;
    expect(frontKg / (frontKg + rearKg)).toBeCloseTo(
      CARD.axleKg.front / (CARD.axleKg.front + CARD.axleKg.rear),
      3,
    );
    expect([includesDriver, ready.value.estimated]).toEqual([true, 'axles']);
  });

  it('says so in every figure of the axles, and how to do better', () => {
    const result = loadResult(TOTAL, [thing('box', 40, 3)]);
    if (!result.ok) throw new Error(result.error.message);
    expect([result.value.estimated, result.value.grossEstimated]).toEqual([true, undefined]);
    const { front, gross } = plateSums(result.value);
    expect(sayPlate(front)).toMatch(/^about \d+ kg spare, front axle$/);
    expect(sumText(front)).toMatch(/ \(estimate\)$/);
    expect(sayPlate(gross)).toMatch(/^\d+ kg spare, gross$/);
    expect(result.value.notes[0]).toMatch(/^Estimate: .*Weigh each axle/);
    expect(headlineOf(result.value, { doubtful: false, marginKg: 50 })).toMatch(/^ESTIMATE, NOT WEIGHED\. /);
  });

  it('keeps what a weighbridge shows of the whole as unladen mass', () => {
    const aboard = { driver: true, freshWater: true };
    const unladenKg = unladenFrom(CARD, 3100, aboard);
    // the fresh tank of the card holds 120 l, at 1 kg/l
    expect(unladenKg).toBe(Math.round(3100 - 67.5 * 0.83 - 75 - 120));
    expect(readyKg({ ...CARD, unladenKg })).toBeCloseTo(3100 - 120, 0);
  });
});

describe('a card without any', () => {
  it('is refused with how to get one, unless a guess is asked for', () => {
    const refused = loadResult(UNWEIGHED, []);
    expect(!refused.ok && refused.error.message).toContain('unladenKg');
    const guessed = loadCardOf(UNWEIGHED, { guess: true });
    // 3190 kg of 3500 kg, a handbook's example (facts on loading, P10)
    expect(guessed.ok && guessed.value.estimated).toBe('axles and total');
    if (!guessed.ok) return;
    const { frontKg, rearKg } = guessed.value.runningOrder;
    expect(frontKg + rearKg).toBe(Math.round((CARD.grossKg * 3190) / 3500));
  });
});
