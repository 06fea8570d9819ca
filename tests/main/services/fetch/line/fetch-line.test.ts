import { existsSync, readdirSync, readFileSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { PUBLIC_SERVERS } from '../../../../../main/contract/server-address.ts';
import { planLineFetch } from '../../../../../main/services/fetch/line/plan-line-fetch.ts';
import { fastPace } from '../../../../support/map-server/fast-pace.ts';
import * as bad from '../../../../support/map-server/misbehave.ts';
import { json } from '../../../../support/map-server/serve-overpass.ts';
import { dated } from '../../../../support/map-server/spoil.ts';
import { LONG, straightMap } from '../../../../support/map-server/straight-map.ts';
import { worked } from '../../../../support/scratch-files.ts';
import { dataFolder, trial } from './support.ts';

interface Merged {
  readonly elements: readonly {
    readonly type: string;
    readonly id: number;
    readonly tags?: Record<string, string>;
  }[];
  readonly osm3s: { readonly timestamp_osm_base?: string };
  readonly remark?: string;
}

function merged(path: string): Merged {
  return JSON.parse(readFileSync(path, 'utf8'));
}

function idsOf({ elements }: Merged): string[] {
  return elements.map(({ type, id }) => `${type[0]}${id}`);
}

describe('before anything is sent', () => {
  it('is told who would be asked, how much, and what they would learn', async () => {
    const { plan, server, plain } = await trial();
    const planned = worked(await plan());
    expect(server.asked).toEqual([]);
    expect(planned).toMatchObject({
      host: server.address.host,
      kept: 0,
      askedToday: { questions: 0, bytes: 0 },
      isShared: false,
    });
    expect(planned.questions).toBe(4);
    expect(planned.lengthM).toBeCloseTo(21_450, -3);
    expect(planned.estimate.packedBytes).toBeGreaterThan(100_000);
    expect(planned.estimate.packedBytes).toBeLessThan(5_000_000);
    expect(planned.estimate.seconds).toBeGreaterThan(20);
    expect(plain(planned.privacy)).toBe(
      'HOST is told where the drive runs, in about 4 questions in mixed order; where it begins and ends only as a square of about 3 km. No name, time, load or vehicle is sent: the program gives its own name and version. A question that is too much for the server is asked again in halves, one that it does not answer up to 4 times; after 10 minutes without any answer it is left alone.',
    );
    expect(planned.limits).toEqual([
      'Only what lies close to the drive is fetched; a way round needs the map of the region.',
    ]);
  });

  it('is told that the public server is shared, and what is no server or no drive', async () => {
    const { route } = straightMap();
    const options = { dataFolder: dataFolder(), pace: fastPace() };
    const shared = worked(await planLineFetch(route, { ...options, server: PUBLIC_SERVERS.line }));
    expect(shared.isShared).toBe(true);
    expect(shared.host).toBe('overpass-api.de');
    expect(await planLineFetch(route, { ...options, server: 'nowhere' })).toMatchObject({
      ok: false,
      error: { code: 'address' },
    });
    const still = { segments: [{ lat: Float64Array.of(1, 1), lon: Float64Array.of(2, 2) }] };
    expect(await planLineFetch(still, { ...options, server: PUBLIC_SERVERS.line })).toMatchObject({
      ok: false,
      error: { code: 'line.nowhere' },
    });
  });
});

describe('a drive fetched from a server that does its best', () => {
  it('comes as one map: its road, what stands on it, and the zone that holds it from afar', async () => {
    const { fetch, server } = await trial();
    const fetched = worked(await fetch());
    const map = merged(fetched.path);
    const ids = idsOf(map);
    expect(new Set(ids).size).toBe(ids.length);
    for (let way = 1001; way <= 1060; way++) expect(ids).toContain(`w${way}`);
    expect(ids).toEqual(expect.arrayContaining(['r2', 'w20', 'n20', 'n2030']));
    expect(map.elements.find(({ type, id }) => type === 'node' && id === 1030)?.tags ?? {}).toEqual({
      barrier: 'gate',
    });
    expect(map.osm3s.timestamp_osm_base).toBe('2026-11-20T00:00:00Z');
    expect(map).not.toHaveProperty('remark');
    expect(fetched).toMatchObject({
      notHad: [],
      areasTold: true,
      countries: ['XY'],
      baseDate: '2026-11-20T00:00:00Z',
    });
    expect(fetched.notes).toEqual([
      'Only what lies close to the drive is fetched; a way round needs the map of the region.',
    ]);
    expect(server.questions()).toHaveLength(4);
  });

  it('is asked for one question at a time, with a pause after each, by a program that says its name', async () => {
    const { fetch, server, pace } = await trial();
    worked(await fetch());
    expect(server.mostAtOnce()).toBe(1);
    expect(pace.waitsS).toEqual(Array(4).fill(1));
    for (const { headers } of server.asked) expect(headers['user-agent']).toMatch(/^Lanegauge\/\d/);
  });

  it('is asked for one question at a time even by two that fetch at once', async () => {
    const { fetch, server } = await trial();
    const both = await Promise.all([fetch(), fetch()]);
    expect(both.map(({ ok }) => ok)).toEqual([true, true]);
    expect(server.mostAtOnce()).toBe(1);
  });

  it('is never told where the drive begins and ends, nor all of it in order', async () => {
    const { fetch, server } = await trial({ count: LONG });
    worked(await fetch());
    const all = server.questions().join('\n');
    expect(all).not.toContain(',50,8,');
    expect(all).not.toContain(',50,9');
    const begins = server.questions().flatMap((text) => /around:180,50,([\d.]+)/u.exec(text)?.[1] ?? []);
    expect(begins.length).toBeGreaterThan(2);
    expect(begins).not.toEqual(begins.toSorted());
  });

  it('counts what was asked today, and begins anew tomorrow', async () => {
    const { fetch, plan, pace, folder } = await trial();
    worked(await fetch());
    const { askedToday } = worked(await plan());
    expect(askedToday.questions).toBe(4);
    expect(askedToday.bytes).toBeGreaterThan(1000);
    await pace.sleep(24 * 3600_000);
    expect(worked(await plan()).askedToday).toEqual({ questions: 0, bytes: 0 });
    expect(existsSync(join(folder, 'fetch', 'asked.json'))).toBe(true);
  });

  it('tells how far it is', async () => {
    const { fetch } = await trial();
    const shares: number[] = [];
    let bytes = 0;
    worked(
      await fetch({
        onProgress(progress) {
          shares.push(progress.done / progress.of);
          if (progress.done > 1) expect(progress.secondsLeft).toBeGreaterThan(0);
          expect(progress.bytes).toBeGreaterThanOrEqual(bytes);
          bytes = progress.bytes;
        },
      }),
    );
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    expect(shares.length).toBeGreaterThan(4);
    expect(bytes).toBeGreaterThan(1000);
  });
});

describe('what was fetched is kept', () => {
  it('over a cancel, and what is there is not asked for again', async () => {
    const { fetch, plan, server } = await trial();
    const cancel = new AbortController();
    const cancelled = await fetch({
      signal: cancel.signal,
      onProgress: ({ done }) => done === 2 && cancel.abort(),
    });
    expect(cancelled).toMatchObject({
      ok: false,
      error: { code: 'cancelled', message: 'Cancelled. What was fetched so far is kept.' },
    });
    const before = server.questions().length;
    expect(worked(await plan())).toMatchObject({ kept: 2, questions: 2 });
    worked(await fetch());
    expect(new Set(server.questions()).size).toBe(4);
    expect(server.questions().length - before).toBe(2);
  });

  it('over a refusal', async () => {
    let blocked = true;
    const { fetch, server } = await trial({
      behave: ({ number }) => (blocked && number >= 2 ? bad.html('no', 403) : undefined),
    });
    expect(await fetch()).toMatchObject({ ok: false, error: { code: 'line.blocked' } });
    blocked = false;
    expect(worked(await fetch()).notHad).toEqual([]);
    expect(server.questions()).toHaveLength(2 + 1 + 2);
  });

  it('until it was used', async () => {
    const { fetch, plan, folder } = await trial();
    const fetched = worked(await fetch());
    expect(worked(await plan()).questions).toBe(0);
    await fetched.forget();
    expect(readdirSync(join(folder, 'fetch', 'line'))).toEqual([]);
    expect(worked(await plan()).questions).toBe(4);
  });

  it('for a week', async () => {
    const { fetch, plan, folder, pace } = await trial();
    worked(await fetch());
    const old = new Date(pace.now().getTime() - 8 * 24 * 3600_000);
    const line = join(folder, 'fetch', 'line');
    for (const name of readdirSync(line)) utimesSync(join(line, name), old, old);
    expect(worked(await plan()).questions).toBe(4);
    expect(readdirSync(line)).toEqual([]);
  });

  it('for one server, and not given out as another’s', async () => {
    const folder = dataFolder();
    worked(await (await trial({ folder })).fetch());
    expect(worked(await (await trial({ folder })).plan()).questions).toBe(4);
  });

  it('and one that cannot be read any more is asked for again', async () => {
    const { fetch, server, folder } = await trial();
    worked(await fetch());
    const line = join(folder, 'fetch', 'line');
    const [one = ''] = readdirSync(line).filter((name) => name.endsWith('.gz'));
    writeFileSync(join(line, one), readFileSync(join(line, one)).subarray(0, 60));
    const fetched = worked(await fetch());
    expect(server.questions()).toHaveLength(5);
    expect(idsOf(merged(fetched.path))).toContain('w1030');
  });

  it('in the parts in which it was had', async () => {
    let small = 0;
    const { fetch, server } = await trial({
      behave: ({ query, text }) => {
        if (query.maxBytes < 2 ** 27) small++;
        const line = /around:180((?:,[\d.]+)+)\)/u.exec(text)?.[1]?.split(',').map(Number) ?? [];
        const long = line.length > 3 && (line.at(-1) ?? 0) - (line[2] ?? 0) > 0.1;
        return long ? bad.status(504) : undefined;
      },
    });
    worked(await fetch());
    expect(small).toBeGreaterThan(0);
    const before = server.questions().length;
    worked(await fetch());
    expect(server.questions()).toHaveLength(before);
  });
});

it('pieces of different days are told by the oldest, and the newest of what differs is right', async () => {
  const { fetch } = await trial({
    behave: ({ number }, truly) =>
      json(dated(truly(), number === 1 ? '2026-11-01T00:00:00Z' : '2026-11-20T00:00:00Z')),
  });
  const fetched = worked(await fetch());
  expect(fetched.baseDate).toBe('2026-11-01T00:00:00Z');
  expect(fetched.notes.join(' ')).toContain(
    'Its answers are of different days, from 2026-11-01 to 2026-11-20; the oldest counts.',
  );
  expect(fetched.notes.join(' ')).toContain('is 20 days old (2026-11-01)');
});
