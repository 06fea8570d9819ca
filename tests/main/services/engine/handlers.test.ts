import { mkdtemp, rm, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CALLS } from '../../../../main/contract/calls.ts';
import { createEngine } from '../../../../main/services/engine/engine.ts';
import { createHandlers } from '../../../../main/services/engine/handlers.ts';
import type { EngineHandlers } from '../../../../main/services/engine/protocol.ts';
import { spawnEngine } from '../../../../main/services/engine/spawn.ts';
import { COACH_BUILT } from '../../contract/cards.ts';

/** Weir Lane runs north for 2 km; in its middle third it may be passed up to 3.0 m. */
const MAP = `<?xml version="1.0"?><osm version="0.6">
${[0, 1, 2, 3].map((i) => `<node id="${i + 1}" lat="${50 + i * 0.006}" lon="-1"/>`).join('')}
<way id="11"><nd ref="1"/><nd ref="2"/><tag k="highway" v="tertiary"/><tag k="name" v="Weir Lane"/></way>
<way id="12"><nd ref="2"/><nd ref="3"/><tag k="highway" v="tertiary"/><tag k="name" v="Weir Lane"/><tag k="maxheight" v="3"/></way>
<way id="13"><nd ref="3"/><nd ref="4"/><tag k="highway" v="tertiary"/><tag k="name" v="Weir Lane"/></way>
</osm>`;

const track = (name: string, to: number) =>
  `<trk><name>${name}</name><trkseg>${Array.from({ length: 40 }, (_, i) => `<trkpt lat="${50.0005 + (to * i) / 39}" lon="-1"/>`).join('')}</trkseg></trk>`;
const DRIVE = `<?xml version="1.0"?><gpx version="1.1" creator="t" xmlns="http://www.topografix.com/GPX/1/1">${track('2', 0.017)}${track('Short', 0.004)}</gpx>`;

let folder: string;
const named = (name: string) => ({ path: join(folder, `copy-of-${name}`), name });
const hooks = (onProgress: (work: unknown) => void = () => {}) => ({
  signal: new AbortController().signal,
  onProgress,
  lookUp: () => {},
});

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'lanegauge-engine-'));
  await writeFile(named('lane.osm').path, MAP);
  await writeFile(named('lane.gpx').path, DRIVE);
  await writeFile(named('broken.gpx').path, '<gpx');
  await writeFile(named('broken.osm').path, '<osm');
});
afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
});

async function withMap(): Promise<EngineHandlers> {
  const handlers = createHandlers();
  const opened = await handlers.openMap({ file: named('lane.osm') }, hooks());
  if (!opened.ok) throw new Error(opened.error.message);
  return handlers;
}
const check = (handlers: EngineHandlers, more: object = {}) =>
  handlers.check({ driveId: 'd', vehicle: COACH_BUILT, made: '2026-05-01T09:00:00Z', ...more }, hooks());

describe('the engine, asked in turn', () => {
  it('does not read a map again that is open and was not written to since, and keeps its drives', async () => {
    const handlers = await withMap();
    await handlers.openDrive({ driveId: 'd', file: named('lane.gpx'), track: 1 }, hooks());
    const works: unknown[] = [];
    const reopen = () =>
      handlers.openMap(
        { file: named('lane.osm') },
        hooks((work) => works.push(work)),
      );
    expect((await reopen()).ok).toBe(true);
    expect(works).toEqual([]);
    expect((await check(handlers)).ok).toBe(true);
    const later = new Date(Date.now() + 60_000);
    await utimes(named('lane.osm').path, later, later);
    expect((await reopen()).ok).toBe(true);
    expect(works).not.toEqual([]);
    expect((await check(handlers)).ok).toBe(false);
  });

  it('follows a drive once for all pages that open it, and anew when its file was changed', async () => {
    const handlers = await withMap();
    let lookedUp = 0;
    const open = (driveId: string, name = 'lane.gpx', track = 1) =>
      handlers.openDrive(
        { driveId, file: named(name), track },
        { ...hooks(), lookUp: () => void lookedUp++ },
      );
    const first = await open('d');
    expect(lookedUp).toBeGreaterThan(0);
    lookedUp = 0;
    const again = await open('e');
    expect(lookedUp).toBe(0);
    expect(again).toEqual({ ok: true, value: { ...(first.ok && first.value), driveId: 'e' } });
    expect((await check(handlers, { driveId: 'e' })).ok).toBe(true);
    await open('f', 'lane.gpx', 2);
    expect(lookedUp).toBeGreaterThan(0);
    lookedUp = 0;
    await writeFile(named('changed.gpx').path, DRIVE.replace('50.0005', '50.0006'));
    await open('g', 'changed.gpx');
    expect(lookedUp).toBeGreaterThan(0);
  });

  it('opens a map and tells what it holds, under the name the user knows', async () => {
    const handlers = createHandlers();
    const opened = await handlers.openMap({ file: named('lane.osm') }, hooks());
    if (!opened.ok) throw new Error(opened.error.message);
    expect(CALLS.openMap.value.parse(opened.value)).toMatchObject({
      name: 'lane.osm',
      sources: [{ name: 'lane.osm' }],
      roads: 3,
      bounds: { south: 50, west: -1, north: 50.018, east: -1 },
    });
  });

  it('checks a drive with a load, and refuses one for a card without its empty weight', async () => {
    const handlers = await withMap();
    await handlers.openDrive({ driveId: 'd', file: named('lane.gpx') }, hooks());
    const load = { format: 'lanegauge.load', version: 1, items: [{ name: 'Box', massKg: 500, xM: 3 }] };
    const runningOrder = { frontKg: 1600, rearKg: 1500, includesDriver: true, includesFreshWater: false };
    const checked = await check(handlers, { load, vehicle: { ...COACH_BUILT, runningOrder } });
    expect(checked.ok && checked.value.load).toMatchObject({ over: expect.arrayContaining(['gross']) });
    expect(checked.ok && checked.value.cautions[1]).toContain('must not leave as loaded');
    const { runningOrder: _, ...without } = { ...COACH_BUILT, runningOrder };
    const refused = await check(handlers, { load, vehicle: without });
    expect(refused.ok ? '' : refused.error.message).toContain('has no empty weight');
  });

  it('follows a drive and gives its line with distances that only grow', async () => {
    const handlers = await withMap();
    const opened = await handlers.openDrive({ driveId: 'd', file: named('lane.gpx') }, hooks());
    if (!opened.ok) throw new Error(opened.error.message);
    const view = CALLS.openDrive.value.parse(opened.value);
    expect(view).toMatchObject({ file: 'lane.gpx', name: '2', taken: 1 });
    expect(view.tracks.map(({ name, positions }) => [name, positions])).toEqual([
      ['2', 40],
      ['Short', 40],
    ]);
    expect(view.lengthM).toBeGreaterThan(1850);
    const along = view.legs.flatMap((leg) => leg.alongM);
    expect(along).toEqual([...along].sort((a, b) => a - b));
    expect([along[0], along.at(-1)]).toEqual([0, expect.closeTo(view.lengthM, 1)]);
    for (const leg of view.legs) expect(leg.line).toHaveLength(2 * leg.alongM.length);
    expect(view.legs.map((leg) => (leg.kind === 'stretch' ? leg.way : leg.kind))).toEqual([11, 12, 13]);
  });

  it('takes the track by its place in the list, even when another is called by that number', async () => {
    const handlers = await withMap();
    const second = await handlers.openDrive({ driveId: 'd', file: named('lane.gpx'), track: 2 }, hooks());
    expect(second.ok && [second.value.name, second.value.taken]).toEqual(['Short', 2]);
    const third = await handlers.openDrive({ driveId: 'd', file: named('lane.gpx'), track: 3 }, hooks());
    expect(third).toMatchObject({ ok: false, error: { code: 'route.unknown' } });
  });

  it('checks a drive as often as asked: another vehicle or margin, no new match', async () => {
    const handlers = await withMap();
    await handlers.openDrive({ driveId: 'd', file: named('lane.gpx') }, hooks());
    const barred = await check(handlers);
    expect(barred.ok && CALLS.check.value.parse(barred.value).verdict).toBe('barred');
    const low = { ...COACH_BUILT, heightM: 2.8 };
    const margins = { heightM: 0.2, physicalWidthM: 0 };
    const verdicts = await Promise.all([
      check(handlers, { vehicle: low, margins: { ...margins, heightM: 0.1 } }),
      check(handlers, { vehicle: low, margins }),
    ]);
    const levels = verdicts.map((each) =>
      each.ok
        ? each.value.findings.filter(({ subject }) => subject === 'height').map(({ level }) => level)
        : [],
    );
    expect(levels).toEqual([[], ['tight']]);
  });

  it('refuses in sentences that name the file as the user knows it, and keeps the open map', async () => {
    const handlers = await withMap();
    for (const refused of [
      await handlers.openMap({ file: named('broken.osm') }, hooks()),
      await handlers.openMap({ file: named('absent.osm') }, hooks()),
      await handlers.openDrive({ driveId: 'x', file: named('broken.gpx') }, hooks()),
      await handlers.openDrive({ driveId: 'x', file: named('absent.gpx') }, hooks()),
    ]) {
      if (refused.ok) throw new Error('taken');
      expect(refused.error.message).toMatch(/(broken|absent)\.(osm|gpx)/);
      expect(refused.error.message).not.toContain('copy-of');
    }
    expect((await handlers.openDrive({ driveId: 'd', file: named('lane.gpx') }, hooks())).ok).toBe(true);
  });

  it('looks up while it follows a drive and while it checks one, and stops where it was given up', async () => {
    const handlers = await withMap();
    const givenUp = () => {
      throw new Error('given up');
    };
    const stopped = { ...hooks(), lookUp: givenUp };
    const drive = { driveId: 'd', file: named('lane.gpx') };
    await expect(handlers.openDrive(drive, stopped)).rejects.toThrow('given up');
    await handlers.openDrive(drive, hooks());
    const question = { driveId: 'd', vehicle: COACH_BUILT, made: '' };
    await expect(handlers.check(question, stopped)).rejects.toThrow('given up');
    expect((await check(handlers)).ok).toBe(true);
  });

  it('says so when nothing is open', async () => {
    const handlers = createHandlers();
    expect(await check(handlers)).toMatchObject({ error: { code: 'no-map' } });
    expect(await handlers.openDrive({ driveId: 'd', file: named('lane.gpx') }, hooks())).toMatchObject({
      error: { code: 'no-map' },
    });
    expect(await check(await withMap())).toMatchObject({ error: { code: 'no-drive' } });
  });

  it('forgets the drives of an earlier map', async () => {
    const handlers = await withMap();
    await handlers.openDrive({ driveId: 'd', file: named('lane.gpx') }, hooks());
    await handlers.openMap({ file: named('lane.osm'), about: named('lane.gpx') }, hooks());
    expect(await check(handlers)).toMatchObject({ error: { code: 'no-drive' } });
  });

  it('keeps what lies about a drive when asked to', async () => {
    const handlers = createHandlers();
    const opened = await handlers.openMap({ file: named('lane.osm'), about: named('lane.gpx') }, hooks());
    expect(opened.ok && opened.value.roads).toBe(3);
  });
});

describe('the engine on its own thread', () => {
  it('does the same, and lets go when cancelled', async () => {
    const engine = createEngine(spawnEngine);
    try {
      const work: unknown[] = [];
      const opened = await engine.ask(
        'openMap',
        { file: named('lane.osm') },
        hooks((each) => work.push(each)),
      );
      expect(opened.ok && opened.value.roads).toBe(3);
      const drive = await engine.ask(
        'openDrive',
        { driveId: 'd', file: named('lane.gpx') },
        hooks((each) => work.push(each)),
      );
      expect(drive.ok && drive.value.legs).toHaveLength(3);
      expect(work).toContainEqual({ what: 'Following the drive' });
      const report = await engine.ask('check', { driveId: 'd', vehicle: COACH_BUILT, made: '' }, hooks());
      expect(report.ok && report.value.verdict).toBe('barred');
    } finally {
      await engine.close();
    }
  });
});
