import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { MessageChannel, receiveMessageOnPort } from 'node:worker_threads';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { Engine } from '../../../../main/services/engine/engine.ts';
import { openEngine } from '../../../../main/services/engine/open-engine.ts';
import type { EngineHandlers, FromEngine } from '../../../../main/services/engine/protocol.ts';
import { serveEngine } from '../../../../main/services/engine/serve.ts';
import { COACH_BUILT } from '../../contract/cards.ts';
import { scriptedThread } from './scripted-thread.ts';

let engine: Engine | undefined;
afterEach(async () => {
  await engine?.close();
  vi.restoreAllMocks();
});

const hooks = (signal = new AbortController().signal) => ({ signal, onProgress: () => {} });
const file = (name: string) => ({ file: { path: '', name } });
const codeOf = (reply: { ok: boolean; error?: { code: string } }) => reply.error?.code;

/** Three in ten are given up, among them the first, which is at work already. */
const GIVEN_UP = Array.from({ length: 100 }, (_, i) => i).filter((i) => i % 10 < 3);

/** Asks a hundred checks at once and gives thirty of them up. @returns each one's answer */
async function askAHundred(asked: Engine, request: (i: number) => object) {
  const stops = Array.from({ length: 100 }, () => new AbortController());
  const replies = stops.map((stop, i) => asked.ask('check', request(i) as never, hooks(stop.signal)));
  await new Promise((resolve) => setTimeout(resolve, 5));
  for (const i of GIVEN_UP) stops[i]!.abort();
  return Promise.all(replies);
}

describe('a hundred checks at once, of which thirty are given up', () => {
  it('have seventy right answers, though one of the thirty never let go of its thread', async () => {
    vi.spyOn(console, 'error').mockImplementation(() => {});
    engine = openEngine(scriptedThread, 30);
    await engine.ask('openMap', file('district'), hooks());
    await engine.ask('openDrive', { driveId: 'd', ...file('a.gpx') }, hooks());
    const replies = await askAHundred(engine, (i) => ({ driveId: 'd', made: i === 0 ? 'busy' : ` as ${i}` }));
    for (const [i, reply] of replies.entries())
      if (GIVEN_UP.includes(i)) expect(codeOf(reply)).toBe('cancelled');
      else expect(reply).toEqual({ ok: true, value: `checked d on district as ${i}` });
  });

  it('are each held against their own vehicle, on the real thread', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'lanegauge-hundred-'));
    try {
      const map = join(folder, 'lane.osm');
      const drive = join(folder, 'lane.gpx');
      await writeFile(map, LANE);
      await writeFile(drive, ALONG_IT);
      engine = openEngine();
      await engine.ask('openMap', { file: { path: map, name: 'lane.osm' } }, hooks());
      await engine.ask('openDrive', { driveId: 'd', file: { path: drive, name: 'lane.gpx' } }, hooks());
      // the sign says 3 m: every other vehicle is too high
      const heightOf = (i: number) => (i % 2 === 0 ? 2.5 : 3.2);
      const replies = await askAHundred(engine, (i) => ({
        driveId: 'd',
        made: String(i),
        vehicle: { ...COACH_BUILT, heightM: heightOf(i) },
      }));
      for (const [i, reply] of replies.entries()) {
        if (!reply.ok) {
          expect([i, reply.error.code, GIVEN_UP.includes(i)]).toEqual([i, 'cancelled', true]);
          continue;
        }
        expect([reply.value.made, reply.value.vehicle.heightM]).toEqual([String(i), heightOf(i)]);
        expect(reply.value.verdict === 'barred').toBe(i % 2 === 1);
      }
      expect(replies.filter((reply) => reply.ok).length).toBeGreaterThanOrEqual(70);
    } finally {
      await rm(folder, { recursive: true, force: true });
    }
  });
});

describe('work that is given up', () => {
  it('while it waits its turn is answered at once, however long the work before it takes', async () => {
    engine = openEngine(scriptedThread);
    const long = new AbortController();
    const before = engine.ask('openMap', file('wait'), hooks(long.signal));
    const stop = new AbortController();
    const behind = engine.ask('openMap', file('district'), hooks(stop.signal));
    stop.abort();
    expect(codeOf(await behind)).toBe('cancelled');
    long.abort();
    expect(codeOf(await before)).toBe('cancelled');
  });

  it('takes nobody with it when its thread has to be ended', async () => {
    engine = openEngine(scriptedThread, 30);
    await engine.ask('openMap', file('district'), hooks());
    const stop = new AbortController();
    const busy = engine.ask('openMap', file('busy'), hooks(stop.signal));
    const instead = engine.ask('openDrive', { driveId: 'd', ...file('a.gpx') }, hooks());
    stop.abort();
    expect(codeOf(await busy)).toBe('cancelled');
    expect(await instead).toEqual({ ok: true, value: 'd on district' });
  });

  it('stops by itself where it looks up, though it lets no message in', async () => {
    const { port1, port2 } = new MessageChannel();
    const forEver: EngineHandlers['check'] = async (_, { lookUp }) => {
      for (port1.postMessage({ kind: 'cancel', id: 1 }); ; ) lookUp();
    };
    const handlers = { check: forEver } as Partial<EngineHandlers> as EngineHandlers;
    const replied = new Promise<FromEngine>((resolve) => port1.on('message', resolve));
    serveEngine(port2, handlers, () => receiveMessageOnPort(port2)?.message);
    port1.postMessage({ kind: 'ask', id: 1, name: 'check', request: {} });
    expect(await replied).toMatchObject({ id: 1, result: { ok: false, error: { code: 'cancelled' } } });
    port1.close();
  });
});

/** Weir Lane, 2 km to the north, may be passed up to 3.0 m. */
const LANE = `<?xml version="1.0"?><osm version="0.6"><node id="1" lat="50" lon="-1"/><node id="2" lat="50.018" lon="-1"/>
<way id="11"><nd ref="1"/><nd ref="2"/><tag k="highway" v="tertiary"/><tag k="maxheight" v="3"/></way></osm>`;
const ALONG_IT = `<?xml version="1.0"?><gpx version="1.1" creator="t" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>${Array.from(
  { length: 40 },
  (_, i) => `<trkpt lat="${50.0005 + (0.017 * i) / 39}" lon="-1"/>`,
).join('')}</trkseg></trk></gpx>`;
