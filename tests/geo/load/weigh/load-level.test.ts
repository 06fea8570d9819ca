import { describe, expect, it } from 'vitest';
import { levelOf, loadLevel } from '../../../../geo/load/weigh/load-level.ts';
import { headlineOf } from '../../../../geo/load/weigh/say-plates.ts';
import { thing, weighed } from '../load-card.ts';

describe('a load', () => {
  it('with nothing to spare is tight, whatever the margin', () => {
    for (const marginKg of [0, 50]) expect(levelOf({ over: false, spareKg: 0 }, marginKg)).toBe('tight');
    // plated 3500 kg, 3000 kg empty
    expect(loadLevel(weighed([thing('boxes', 500, 2.2)]), 0)).toBe('tight');
  });

  it('that leaves less than the margin is tight, and within it otherwise', () => {
    expect(levelOf({ over: false, spareKg: 49.9 }, 50)).toBe('tight');
    expect(levelOf({ over: false, spareKg: 50 }, 50)).toBe('within');
    expect(levelOf({ over: true, spareKg: -1 }, 50)).toBe('over');
  });

  it('names the least spare; nothing is called reached', () => {
    const said = headlineOf(weighed([]), { doubtful: false, marginKg: 50 });
    expect(said).toBe('WITHIN THE PLATES: least spare: front axle, 300 kg.');
  });
});
