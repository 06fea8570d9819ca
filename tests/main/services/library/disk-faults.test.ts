import fs, { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openLibrary } from '../../../../main/services/library/open-library.ts';
import { type Failure, failFrom } from '../../../support/failing-disk.ts';
import { worked } from '../../../support/scratch-files.ts';

let home: string;
const undo: (() => void)[] = [];
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'lanegauge-faults-'));
});
afterEach(() => {
  for (const each of undo.splice(0)) each();
  rmSync(home, { recursive: true, force: true });
});

const open = (computer = 'a', waitMs = 4000) =>
  openLibrary({
    folder: join(home, 'yard'),
    dataFolder: join(home, computer),
    now: () => new Date('2026-05-01T09:00:00Z'),
    waitMs,
  });
const note = (say: string) =>
  ({ kind: 'note', id: 'note-1a2b3c4d', body: { at: { lat: 54, lon: 9 }, say } }) as const;
type Opened = Awaited<ReturnType<typeof open>>;
const says = (library: Opened) =>
  library.list('note').flatMap(({ versions }) => versions.map(({ body }) => body.say));

type Call = 'link' | 'rename' | 'readdir' | 'open';
/** Has a call fail so many times, with this code. */
function failing(call: Call, code: string, times: number): () => number {
  const promises = fs.promises as unknown as Record<Call, (...words: never[]) => unknown>;
  const real = promises[call];
  let count = 0;
  promises[call] = (...words) => {
    if (count++ < times) return Promise.reject(Object.assign(new Error(code), { code }));
    return real(...words);
  };
  syncBuiltinESMExports();
  undo.push(() => {
    promises[call] = real;
    syncBuiltinESMExports();
  });
  return () => Math.min(count, times);
}

describe('a disk that has its own ways', () => {
  it.each(['EPERM', 'ENOTSUP', 'EMLINK'])(
    'that makes no links (%s): the record is renamed into place',
    async (code) => {
      const library = await open();
      const failed = failing('link', code, 1);
      worked(await library.put(note('Gate')));
      expect([failed(), says(await open('b')), readdirSync(join(home, 'yard', 'passing'))]).toEqual([
        1,
        ['Gate'],
        [],
      ]);
    },
  );

  it.each([
    ['rename', 'EBUSY'],
    ['open', 'ESTALE'],
    ['open', 'EBUSY'],
  ] as const)('that is held up for a moment (%s %s) is tried again', async (call, code) => {
    const library = await open();
    if (call === 'rename') failing('link', 'EPERM', 1);
    const failed = failing(call, code, 2);
    worked(await library.put(note('Gate')));
    expect([failed(), says(await open('b'))]).toEqual([2, ['Gate']]);
  });

  it('that lists its folders late (ESTALE) is listed again', async () => {
    worked(await (await open()).put(note('Gate')));
    const failed = failing('readdir', 'ESTALE', 3);
    expect([says(await open('b')), failed()]).toEqual([['Gate'], 3]);
  });

  it.each([
    ['EROFS', 'the disk cannot be written to'],
    ['EACCES', 'the system does not allow it'],
    ['EDQUOT', 'your share of the disk is full'],
  ])('that refuses (%s) is told in plain words, and what was there is seen', async (code, words) => {
    worked(await (await open()).put(note('Gate')));
    const library = await open();
    failing('open', code, 100);
    const refused = await library.put(note('Gate, 2.4 m'));
    expect(refused.ok ? '' : refused.error.message).toMatch(new RegExp(`not kept: .*${words}`));
    expect(says(library)).toEqual(['Gate']);
  });

  it('that cannot be listed shows what this computer last saw, with a word', async () => {
    worked(await (await open()).put(note('Gate')));
    await open();
    failing('readdir', 'EIO', 100);
    const library = await open();
    expect(says(library)).toEqual(['Gate']);
    expect(library.notices().join()).toMatch(/could not be read \(the disk does not work/);
  });

  it('that is slow shows what this computer last saw, and the rest when it has come', async () => {
    worked(await (await open()).put(note('Gate')));
    await open();
    worked(await (await open('b')).put(note('Gate, 2.4 m')));
    failing('readdir', 'ESTALE', 2);
    const library = await open('a', 0);
    expect(library.notices().join()).toContain('answers slowly');
    expect(says(library)).toEqual(['Gate']);
    await expect.poll(() => says(library)).toEqual(['Gate, 2.4 m']);
    await expect.poll(() => library.notices()).toEqual([]);
  });
});

describe('a change on a disk that fails from any moment on', () => {
  it.each<Failure>(['full', 'ended'])(
    '(%s) is kept, or refused and not there: nothing in between',
    async (failure) => {
      worked(await (await open()).put(note('Gate')));
      for (let from = 0; ; from++) {
        const library = await open();
        const before = says(library);
        const disk = await failFrom(from, failure);
        const put = await library.put(note(`Gate ${from}`));
        const [ended] = [disk.count() <= from];
        disk.restore();
        const now = says(await open('b'));
        // linked into place and its folder not yet brought to the disk: it may be there, and was not promised
        if (put.ok) expect(now).toEqual([`Gate ${from}`]);
        else expect([[...before], [`Gate ${from}`]]).toContainEqual(now);
        if (!put.ok) expect(put.error.message).toMatch(/could not be written/);
        if (ended) break;
      }
      expect(says(await open('b'))).toHaveLength(1);
    },
  );

  it('leaves a half record of that name to be made whole by the next try', async () => {
    const library = await open();
    worked(await library.put({ ...note('Gate'), over: [], made: '' }));
    const folder = join(home, 'yard', 'records', 'note-1a2b3c4d');
    const path = join(folder, readdirSync(folder)[0]!);
    const whole = readFileSync(path, 'utf8');
    fs.writeFileSync(path, whole.slice(0, 30));
    worked(await (await open('b')).put({ ...note('Gate'), over: [], made: '' }));
    expect(readFileSync(path, 'utf8')).toBe(whole);
  });
});
