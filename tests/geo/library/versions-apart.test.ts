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
    ['stops: The mill 45 min', 'due at the end by: 2027-06-12 17:00'],
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
