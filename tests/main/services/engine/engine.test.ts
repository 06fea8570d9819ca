import { afterEach, describe, expect, it, vi } from 'vitest';
import { createEngine, type Engine } from '../../../../main/services/engine/engine.ts';
import { reopeningEngine } from '../../../../main/services/engine/reopening-engine.ts';
import { scriptedThread } from './scripted-thread.ts';

let threads = 0;
const spawn = () => {
  threads++;
  return scriptedThread();
};

let engine: Engine | undefined;
afterEach(async () => {
  await engine?.close();
  vi.restoreAllMocks();
});
const open = (letGoMs?: number) => {
  threads = 0;
  vi.spyOn(console, 'error').mockImplementation(() => {});
  engine = createEngine(spawn, letGoMs);
  return engine;
};
const hooks = (signal = new AbortController().signal, onProgress: () => void = () => {}) => ({
  signal,
  onProgress,
});
const file = (name: string) => ({ file: { path: '', name } });
const drive = (driveId: string, name = 'a.gpx') => ({ driveId, ...file(name) });
const check = (driveId: string) => ({ driveId, made: '' }) as never;

describe('the engine', () => {
  it('starts its thread when first asked, and keeps it', async () => {
    const engine = open();
    expect(threads).toBe(0);
    await engine.ask('openMap', file('district'), hooks());
    expect(await engine.ask('openDrive', drive('d'), hooks())).toEqual({ ok: true, value: 'd on district' });
    expect(threads).toBe(1);
  });

  it('warmed beforehand starts one thread, not two', async () => {
    const engine = open();
    engine.warm();
    engine.warm();
    await engine.ask('openMap', file('district'), hooks());
    expect(threads).toBe(1);
  });

  it.each([
    ['die', 'engine-stopped'],
    ['throw', 'engine-stopped'],
    ['full', 'engine-stopped'],
    ['gone', 'program-replaced'],
  ])('answers everybody when its thread ends (%s), and works again after', async (how, code) => {
    const engine = open();
    const replies = await Promise.all([
      engine.ask('openMap', file('wait'), hooks()),
      engine.ask('openMap', file(how), hooks()),
    ]);
    expect(replies.map((reply) => (reply.ok ? '' : reply.error.code))).toEqual([code, code]);
    expect((await engine.ask('openMap', file('district'), hooks())).ok).toBe(true);
    expect(threads).toBe(2);
  });

  it('passes a cancellation on', async () => {
    const engine = open();
    const stop = new AbortController();
    const reply = await engine.ask(
      'openMap',
      file('wait'),
      hooks(stop.signal, () => stop.abort()),
    );
    expect(reply.ok ? '' : reply.error.code).toBe('cancelled');
    expect((await engine.ask('openMap', file('district'), hooks())).ok).toBe(true);
    expect(threads).toBe(1);
  });

  it('ends a thread that does not let go of cancelled work', async () => {
    const engine = open(50);
    await engine.ask('openMap', file('district'), hooks());
    const stop = new AbortController();
    const busy = engine.ask('openMap', file('busy'), hooks(stop.signal));
    const behind = engine.ask('openDrive', drive('d'), hooks());
    stop.abort();
    expect((await busy).ok ? '' : ((await busy) as { error: { code: string } }).error.code).toBe('cancelled');
    expect(await behind).toMatchObject({ ok: false, error: { code: 'engine-stopped' } });
    expect(await engine.ask('openDrive', drive('d'), hooks())).toMatchObject({ error: { code: 'no-map' } });
  });

  it('asked too late does nothing', async () => {
    const engine = open();
    expect(await engine.ask('openMap', file('district'), hooks(AbortSignal.abort()))).toMatchObject({
      error: { code: 'cancelled' },
    });
    expect(threads).toBe(0);
  });
});

describe('a lasting engine', () => {
  it('opens the map and the drive again after its thread ended, and then checks', async () => {
    const lasting = reopeningEngine(open());
    await lasting.ask('openMap', file('district'), hooks());
    await lasting.ask('openDrive', drive('d'), hooks());
    await lasting.ask('openDrive', drive('x', 'die'), hooks());
    expect(await lasting.ask('check', check('d'), hooks())).toEqual({
      ok: true,
      value: 'checked d on district',
    });
    expect(threads).toBe(2);
  });

  it('never checks a drive of an earlier map', async () => {
    const lasting = reopeningEngine(open());
    await lasting.ask('openMap', file('district'), hooks());
    await lasting.ask('openDrive', drive('d'), hooks());
    await lasting.ask('openMap', file('coast'), hooks());
    expect(await lasting.ask('check', check('d'), hooks())).toMatchObject({ error: { code: 'no-drive' } });
  });

  it('keeps the old map when another could not be opened', async () => {
    const lasting = reopeningEngine(open());
    await lasting.ask('openMap', file('district'), hooks());
    await lasting.ask('openDrive', drive('d'), hooks());
    await lasting.ask('openMap', file('die'), hooks());
    expect(await lasting.ask('check', check('d'), hooks())).toMatchObject({ value: 'checked d on district' });
  });

  it('says so where nothing was ever open', async () => {
    const lasting = reopeningEngine(open());
    expect(await lasting.ask('check', check('d'), hooks())).toMatchObject({ error: { code: 'no-map' } });
  });
});
