import { spawn } from 'node:child_process';
import { openSync } from 'node:fs';
import { resolve } from 'node:path';
import { Worker } from 'node:worker_threads';
import { describe, expect, it } from 'vitest';
import { checkInThread } from '../../../main/cli/check/check-thread.ts';

const ROOT = resolve(import.meta.dirname, '../../..');
const CLI = resolve(ROOT, '.build/program/cli');
const SAMPLES = resolve(ROOT, 'sample-routes');
const CHECK = [
  ...['check', '--route', `${SAMPLES}/drives/clear.gpx`, '--map', `${SAMPLES}/district.osm.pbf`],
  ...['--vehicle', `${SAMPLES}/vehicles/coach-built-7.4.json`, '--country', 'GB'],
];

type Stream = 'pipe' | 'closed' | number;

/** Runs Node on these words. A stream that is `closed` is a pipe whose reader has gone. */
async function run(words: readonly string[], out: Stream = 'pipe', error: Stream = 'pipe') {
  const pipe = (stream: Stream) => (stream === 'closed' ? 'pipe' : stream);
  const child = spawn(process.execPath, words, { stdio: ['ignore', pipe(out), pipe(error)] });
  let complaint = '';
  if (out === 'closed') child.stdout?.destroy();
  else child.stdout?.resume();
  if (error === 'closed') child.stderr?.destroy();
  else
    child.stderr?.on('data', (data) => {
      complaint += data;
    });
  const code = await new Promise((done) => child.on('close', done));
  return { code, complaint };
}

const lanegauge = (words: readonly string[], out?: Stream, error?: Stream) =>
  run([resolve(CLI, 'main.js'), ...words], out, error);

/** A program of the terminal whose work is this expression. */
const program = (work: string) =>
  run([
    '-e',
    `import('${ROOT}/.build/main/cli/run-program.js').then(({ runProgram }) => runProgram(async () => ${work}))`,
  ]);

describe('what goes wrong inside the program', () => {
  it.each([
    ['is thrown', '{ null.x }', 'TypeError: Cannot read'],
    [
      'is thrown later',
      "new Promise(() => setTimeout(() => { throw new RangeError('deep') }))",
      'RangeError: deep',
    ],
    ['is rejected unheard', "new Promise(() => void Promise.reject(new Error('lost')))", 'Error: lost'],
    ['is no error', "Promise.reject('a word')", 'a word'],
  ])('is one sentence and exit code 2 where it %s', async (_, work, what) => {
    const { code, complaint } = await program(work);
    expect([code, complaint.split('\n').length]).toEqual([2, 2]);
    expect(complaint).toContain('lanegauge: Something went wrong inside the program');
    expect(complaint).toContain(what);
  });

  it('in the thread of a check is thrown here too', async () => {
    const thread = () => threadOf("throw new Error('there')");
    await expect(checkInThread(WORK, hooks(), thread)).rejects.toThrow('there');
  });
});

describe.skipIf(process.platform !== 'linux')('output that cannot be written', () => {
  it('to a full disk ends the program with 2, quietly', async () => {
    const full = openSync('/dev/full', 'w');
    expect(await lanegauge(CHECK, full)).toEqual({ code: 2, complaint: '' });
    expect(await lanegauge(['--help'], full)).toEqual({ code: 2, complaint: '' });
    expect(await lanegauge(['chekc'], 'pipe', full)).toEqual({ code: 2, complaint: '' });
  });

  it('to a pipe nobody reads ends the program with 2, quietly', async () => {
    expect(await lanegauge(['--help'], 'closed')).toEqual({ code: 2, complaint: '' });
    expect(await lanegauge(['chekc'], 'pipe', 'closed')).toEqual({ code: 2, complaint: '' });
  });
});

const WORK = { request: { routePath: '', mapPaths: [], shelf: '', vehiclePath: '' }, files: 'none' as const };

/** A thread of little memory that runs this script. */
function threadOf(script: string): Worker {
  return new Worker(script, { eval: true, resourceLimits: { maxOldGenerationSizeMb: 32 } });
}

function hooks(signal = new AbortController().signal) {
  return { onProgress: () => {}, signal };
}

describe('a check that is stopped', () => {
  it('ends in the midst of work that never looks up', async () => {
    const stop = new AbortController();
    const thread = () =>
      threadOf("require('node:worker_threads').parentPort.postMessage({ kind: 'progress' }); for (;;);");
    const ended = await checkInThread(WORK, { onProgress: () => stop.abort(), signal: stop.signal }, thread);
    expect(ended).toMatchObject({ ok: false, error: { code: 'cancelled' } });
  });

  it('is not begun where it was stopped before', async () => {
    expect(await checkInThread(WORK, hooks(AbortSignal.abort()))).toMatchObject({ ok: false });
  });
});

it('a check that outgrows its memory is refused in a sentence', async () => {
  const thread = () => threadOf('const a = []; for (;;) a.push(new Array(1e5).fill(a.length + 0.5));');
  const ended = await checkInThread(WORK, hooks(), thread);
  expect(ended).toMatchObject({ ok: false, error: { code: 'too-large' } });
});
