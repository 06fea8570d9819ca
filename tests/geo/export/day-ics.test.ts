import { expect, it } from 'vitest';
import { dayIcs } from '../../../geo/export/day-ics.ts';

const DAY = {
  drive: 'Küste, entlang; \\ und “weit” '.repeat(6),
  made: '2027-06-01T10:00:00.000Z',
  uid: 'K7QM-4XPD',
  program: 'Lanegauge',
  note: 'x',
};

it('due times are a calendar in UTC, its lines folded at 75 octets and its texts escaped', () => {
  const text = dayIcs({ ...DAY, due: [{ what: 'Leave', at: '2027-06-12T09:30:00+01:00' }] }) ?? '';
  expect(text).toContain('\r\nDTSTART:20270612T083000Z\r\n');
  expect(text).toContain('\r\nDTSTAMP:20270601T100000Z\r\n');
  for (const line of text.split('\r\n')) {
    expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
    expect(line).not.toMatch(/[\r\n]/);
  }
  expect(text.replaceAll('\r\n ', '')).toContain('SUMMARY:Leave: Küste\\, entlang\\; \\\\ und');
});

it('where nothing is due there is none', () => {
  expect(dayIcs({ ...DAY, due: [] })).toBeUndefined();
});
