import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { PUBLIC_SERVERS } from '../../../../../main/contract/server-address.ts';
import { isEnough } from '../../../../../main/services/fetch/line/manners.ts';
import { openMap } from '../../../../../main/services/map/open-map.ts';
import * as bad from '../../../../support/map-server/misbehave.ts';
import type { Answer } from '../../../../support/map-server/run-query.ts';
import type { Reply } from '../../../../support/map-server/serve.ts';
import { json, type Question } from '../../../../support/map-server/serve-overpass.ts';
import * as spoil from '../../../../support/map-server/spoil.ts';
import { LONG } from '../../../../support/map-server/straight-map.ts';
import { worked } from '../../../../support/scratch-files.ts';
import { trial } from './support.ts';

type Behave = (question: Question, truly: () => Answer) => Reply | undefined;

/** The first so many questions are answered otherwise. */
const first =
  (count: number, reply: Reply): Behave =>
  ({ number }) =>
    number < count ? reply : undefined;
/** Only questions for areas are. */
const areas =
  (change: (answer: Answer) => Answer): Behave =>
  ({ text }, truly) =>
    text.includes('is_in') ? json(change(truly())) : undefined;
const always =
  (reply: Reply): Behave =>
  () =>
    reply;
const spoilt =
  (change: (answer: Answer) => Answer): Behave =>
  (_, truly) =>
    json(change(truly()));

async function fetchedFrom(behave: Behave, status?: string) {
  const tried = await trial({ behave, ...(status === undefined ? {} : { status }) });
  const fetched = worked(await tried.fetch());
  return {
    ...tried,
    fetched,
    notes: tried.plain(fetched.notes.join(' ')),
    text: readFileSync(fetched.path, 'utf8'),
  };
}

async function refusedBy(behave: Behave, more: { secure?: boolean; count?: number } = {}) {
  const tried = await trial({ behave, ...more });
  const refused = await tried.fetch();
  if (refused.ok) throw new Error('it was fetched');
  return { ...tried, code: refused.error.code, say: tried.plain(refused.error.message) };
}

describe('a server without a free place', () => {
  it('is asked again after half a minute, then a minute, then two', async () => {
    const { waitsS, fetched } = await fetchedFrom(first(3, bad.status(429)), 'nonsense');
    expect(waitsS()).toEqual([30, 60, 120]);
    expect(fetched.notHad).toEqual([]);
  });

  it('is asked again when its status page says, in either form of it', async () => {
    const old =
      'Connected as: 1\nCurrent time: x\nRate limit: 2\nSlot available after: 2026-11-21T08:00:11Z, in 11 seconds.\n';
    expect((await fetchedFrom(first(1, bad.status(429)), old)).waitsS()).toEqual([12]);
    const moved = `Announced endpoint: none\n${old}Slot available after: 2026-11-21T08:00:05Z, in 5 seconds.\n`;
    expect((await fetchedFrom(first(1, bad.status(429)), moved)).waitsS()).toEqual([6]);
    expect((await fetchedFrom(first(1, bad.status(429)), 'Rate limit: 0\n')).waitsS()).toEqual([30]);
  });

  it('is asked again when it says itself', async () => {
    const asks = bad.status(429, '', { 'Retry-After': '45' });
    expect((await fetchedFrom(first(1, asks), 'nonsense')).waitsS()).toEqual([45]);
  });

  it('is left in peace after four refusals, and when it asks for more than ten minutes', async () => {
    const { say, waitsS, server } = await refusedBy(always(bad.status(429)));
    expect(say).toBe(
      'HOST has no place free for another question now. It was asked 4 times within 4 min, and is left alone now. What was fetched so far is kept: try again later, or use another server.',
    );
    expect(server.questions()).toHaveLength(4);
    expect(waitsS()).toHaveLength(3);
    const long = await refusedBy(always(bad.status(429, '', { 'Retry-After': '3600' })));
    expect(long.say).toContain('It asks to wait 60 min.');
    expect(long.server.questions()).toHaveLength(1);
  });

  it('tells how long it waits and why', async () => {
    const { fetch, plain } = await trial({ behave: first(1, bad.status(429)), status: 'nonsense' });
    const waits: string[] = [];
    worked(
      await fetch({
        onProgress({ waiting }) {
          if (waiting) waits.push(`${waiting.seconds}: HOST ${plain(waiting.came)}`);
        },
      }),
    );
    expect(waits).toEqual(['30: HOST has no place free (429)']);
  });

  it('is waited for no longer once the user cancels', async () => {
    const { fetch, pace, server } = await trial({ behave: always(bad.status(429)), status: 'nonsense' });
    const cancel = new AbortController();
    pace.onSleep = (seconds) => seconds === 60 && cancel.abort();
    expect(await fetch({ signal: cancel.signal })).toMatchObject({ ok: false, error: { code: 'cancelled' } });
    expect(server.questions()).toHaveLength(2);
  });
});

describe('a server that is too busy', () => {
  it('in whatever way is asked again after half a minute, and the user is told why', async () => {
    const ways: [Reply, string][] = [
      [bad.status(504), 'answered 504'],
      [bad.status(502), 'answered 502'],
      [
        bad.html('<p><strong style="color:#FF0000">Error</strong>: runtime error: timeout </p>'),
        'tells of an error ("runtime error: timeout")',
      ],
      [bad.whole('{"elements":[{"type":"node"'), 'sent an answer that breaks off'],
      [bad.whole(''), 'sent an empty answer'],
      [bad.lyingLength('{"elements":[]}', 9), 'broke off after 15 bytes'],
      [bad.resetMidway('{"elements":['), 'broke off after 13 bytes'],
    ];
    const tried = await trial({
      count: LONG,
      behave: ({ number }) => (number % 2 === 0 ? ways[number / 2]?.[0] : undefined),
    });
    const said = new Set<string>();
    const fetched = worked(
      await tried.fetch({
        onProgress({ waiting }) {
          if (waiting) said.add(`${waiting.seconds} s: ${tried.plain(waiting.came)}`);
        },
      }),
    );
    expect(fetched.notHad).toEqual([]);
    expect(tried.waitsS()).toEqual(Array(7).fill(30));
    expect([...said]).toEqual([...new Set(ways.map(([, sentence]) => `30 s: ${sentence}`))]);
  });

  it.each([
    ['packed contents that are cut', bad.cutGzip('{"elements":[]}')],
    ['a length that is too small', bad.lyingLength('{"elements":[]}', -9)],
  ])('and sends %s is asked again too', async (_, reply) => {
    const { waitsS, fetched } = await fetchedFrom(first(1, reply));
    expect(waitsS()).toEqual([30]);
    expect(fetched.notHad).toEqual([]);
  });

  it('is asked for less time and memory, and for smaller pieces', async () => {
    const { server, fetched } = await fetchedFrom(({ query }) =>
      query.timeoutS > 15 || query.maxBytes > 2 ** 25 ? bad.status(504) : undefined,
    );
    expect(fetched.notHad).toEqual([]);
    const budgets = server.questions().map((text) => /timeout:(\d+)/u.exec(text)?.[1]);
    expect(budgets.slice(0, 3)).toEqual(['60', '30', '15']);
    expect(server.questions().length).toBeGreaterThan(5);
  });

  it('is left in peace after four failures', async () => {
    const { say, waitsS } = await refusedBy(always(bad.status(504)));
    expect(say).toMatch(/^HOST is too busy or out of order \(504\)\. It was asked 4 times within 4 min/u);
    expect(waitsS()).toEqual([30, 60, 120]);
  });

  it('is left in peace after ten minutes without an answer, however long it asks to wait', async () => {
    const { waitsS, say } = await refusedBy(always(bad.status(504, '', { 'Retry-After': '290' })));
    expect(waitsS()).toEqual([290, 290]);
    expect(say).toContain('It was asked 3 times within 10 min');
  });

  it('is told of with no time left, before anything came', async () => {
    const tried = await trial({ behave: first(1, bad.status(504)) });
    const told: boolean[] = [];
    worked(
      await tried.fetch({
        onProgress: ({ done, secondsLeft }) => (told[done] ??= secondsLeft !== undefined),
      }),
    );
    expect(told.slice(0, 2)).toEqual([false, true]);
  });

  it('half-way leaves what was had, and the rest unknown', async () => {
    const { fetched, notes, text } = await fetchedFrom(({ number }) =>
      number < 2 ? undefined : bad.status(504),
    );
    expect(fetched.gaveUp?.code).toBe('line.busy');
    expect(fetched.areasTold).toBe(false);
    const lostM = fetched.notHad.reduce((sum, { fromM, toM }) => sum + toM - fromM, 0);
    expect(lostM).toBeGreaterThan(1_000);
    expect(lostM).toBeLessThan(21_400);
    expect(notes).toMatch(
      /^\d+\.\d km of the drive could not be had from HOST \(it did not answer any more\): at km /,
    );
    expect(JSON.parse(text).remark).toContain('could not be had');
  });
});

describe('a server that gives up part-way', () => {
  it('is asked for half as much, whether nothing, a half or all of it came', async () => {
    const parts = new Map([
      [0, 'none'],
      [5, 'half'],
      [8, 'all'],
    ] as const);
    const { fetch, server, waitsS } = await trial({
      count: LONG,
      behave({ number }, truly) {
        const part = parts.get(number as 0 | 5 | 8);
        return part && json(spoil.remark(truly(), part));
      },
    });
    const fetched = worked(await fetch());
    expect(fetched.notHad).toEqual([]);
    expect(waitsS()).toEqual([]);
    expect(server.questions().length).toBeGreaterThan(9);
    expect(JSON.parse(readFileSync(fetched.path, 'utf8'))).not.toHaveProperty('remark');
  });

  it('on the smallest piece leaves it unknown', async () => {
    const inMiddle = ({ text }: Question) => {
      const numbers = /around:180((?:,[\d.]+)+)\)/u.exec(text)?.[1]?.slice(1).split(',').map(Number) ?? [];
      const lons = numbers.filter((_, i) => i % 2 === 1);
      return Math.min(...lons) < 8.15 && Math.max(...lons) > 8.15;
    };
    const { fetched, notes } = await fetchedFrom((question, truly) =>
      inMiddle(question) ? json(spoil.remark(truly(), 'all')) : undefined,
    );
    const [lost] = fetched.notHad;
    expect(fetched.notHad).toHaveLength(1);
    expect(lost!.toM - lost!.fromM).toBeLessThan(2_000);
    expect((lost!.toM + lost!.fromM) / 2).toBeCloseTo(10_720, -4);
    expect(notes).toContain('could not be had from HOST (it gave up on each try)');
  });

  it('on everything is left in peace', async () => {
    const { say, server } = await refusedBy(spoilt((answer) => spoil.remark(answer, 'none')));
    expect(say).toMatch(/^HOST gave up part-way \("runtime error: Query timed out/);
    expect(server.questions().length).toBeLessThanOrEqual(13);
  });
});

describe('a server that will not is asked no more', () => {
  it.each([
    [
      400,
      'line.query',
      'HOST does not understand what it is asked (line 1: parse error: "x" expected). What was fetched so far is kept. Use another server.',
    ],
    [401, 'line.sign-in', 'HOST wants you to sign in (401), which this program cannot. Use another server.'],
    [
      403,
      'line.blocked',
      'HOST has closed its door to this computer or program (403), as a rule for a quarter to half an hour. What was fetched so far is kept. Try again later, or use another server.',
    ],
    [
      404,
      'line.address',
      'HOST knows no such address (404). An Overpass server’s ends in /api/interpreter; look at the setting.',
    ],
    [
      406,
      'line.unwanted',
      'HOST does not take questions from this program (406). Asking again will not help. What was fetched so far is kept. Use another server.',
    ],
    [
      418,
      'line.refused',
      'HOST refuses to answer (418). What was fetched so far is kept. Use another server.',
    ],
  ])('%i', async (status, code, sentence) => {
    const page =
      '<html><p><strong style="color:#FF0000">Error</strong>: line 1: parse error: &quot;x&quot; expected </p></html>';
    const { say, server, code: found } = await refusedBy(always(bad.status(status, page)));
    expect(found).toBe(code);
    expect(say.replaceAll("'", '’')).toBe(sentence);
    expect(server.questions()).toHaveLength(1);
  });

  it('when a page for people comes, as from a network that wants a login', async () => {
    for (const page of [bad.html('Please sign in'), bad.status(511, '<html>')]) {
      const { say, server, waitsS } = await refusedBy(always(page));
      expect(say).toContain('HOST sent a web page in place of map data.');
      expect(say).toContain('log in, and try again');
      expect(server.questions()).toHaveLength(1);
      expect(waitsS()).toEqual([]);
    }
  });

  it('when it sends on to another', async () => {
    const { say, server } = await refusedBy(always(bad.redirectTo('https://example.org/api/interpreter')));
    expect(say).toContain('HOST sends on to "https://example.org/api/interpreter", which is another server.');
    expect(server.questions()).toHaveLength(1);
  });

  it('when it sends on for ever', async () => {
    expect((await refusedBy(always(bad.redirectTo('/api/interpreter', 307)))).code).toBe('http.redirects');
  });

  it('when nobody vouches for it', async () => {
    const { say, server } = await refusedBy(always(bad.status(504)), { secure: true });
    expect(say).toContain('HOST cannot prove that it is HOST');
    expect(server.asked).toEqual([]);
  });

  it('when it holds another part of the world, or nothing', async () => {
    const swapped = await refusedBy(spoilt(spoil.elsewhere));
    expect(swapped.say).toBe(
      'HOST answers without any road where this drive runs: it may hold the map of another part of the world. Use another server.',
    );
    expect(swapped.server.questions()).toHaveLength(4);
    const long = await refusedBy(spoilt(spoil.elsewhere), { count: LONG });
    expect(long.server.questions()).toHaveLength(4);
    expect((await refusedBy(spoilt(spoil.empty))).code).toBe('line.elsewhere');
  });

  it('when its map is of a day yet to come', async () => {
    const { say } = await refusedBy(spoilt((answer) => spoil.dated(answer, '2031-01-01T00:00:00Z')));
    expect(say).toContain('says that its map is of 2031-01-01, a day yet to come');
  });

  it('when it answers with something else', async () => {
    const { say } = await refusedBy(always(bad.whole('{"type":"FeatureCollection","features":[]}')));
    expect(say).toContain('answers, but not with map data');
  });
});

describe('an answer with faults', () => {
  it('that unpacks to more than anybody asked for is asked for in parts', async () => {
    const { fetched, server } = await fetchedFrom(first(1, bad.gzipBomb(33_000_000)));
    expect(fetched.notHad).toEqual([]);
    expect(server.questions().length).toBeGreaterThan(5);
  });

  it('is told by its age, or that it tells none', async () => {
    expect(
      (await fetchedFrom(spoilt((answer) => spoil.dated(answer, '2025-11-21T00:00:00Z')))).notes,
    ).toContain('The map of HOST is 365 days old (2025-11-21).');
    for (const date of [undefined, 'yesterday']) {
      const { notes, fetched } = await fetchedFrom(spoilt((answer) => spoil.dated(answer, date)));
      expect(notes).toContain('HOST does not tell how old its map is.');
      expect(fetched).not.toHaveProperty('baseDate');
    }
  });

  it('holds a part of the road only, and the piece without any is unknown', async () => {
    const { fetched, notes, server } = await fetchedFrom(({ number }, truly) =>
      number === 1 ? json(spoil.empty(truly())) : undefined,
    );
    expect(fetched.notHad).toHaveLength(1);
    expect(notes).toContain('could not be had from HOST (its answer holds no road there)');
    expect(server.questions()).toHaveLength(4);
  });

  it.each([
    ['is doubled', spoil.doubled],
    ['counts itself', spoil.withCount],
    ['has places that are null', spoil.nullGeometry],
  ])('that %s is the same map', async (_, change) => {
    const { text, fetched } = await fetchedFrom(spoilt(change));
    const ids = JSON.parse(text).elements.map(({ type, id }: { type: string; id: number }) => `${type}${id}`);
    expect(new Set(ids).size).toBe(ids.length);
    expect(JSON.parse(text)).not.toHaveProperty('remark');
    const roads = worked(await openMap([fetched.path], undefined));
    expect(roads.ways.id).toContain(1030);
    expect(roads.incomplete).toEqual([]);
  });

  it('with a number that is larger than numbers are exact is told, and the rest is taken', async () => {
    const { notes, text } = await fetchedFrom(spoilt(spoil.hugeId));
    expect(notes).toContain('of the things that HOST sent cannot be read and were left out.');
    expect(JSON.parse(text).remark).toContain('left out');
    expect(JSON.parse(text).elements.some(({ id }: { id: number }) => id > 2 ** 53)).toBe(false);
  });

  it('that lacks nodes is told by whoever opens the map', async () => {
    const { fetched } = await fetchedFrom(spoilt((answer) => spoil.lackingNodes(answer, 7)));
    const roads = worked(await openMap([fetched.path], undefined));
    expect(roads.notes.join()).toMatch(/lack|missing/);
  });
});

describe('a server that cannot tell areas', () => {
  it.each([
    ['tells none', areas(spoil.empty)],
    ['gives up on it', areas((answer) => spoil.remark(answer, 'none'))],
  ])('and %s leaves the roads, and says that zones were not asked', async (_, behave) => {
    const { fetched, notes, text } = await fetchedFrom(behave);
    expect(fetched.notHad).toEqual([]);
    expect(fetched.areasTold).toBe(false);
    expect(notes).toContain('Zones not asked: HOST does not tell which areas hold a place');
    expect(JSON.parse(text)).not.toHaveProperty('remark');
  });
});

it('a server that drips or stays silent is left by its time, which is that of the question and more', async () => {
  const { fetched } = await fetchedFrom(first(1, bad.drip('{"elements":[]}', 5)));
  expect(fetched.notHad).toHaveLength(1);
});

it('the public server is asked no more than it grants a user in a day, another as much as it takes', () => {
  const shared = new URL(PUBLIC_SERVERS.line);
  expect(isEnough(shared, { questions: 9_999, bytes: 999_999_999 })).toBe(false);
  expect(isEnough(shared, { questions: 10_000, bytes: 0 })).toBe(true);
  expect(isEnough(shared, { questions: 0, bytes: 1_000_000_000 })).toBe(true);
  expect(isEnough(new URL('http://127.0.0.1/api'), { questions: 1e9, bytes: 1e12 })).toBe(false);
});
