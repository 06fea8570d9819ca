import { expect, it } from 'vitest';
import { driverAdvice } from '../../../geo/report/driver-advice.ts';
import type { Finding } from '../../../geo/report/finding.ts';

const finding = (own: Partial<Finding>): Finding => ({
  id: 'x',
  level: 'barred',
  subject: 'access',
  kind: 'one-way',
  fromM: 0,
  toM: 0,
  at: { lat: 50, lon: 7 },
  osm: [],
  tags: {},
  say: '',
  advice: 'Plan the drive otherwise.',
  ...own,
});

it('who drives is told what a driver can do, not what a planner can', () => {
  for (const own of [
    {},
    { kind: 'turn restriction' },
    { subject: 'map', kind: 'gap in the route' },
    { subject: 'mass', kind: 'limit', level: 'unknown', wants: 'measure' },
  ] as Partial<Finding>[])
    expect(driverAdvice(finding(own))).toMatch(/ask the firm|Ask the firm/);
});

it('every other advice stands as it is', () => {
  expect(driverAdvice(finding({ kind: 'closed' }))).toBe('Plan the drive otherwise.');
  expect(driverAdvice(finding({ level: 'unknown' }))).toBe('Plan the drive otherwise.');
});
