import { expect, it, vi } from 'vitest';
import { readHours } from '../../../geo/clock/read-hours.ts';

const NOWHERE = { lat: 0, lon: 0, country: '', state: '' };

it('nothing is printed over hours the library stumbles over', () => {
  const printed = (['log', 'warn', 'error'] as const).map((way) => vi.spyOn(console, way));
  // it prints that it knows no public holidays there
  expect(readHours('PH', NOWHERE)).toBeUndefined();
  for (const spy of printed) expect(spy).not.toHaveBeenCalled();
  vi.restoreAllMocks();
});

it('the same hours at the same place are read once, and elsewhere again', () => {
  const berlin = { lat: 52.5, lon: 13.4, country: 'de', state: '' };
  const read = readHours('sunrise-sunset', berlin);
  expect(read).toBeDefined();
  expect(readHours('sunrise-sunset', berlin)).toBe(read);
  expect(readHours('sunrise-sunset', { ...berlin, lon: 7 })).not.toBe(read);
});
