import { expect, it } from 'vitest';
import { keptDay } from '../../../geo/day/kept-day.ts';

const STOP = { name: 'Quay', lat: 51, lon: 1, stayMin: 20 };

it('a kept day is read without what a later program has added, also to a stop', () => {
  const plan = { stops: [{ ...STOP, colour: 'blue' }], homeBy: '2027-06-12T17:00', breaks: 3 };
  expect(keptDay(plan)).toEqual({ day: { stops: [STOP], homeBy: '2027-06-12T17:00' } });
});

it('one that cannot be read is told, not dropped', () => {
  for (const plan of [
    {},
    { stops: 'none' },
    { stops: [{ ...STOP, stayMin: -1 }] },
    { stops: [], homeBy: 'five' },
  ])
    expect(keptDay(plan)).toEqual({ unread: expect.stringContaining('cannot be read') });
});
