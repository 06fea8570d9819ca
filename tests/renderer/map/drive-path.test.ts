import { describe, expect, it } from 'vitest';
import { mercatorX, mercatorY } from '../../../geo/earth/mercator.ts';
import type { FollowedDrive, FollowedLeg } from '../../../main/contract/followed-drive.ts';
import {
  drivePath,
  linesBetween,
  nearestM,
  pathBox,
  placeOnPath,
} from '../../../renderer/map/drive/drive-path.ts';

const leg = (kind: 'offMap' | 'gap', line: number[], alongM: number[]): FollowedLeg => ({
  kind,
  fromM: alongM[0] ?? 0,
  toM: alongM.at(-1) ?? 0,
  line,
  alongM,
});
const driveOf = (legs: FollowedLeg[], lengthM: number): FollowedDrive => ({
  driveId: 'd',
  name: '',
  file: 'a.gpx',
  tracks: [],
  taken: 1,
  lengthM,
  legs,
  guessed: [],
  doubtful: [],
  match: { drivenM: 0, offMapM: lengthM, guessedM: 0 },
  notes: [],
});

/** North for 100 m, a gap, then east for 100 m and back the same way. */
const PATH = drivePath(
  driveOf(
    [
      leg('offMap', [50, -1, 50.0009, -1], [0, 100]),
      leg('gap', [50.0009, -1, 50.01, -1], [100, 100]),
      leg('offMap', [50.01, -1, 50.01, -0.9986, 50.01, -1], [100, 200, 300]),
    ],
    300,
  ),
);

describe('the drive as drawn', () => {
  it('faces the way it is driven', () => {
    expect(placeOnPath(PATH, 50)?.headingDeg).toBeCloseTo(0, 5);
    expect(placeOnPath(PATH, 150)?.headingDeg).toBeCloseTo(90, 5);
    expect(placeOnPath(PATH, 250)?.headingDeg).toBeCloseTo(-90, 5);
  });

  it('half way along is in the middle, and beyond its ends it stays there', () => {
    expect(placeOnPath(PATH, 50)?.y).toBeCloseTo((mercatorY(50) + mercatorY(50.0009)) / 2, 12);
    expect(placeOnPath(PATH, -10)?.y).toBe(mercatorY(50));
    expect(placeOnPath(PATH, 1e9)?.x).toBe(mercatorX(-1));
  });

  it('a span over a gap is drawn as two lines', () => {
    const lines = linesBetween(PATH, 50, 150);
    expect(lines).toHaveLength(2);
    expect(lines[0]?.[1]).toBeCloseTo((mercatorY(50) + mercatorY(50.0009)) / 2, 12);
    expect(lines[1]?.at(-2)).toBeCloseTo(mercatorX(-0.9993), 9);
  });

  it('pointed at where it passes twice, the pass nearer to the cursor is meant', () => {
    const place = { x: mercatorX(-0.9993), y: mercatorY(50.01) };
    const at = (aboutM: number) => nearestM(PATH, place, { aboutM, reach: 1e-6, same: 1e-9 });
    expect(at(120)).toBeCloseTo(150, 3);
    expect(at(290)).toBeCloseTo(250, 3);
    expect(nearestM(PATH, { x: 0.9, y: 0.9 }, { aboutM: 0, reach: 1e-6, same: 1e-9 })).toBeUndefined();
  });

  it('a drive without positions is nowhere', () => {
    const empty = drivePath(driveOf([], 0));
    expect(placeOnPath(empty, 0)).toBeUndefined();
    expect(pathBox(empty)).toBeUndefined();
    expect(linesBetween(empty, 0, 10)).toEqual([]);
  });
});
