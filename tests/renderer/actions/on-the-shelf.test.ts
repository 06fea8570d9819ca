import { beforeEach, describe, expect, it, vi } from 'vitest';
import { fail, ok } from '../../../geo/result.ts';
import type { Description } from '../../../main/contract/description.ts';
import type { FetchPlan } from '../../../main/contract/fetch.ts';
import { beginPlan, closePlan, planMapReady } from '../../../renderer/actions/begin-plan.ts';
import { agree, beginFetch, planBoth } from '../../../renderer/actions/fetch-map.ts';
import { keepOpened } from '../../../renderer/actions/keep-map.ts';
import { openWanted } from '../../../renderer/actions/open.ts';
import { setHost } from '../../../renderer/host/ask.ts';
import type { Client } from '../../../renderer/host/client.ts';
import { fetching, planned, underWay } from '../../../renderer/state/fetching.ts';
import { notice, shelfWork } from '../../../renderer/state/happening.ts';
import { description, vehicles } from '../../../renderer/state/kept.ts';
import { openedDrive, openedMap } from '../../../renderer/state/opened.ts';
import { dialog } from '../../../renderer/state/page.ts';
import { plan } from '../../../renderer/state/plan.ts';
import { shelfTold } from '../../../renderer/state/shelf.ts';

type Answer = ReturnType<typeof ok> | ReturnType<typeof fail>;
type Request = Record<string, unknown>;
type Answers = Record<string, (request: Request, signal: AbortSignal) => Answer | Promise<Answer>>;

let asked: { name: string; request: Request }[];
let answers: Answers;
let maps: string[];
let offMapM: number;

const source = { kind: 'upload', token: 'drive-token' } as const;
const DRIVE = { source, track: 1 };
const FILE = { kind: 'path', token: 'own-map-token' } as const;
const FILE_OPEN = { summary: { name: 'vale.osm.pbf' } as never, source: FILE };

const sayMap = ({ source: from }: Request) => ({
  name: 'map',
  ...((from as { kind: string }).kind === 'shelf' ? { shelf: { maps, damaged: [], bare: [] } } : {}),
});
const followed = () => ({
  driveId: 'd',
  taken: 1,
  tracks: [{}],
  lengthM: 10_000,
  match: { drivenM: 10_000 - offMapM, offMapM, guessedM: 0 },
});
const USUAL: Answers = {
  openMap: (request) => ok(sayMap(request)),
  openDrive: () => ok(followed()),
  describe: () => ok({ recents: [], shelfMaps: maps.length }),
  shelf: () => ok({ folder: '', bytes: 0, maps: maps.map((name) => ({ name })) }),
  mapChanges: () => ok({ drives: [] }),
};

beforeEach(() => {
  asked = [];
  answers = { ...USUAL };
  maps = ['Vale'];
  offMapM = 0;
  const call: Client['call'] = async (name, request, options) => {
    asked.push({ name, request: request as Request });
    const signal = options?.signal ?? new AbortController().signal;
    return (await answers[name]?.(request as Request, signal)) as never;
  };
  setHost({ call, addFile: call } as unknown as Client);
  description.value = { recents: [], shelfMaps: 1 } as unknown as Description;
  for (const each of [openedMap, openedDrive, notice, fetching, underWay, dialog, shelfTold, shelfWork])
    each.value = undefined;
  vehicles.value = [];
});

const opened = () =>
  asked
    .filter(({ name }) => name === 'openMap')
    .map(({ request }) => (request['source'] as { kind: string }).kind);

describe('a drive opened alone', () => {
  it('is followed on the shelf', async () => {
    await openWanted({ drive: { source } });
    expect(asked[0]).toEqual({ name: 'openMap', request: { source: { kind: 'shelf' }, about: source } });
    expect(openedMap.value?.source).toEqual({ kind: 'shelf' });
    expect(notice.value).toBeUndefined();
  });

  it("stays on the user's own file, and leaves it for the shelf where most of it lies off", async () => {
    openedMap.value = FILE_OPEN;
    await openWanted({ drive: { source } });
    expect(opened()).toEqual([]);
    offMapM = 6000;
    await openWanted({ drive: { source } });
    expect(opened()).toEqual(['shelf']);
    expect(notice.value?.say).toBe(
      'Most of this drive lies off vale.osm.pbf: it is held against your shelf instead.',
    );
  });

  it('stays on that file where the map was named with it', async () => {
    offMapM = 6000;
    await openWanted({ map: { source: FILE }, drive: { source } });
    expect(opened()).toEqual(['path']);
  });

  it('is opened on the open map where the shelf cannot be read, which is said with a way to it', async () => {
    openedMap.value = { summary: {} as never, source: { kind: 'sample', id: 'district' } };
    answers['openMap'] = () => fail('shelf.damaged', 'No map on the shelf can be read.');
    await openWanted({ drive: { source } });
    expect(openedDrive.value?.source).toEqual(source);
    expect(notice.value).toMatchObject({
      kind: 'error',
      say: 'No map on the shelf can be read. The drive is held against the open map instead.',
      offers: [{ say: 'Look at the shelf…' }],
    });
  });

  it('is told of a damaged map that lies along it', async () => {
    answers['openMap'] = () => ok({ name: 'map', shelf: { maps, damaged: ['Vale'], bare: [] } });
    await openWanted({ drive: { source } });
    expect(notice.value?.say).toContain('On your shelf Vale is damaged');
  });
});

const LINE = {
  by: 'line',
  host: 'h',
  queries: 1,
  bytes: 1,
  seconds: 1,
  say: [],
  today: { queries: 0, bytes: 0 },
};
const region = (step: string): FetchPlan =>
  ({ by: 'region', host: 'h', step, say: [], regions: [] }) as unknown as FetchPlan;
const fetches = () => asked.filter(({ name }) => name === 'fetchMap').map(({ request }) => request);

describe('fetching the map of a drive', () => {
  it('sends nothing before a yes', async () => {
    answers['planFetch'] = ({ by }) => (by === 'line' ? ok(LINE) : fail('x', 'No list can be read.'));
    await planBoth(DRIVE, new AbortController().signal);
    expect(planned.value).toEqual({ line: LINE, region: { problem: 'No list can be read.' } });
    beginFetch(DRIVE, LINE as unknown as FetchPlan);
    expect(dialog.value).toBe('fetch');
    expect(asked.map(({ name }) => name)).toEqual(['planFetch', 'planFetch']);
  });

  it('by region takes a yes for each step, and the next one stands in the same dialog', async () => {
    answers['fetchMap'] = ({ step }) =>
      step === 'index'
        ? ok({ kind: 'plan', plan: region('sizes') })
        : ok({ kind: 'plan', plan: region('maps') });
    beginFetch(DRIVE, region('index'));
    await agree({ keepFiles: false });
    expect([dialog.value, fetching.value?.plan]).toEqual(['fetch', region('sizes')]);
    await agree({ keepFiles: false });
    expect(fetching.value).toMatchObject({ plan: region('maps'), busy: false });
    answers['fetchMap'] = () => ok({ kind: 'maps', maps: ['Vale'], lacking: [], notes: [] });
    await agree({ keepFiles: true });
    expect(dialog.value).toBeUndefined();
    expect(fetches()).toEqual([
      { ...DRIVE, by: 'region', step: 'index' },
      { ...DRIVE, by: 'region', step: 'sizes' },
      { ...DRIVE, by: 'region', step: 'maps', keepFiles: true },
    ]);
  });

  it('tells of the next step where its dialog was closed meanwhile', async () => {
    beginFetch(DRIVE, region('index'));
    answers['fetchMap'] = () => {
      dialog.value = undefined;
      return ok({ kind: 'plan', plan: region('sizes') });
    };
    await agree({ keepFiles: false });
    expect([dialog.value, notice.value?.kind]).toEqual([undefined, 'note']);
    notice.value?.offers?.[0]?.act();
    expect([dialog.value, fetching.value?.plan]).toEqual(['fetch', region('sizes')]);
  });

  it('goes on while another drive is opened, and then offers the drive it was for', async () => {
    let come: (answer: Answer) => void = () => {};
    answers['fetchMap'] = () => new Promise((resolve) => (come = resolve));
    beginFetch(DRIVE, LINE as unknown as FetchPlan);
    const done = agree({ keepFiles: false });
    await vi.waitFor(() => expect(shelfWork.value?.what).toBe('Fetching the map of the drive'));
    const other = { kind: 'upload', token: 'other-token' } as const;
    await openWanted({ drive: { source: other } });
    expect([openedDrive.value?.source, underWay.value]).toEqual([other, DRIVE]);
    come(
      ok({ kind: 'maps', maps: ['Line'], lacking: [{ fromM: 0, toM: 2500 }], notes: ['Zones not asked.'] }),
    );
    await done;
    expect(shelfWork.value).toBeUndefined();
    expect(openedDrive.value?.source).toEqual(other);
    expect(notice.value?.say).toBe(
      'The map has come: Line is on your shelf. 2.5 km of the drive have no road in what came: what is there is unknown. Zones not asked.',
    );
    expect(notice.value?.offers?.map(({ say }) => say)).toEqual(['Open that drive']);
  });

  it('has the open drive followed again on what has come', async () => {
    await openWanted({ drive: { source } });
    answers['fetchMap'] = () => ok({ kind: 'maps', maps: ['Line'], lacking: [], notes: [] });
    beginFetch(DRIVE, LINE as unknown as FetchPlan);
    await agree({ keepFiles: false });
    expect(opened()).toEqual(['shelf', 'shelf']);
    expect(asked.filter(({ name }) => name === 'openDrive')).toHaveLength(2);
  });

  it('that is cancelled or refused can be gone on with', async () => {
    answers['fetchMap'] = (_, signal) =>
      new Promise((resolve) => {
        signal.addEventListener('abort', () => resolve(fail('cancelled', 'Cancelled.')));
      });
    beginFetch(DRIVE, LINE as unknown as FetchPlan);
    const done = agree({ keepFiles: false });
    await vi.waitFor(() => expect(shelfWork.value).toBeDefined());
    shelfWork.value?.stop();
    await done;
    expect(notice.value).toMatchObject({ kind: 'note', offers: [{ say: 'Go on fetching…' }] });
    notice.value = undefined;
    answers['fetchMap'] = () => fail('fetch.silent', 'The server does not answer.');
    beginFetch(DRIVE, region('index'));
    await agree({ keepFiles: false });
    expect(fetching.value).toMatchObject({ busy: false, problem: 'The server does not answer.' });
  });
});

describe('a map file kept on the shelf', () => {
  it('is no longer needed for the drive that is open on it', async () => {
    openedMap.value = FILE_OPEN;
    openedDrive.value = { followed: followed() as never, source };
    answers['importMap'] = () => ok({ name: 'vale', roads: 1200 });
    await keepOpened(FILE, 'vale.osm.pbf');
    expect(asked.find(({ name }) => name === 'importMap')?.request).toEqual({ source: FILE });
    expect(openedMap.value?.source).toEqual({ kind: 'shelf' });
    expect(notice.value?.say).toBe(
      'vale is on your shelf, with 1,200 roads. Drives there use it from now on.',
    );
  });

  it('is said to stand beside a map of that name which lies elsewhere, and to be of no use without a road', async () => {
    openedMap.value = FILE_OPEN;
    answers['importMap'] = () => ok({ name: 'vale 2', roads: 1, beside: 'vale' });
    await keepOpened(FILE, 'vale.osm.pbf');
    expect(notice.value?.say).toContain('vale lies in another place and stays as it was.');
    answers['importMap'] = () => ok({ name: 'vale', roads: 0 });
    await keepOpened(FILE, 'vale.osm.pbf');
    expect(notice.value?.say).toContain('no drive can be checked on it');
  });

  it('that cannot be taken in leaves the drive on it', async () => {
    openedMap.value = FILE_OPEN;
    answers['importMap'] = () => fail('shelf.full', 'The disk is full.');
    await keepOpened(FILE, 'vale.osm.pbf');
    expect(openedMap.value?.source).toEqual(FILE);
    expect(notice.value).toMatchObject({ kind: 'error', say: 'The disk is full.' });
  });
});

describe('a plan begun', () => {
  const sample = { source: { kind: 'sample', id: 'district' } } as const;

  it('while a drive is still being opened is not taken away by it, and closing it opens that drive', async () => {
    let come: (answer: Answer) => void = () => {};
    answers['openDrive'] = () => new Promise((resolve) => (come = resolve));
    const loading = openWanted({ map: sample, drive: { source } });
    await vi.waitFor(() => expect(asked.some(({ name }) => name === 'openDrive')).toBe(true));
    beginPlan();
    come(ok(followed()));
    await loading;
    await planMapReady();
    expect(plan.value?.places.now).toEqual([]);
    expect([openedDrive.value, notice.value]).toEqual([undefined, undefined]);
    expect(openedMap.value?.source).toEqual({ kind: 'shelf' });
    answers['openDrive'] = () => ok(followed());
    closePlan();
    await vi.waitFor(() => expect(openedDrive.value?.source).toEqual(source));
    expect(opened()).toEqual(['sample', 'shelf', 'sample']);
  });

  it('over the sample is made on the shelf; over a file of the user’s own it stays there', async () => {
    await openWanted({ map: sample, drive: { source } });
    beginPlan();
    await planMapReady();
    expect(openedMap.value?.source).toEqual({ kind: 'shelf' });
    closePlan();
    await vi.waitFor(() => expect(openedDrive.value?.source).toEqual(source));
    expect(openedMap.value?.source).toEqual(sample.source);
    openedMap.value = FILE_OPEN;
    beginPlan();
    await planMapReady();
    expect(openedMap.value).toBe(FILE_OPEN);
    closePlan();
    expect(openedDrive.value?.source).toEqual(source);
  });
});
