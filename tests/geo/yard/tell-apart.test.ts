import { expect, it } from 'vitest';
import { tellApart } from '../../../geo/yard/tell-apart.ts';

const drive = (id: string, more: object = {}) => ({
  id,
  name: 'Mill run',
  file: 'a.gpx',
  lengthM: 1000,
  ...more,
});
const told = (...drives: ReturnType<typeof drive>[]) => [...tellApart(drives, 'metric').values()];

it('drives of one name, in whatever case and blanks, are told apart by their file', () => {
  expect(told(drive('1'), drive('2', { name: 'mill  Run', file: 'b.gpx' }))).toEqual(['a.gpx', 'b.gpx']);
});

it('of one file name too by when they leave, by their length, or else by their ids', () => {
  expect(told(drive('1'), drive('2', { leaveAt: '2027-06-12T09:30' }))).toEqual([
    'without a leave time',
    'leaves Saturday 12 June 2027, 09:30',
  ]);
  expect(told(drive('1'), drive('2', { lengthM: 1500 }))).toEqual(['1.0 km as drawn', '1.5 km as drawn']);
  expect(told(drive('1'), drive('2'))).toEqual(['1', '2']);
});

it('nothing is said of other names, and of the days of a tour', () => {
  const day = (number: number) => ({ day: { number } });
  expect(told(drive('1', day(1)), drive('2', day(2)), drive('3', { name: 'Moor' }))).toEqual([]);
});
