import { expect, it } from 'vitest';
import type { DriveBody } from '../../../geo/library/body/drive.ts';
import { versionsApart } from '../../../geo/library/versions-apart.ts';
import { COACHBUILT } from '../../support/ask.ts';

const DRIVE: DriveBody = {
  gpx: 'a'.repeat(64),
  file: 'moor.gpx',
  track: 1,
  trackName: 'Over the moor',
  lengthM: 1000,
  from: [54, 9],
  to: [54, 9.1],
};

it('versions are told apart by what differs, and by that alone', () => {
  const card = { vehicleId: 'v1', card: COACHBUILT };
  const taller = { vehicleId: 'v1', card: { ...COACHBUILT, heightM: COACHBUILT.heightM + 0.1 } };
  const [one, two] = versionsApart('vehicle', [card, taller], 'metric');
  expect(one).toEqual([expect.stringMatching(/^height: \d\.\d\d m$/)]);
  expect(two).not.toEqual(one);
});

it('a drive’s day and a note’s leave count, and what is none of the lines is said to differ', () => {
  const plan = { stops: [{ name: 'The mill', lat: 54, lon: 9, stayMin: 45 }], homeBy: '2027-06-12T17:00' };
  expect(versionsApart('drive', [DRIVE, { ...DRIVE, plan }], 'metric')).toEqual([
    ['stops: none', 'due at the end by: no return hour'],
    ['stops: The mill 45 min', 'due at the end by: Saturday 12 June 2027, 17:00'],
  ]);
  const note = { at: { lat: 54, lon: 9 }, say: 'Gate' };
  expect(versionsApart('note', [note, { ...note, leave: true }], 'metric')).toEqual([
    ['leave: not given'],
    ['leave: given'],
  ]);
  expect(versionsApart('drive', [DRIVE, { ...DRIVE, later: 1 }], 'metric')[0]).toEqual([
    'differs in details that are not listed here',
  ]);
});

it('cards differ in their empty weight and rack, loads in their lists, notes in what was measured', () => {
  const card = { vehicleId: 'v1', card: COACHBUILT };
  const rack = { lengthM: 0.7, widthM: 2 };
  const of = (change: Partial<typeof COACHBUILT>) => ({
    vehicleId: 'v1',
    card: { ...COACHBUILT, ...change },
  });
  expect(
    versionsApart(
      'vehicle',
      [
        card,
        of({ unladenKg: 2890.4, rack: { ...rack, fitted: true } }),
        of({ rack: { ...rack, fitted: false } }),
      ],
      'metric',
    ),
  ).toEqual([
    ['unladen: not given', 'rack: none'],
    ['unladen: 2891 kg', 'rack: fitted'],
    ['unladen: not given', 'rack: not fitted'],
  ]);
  const box = { name: 'Box', massKg: 10, xM: 2 };
  expect(
    versionsApart(
      'load',
      [
        { vehicleId: 'v1', items: [] },
        { vehicleId: 'v1', items: [box] },
      ],
      'metric',
    ),
  ).toEqual([
    ['aboard: 0 entries', 'list: nothing'],
    ['aboard: 1 entry', 'list: Box'],
  ]);
  const note = { at: { lat: 54, lon: 9 }, say: 'Gate' };
  expect(versionsApart('note', [note, { ...note, heightM: 3.2, massKg: 3500 }], 'metric')).toEqual([
    ['height: none', 'weight: none'],
    ['height: 3.20 m', 'weight: 3500 kg'],
  ]);
});

it('two versions of a drive that leave at other hours are told apart by them', () => {
  expect(versionsApart('drive', [DRIVE, { ...DRIVE, leaveAt: '2027-06-12T09:30' }], 'metric')).toEqual([
    ['leaves: no leave time'],
    ['leaves: Saturday 12 June 2027, 09:30'],
  ]);
});
