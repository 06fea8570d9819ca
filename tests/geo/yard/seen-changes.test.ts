import { describe, expect, it } from 'vitest';
import { seenChange, stillToSee } from '../../../geo/yard/seen-changes.ts';

const bridge = {
  kind: 'changed' as const,
  finding: 'height:w1f',
  now: { level: 'barred' as const, limit: { asMapped: '2.9' } },
};
const gate = { kind: 'gone' as const, finding: 'barrier:n7' };
const seen = (id: string, ...changes: Parameters<typeof seenChange>[0][]) => ({
  id,
  drive: 'd',
  vehicle: 'v',
  changes: changes.map(seenChange),
});

describe('a change', () => {
  it('that was acknowledged elsewhere is seen here too', () => {
    expect(stillToSee([bridge, gate], [seen('a', bridge)], [])).toEqual({ changes: [gate], answered: ['a'] });
  });

  it('to another figure than the one that was seen is news', () => {
    const lower = { ...bridge, now: { ...bridge.now, limit: { asMapped: '2.7' } } };
    expect(stillToSee([lower], [seen('a', bridge)], []).changes).toEqual([lower]);
  });

  it('that comes back after it was seen is news again', () => {
    expect(stillToSee([gate], [seen('a', gate)], ['a'])).toEqual({ changes: [gate], answered: [] });
    expect(stillToSee([gate], [seen('a', gate), seen('b', gate)], ['a'])).toEqual({
      changes: [],
      answered: ['b'],
    });
  });
});
