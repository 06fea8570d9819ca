import { beforeEach, describe, expect, it } from 'vitest';
import type { DriveReport } from '../../../geo/report/report.ts';
import type { WayRound } from '../../../geo/report/way-round.ts';
import { fail, ok } from '../../../geo/result.ts';
import { redoChange, takeWays, undoChange } from '../../../renderer/actions/take-way.ts';
import { findWays, hideWaysOnChange } from '../../../renderer/actions/ways.ts';
import { setHost } from '../../../renderer/host/ask.ts';
import type { Client } from '../../../renderer/host/client.ts';
import { changedFrom, isMadeHere, madeHere, undone } from '../../../renderer/state/changed.ts';
import { report } from '../../../renderer/state/check.ts';
import { notice } from '../../../renderer/state/happening.ts';
import { vehicleId, vehicles } from '../../../renderer/state/kept.ts';
import { openedDrive } from '../../../renderer/state/opened.ts';
import { lookedAt, raisedWays, ways } from '../../../renderer/state/ways.ts';

type Request = Record<string, unknown>;
let asked: { name: string; request: Request }[];
let answers: Record<string, (request: Request) => unknown>;

const source = { kind: 'sample', id: 'barred' } as const;
const leg = { kind: 'stretch', line: [54, 9, 54.01, 9], alongM: [0, 1112] };
const followed = (driveId: string) =>
  ({
    driveId,
    name: 'Drive',
    file: 'd.gpx',
    tracks: [{}, {}],
    taken: 2,
    lengthM: 9000,
    legs: [leg],
  }) as never;
const way = (findingIds: string[], fromM: number, toM: number) =>
  ({ findingIds, fromM, toM, path: [[54, 9]], extraM: 100, extraS: 60 }) as unknown as WayRound;
const FOUND = {
  waysRound: [way(['a'], 100, 900), way(['a'], 50, 900), way(['b'], 3000, 4000)],
  noWayRound: [],
  wider: 'none',
};

beforeEach(() => {
  asked = [];
  let taken = 0;
  answers = {
    wayRound: () => ok(FOUND),
    takeWay: () => ok(followed(`changed-${++taken}`)),
    addFile: () =>
      ok({ source: { kind: 'upload', token: 'made-token' }, name: 'Drive.gpx', bytes: 9, use: 'drive' }),
  };
  const call = async (name: string, request: Request) => {
    asked.push({ name, request });
    return answers[name]?.(request) as never;
  };
  setHost({ call, addFile: () => call('addFile', {}) } as unknown as Client);
  openedDrive.value = { followed: followed('own'), source };
  vehicles.value = [{ id: 'v', card: { name: 'Van' } }] as never;
  vehicleId.value = 'v';
  report.value = { findings: [] } as unknown as DriveReport;
  for (const each of [ways, lookedAt, notice]) each.value = undefined;
  changedFrom.value = [];
  undone.value = [];
  madeHere.value = [];
});

describe('ways that are looked for', () => {
  it('are asked for past one finding with what the check is made of, and the first stands out', async () => {
    await findWays('a');
    expect(asked[0]).toMatchObject({ name: 'wayRound', request: { driveId: 'own', past: ['a'] } });
    expect(raisedWays.value).toEqual([0]);
    expect(ways.value?.found?.waysRound.map(({ findingIds }) => findingIds)).toEqual([['a'], ['a']]);
    lookedAt.value = 1;
    expect(raisedWays.value).toEqual([1]);
  });

  it('past all that bars the drive stand out as they are driven together', async () => {
    await findWays();
    expect(asked[0]?.request).not.toHaveProperty('past');
    expect(raisedWays.value).toEqual([0, 2]);
  });

  it('leave a sentence where nobody could look, and nothing where they were cancelled', async () => {
    answers['wayRound'] = () => fail('no-graph', 'The roads could not be laid out.');
    await findWays('a');
    expect(ways.value).toEqual({ past: 'a', problem: 'The roads could not be laid out.' });
    answers['wayRound'] = () => fail('cancelled', 'Cancelled.');
    await findWays('a');
    expect(ways.value).toBeUndefined();
  });

  it('go when the check is another', async () => {
    const end = hideWaysOnChange();
    await findWays('a');
    report.value = { findings: [] } as unknown as DriveReport;
    expect(ways.value).toBeUndefined();
    end();
  });
});

describe('ways that are taken', () => {
  it('go into the drive from its far end, so that the metres of the others hold', async () => {
    await findWays();
    await takeWays([0, 2], 'Past all of it.');
    const takes = asked.filter(({ name }) => name === 'takeWay').map(({ request }) => request);
    expect(takes).toMatchObject([
      { driveId: 'own', fromM: 3000, toM: 4000 },
      { driveId: 'changed-1', fromM: 100, toM: 900 },
    ]);
    expect(openedDrive.value).toMatchObject({
      followed: { driveId: 'changed-2', taken: 1 },
      source: { token: 'made-token' },
      insteadOf: 'own',
    });
    expect(isMadeHere.value).toBe(true);
  });

  it('are taken back and taken again', async () => {
    await findWays('a');
    await takeWays([0], 'Past A.');
    undoChange();
    expect(openedDrive.value).toMatchObject({ followed: { driveId: 'own', taken: 2 }, source });
    expect(isMadeHere.value).toBe(false);
    redoChange();
    expect(openedDrive.value?.followed.driveId).toBe('changed-1');
    expect(changedFrom.value.map(({ say }) => say)).toEqual(['Past A.']);
  });

  it('leave the drive as it was where one of them could not be put in, and say why', async () => {
    await findWays('a');
    answers['takeWay'] = () => fail('no-drive', 'That drive is not open any more.');
    await takeWays([0], 'Past A.');
    expect(openedDrive.value?.followed.driveId).toBe('own');
    expect(notice.value?.say).toBe('That drive is not open any more.');
    expect(changedFrom.value).toEqual([]);
  });
});
