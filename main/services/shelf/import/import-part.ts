import { mkdir, rm } from 'node:fs/promises';
import { fail, ok, type Problem, type Result } from '../../../../geo/result.ts';
import type { FileFacts } from '../../../../geo/roads/sink.ts';
import { aroundOf } from '../../../../geo/shelf/around.ts';
import type { PartMeta } from '../../../../geo/shelf/part-meta.ts';
import { openOrdinary } from '../../files/read-bytes.ts';
import { Cancelled } from '../../map/map-reading.ts';
import { readPbfFile } from '../../map/read-pbf-file.ts';
import { readerFor } from '../../map/tell-format.ts';
import { hashFile } from './hash-file.ts';
import { makeTiles } from './make-tiles.ts';
import { beginPart, finishPart } from './part-writer.ts';
import type { ImportProgress } from './progress.ts';
import { type ReadSource, readGeneral, readSorted } from './read-source.ts';
import { checkRoom } from './room.ts';
import { runInThreads } from './run-in-threads.ts';
import { type Runner, withFreshWorkers } from './runner.ts';
import { NotSorted, Stopped, sourceLost, sourceShrank } from './stopped.ts';

export interface ImportHooks {
  onProgress?(progress: ImportProgress): void;
  readonly signal?: AbortSignal;
}

/** What is imported: a map file of any known format. */
export interface ImportSource {
  readonly path: string;
  /** what it is called in the part */
  readonly name: string;
}

/**
 * Reads one map file, whatever its size, into one part file.
 * @param outFile is written anew, whole and safe on the disk where this succeeds, and removed where not
 * @param tempFolder for files on the way; made, and removed in any case
 * @param start what works through the stages
 */
export async function importPart(
  source: ImportSource,
  outFile: string,
  tempFolder: string,
  hooks: ImportHooks = {},
  start: (signal: AbortSignal) => Runner = runInThreads,
): Promise<Result<PartMeta>> {
  const ended = new AbortController();
  const signal = hooks.signal ? AbortSignal.any([hooks.signal, ended.signal]) : ended.signal;
  const runner = start(signal);
  try {
    const meta = await work(source, { outFile, temp: tempFolder, signal, runner, hooks });
    return ok(meta);
  } catch (thrown) {
    await runner.close();
    await rm(outFile, { force: true });
    if (thrown instanceof Cancelled) return fail('cancelled', 'Cancelled.');
    if (thrown instanceof Stopped) return { ok: false, error: thrown.problem };
    if (isOutOfMemory(thrown)) return fail(TOO_LARGE.code, TOO_LARGE.message);
    throw thrown;
  } finally {
    ended.abort();
    await runner.close();
    await rm(tempFolder, { recursive: true, force: true });
  }
}

interface Work {
  readonly outFile: string;
  readonly temp: string;
  readonly signal: AbortSignal;
  readonly runner: Runner;
  readonly hooks: ImportHooks;
}

/** Starting threads anew takes a fraction of a second: too long for small maps, nothing beside what these take. */
const LARGE_BYTES = 150e6;

async function work({ path, name }: ImportSource, given: Work): Promise<PartMeta> {
  const { outFile, temp, signal, runner } = given;
  if (signal.aborted) throw new Cancelled();
  const before = await look(path);
  const job = before.size > LARGE_BYTES ? { ...given, runner: withFreshWorkers(runner) } : given;
  await mkdir(temp, { recursive: true });
  await checkRoom(outFile, before.size, before.sorted ? 'sorted' : 'general');
  const hash = hashFile(path, signal);
  // whoever waits for it hears of it; until then it is no news
  hash.catch(() => {});
  const start = await beginPart(outFile);
  const read = await readSource(path, before, job);
  const tiles = await makeTiles(read, { ...job, start });
  const sha256 = await hash;
  const after = await look(path);
  if (after.size !== before.size || after.changedMs !== before.changedMs) throw sourceShrank(path);
  const facts: FileFacts = read.facts;
  const around = aroundOf(
    tiles.names.flatMap(({ settlements }) => settlements),
    tiles.counts.box,
  );
  const meta: PartMeta = {
    source: { name, sha256, bytes: before.size },
    ...(facts.dataDate === undefined ? {} : { dataDate: facts.dataDate }),
    notes: [...facts.notes],
    incomplete: [...(facts.incomplete ?? [])],
    ...tiles.counts,
    ...(around.length > 0 && { around }),
  };
  await finishPart(outFile, { ...tiles, meta });
  return meta;
}

async function readSource(path: string, { sorted, size }: Looked, job: Work): Promise<ReadSource> {
  if (sorted)
    try {
      return await readSorted(path, size, job);
    } catch (thrown) {
      if (!(thrown instanceof NotSorted)) throw thrown;
      await job.runner.close();
      await rm(job.temp, { recursive: true, force: true });
      await mkdir(job.temp, { recursive: true });
      await checkRoom(job.outFile, size, 'general');
    }
  return readGeneral(path, size, job);
}

interface Looked {
  readonly size: number;
  readonly changedMs: number;
  /** whether it is of the format that may be read by several at once */
  readonly sorted: boolean;
}

async function look(path: string): Promise<Looked> {
  const opened = await openOrdinary(path, 'map file');
  if (!opened.ok) throw new Stopped(opened.error);
  const { handle, size } = opened.value;
  try {
    const { mtimeMs } = await handle.stat();
    const reader = await readerFor(handle, path);
    if (!reader.ok) throw new Stopped(reader.error);
    return { size, changedMs: mtimeMs, sorted: reader.value === readPbfFile };
  } catch (error) {
    if (error instanceof Stopped) throw error;
    throw sourceLost(path, error);
  } finally {
    await handle.close();
  }
}

const TOO_LARGE: Problem = {
  code: 'too-large',
  message:
    'The map needs more memory than this computer gives: it may be damaged or unusually made. Use an ordinary extract, or a smaller one.',
};

function isOutOfMemory(error: unknown): boolean {
  return error instanceof Error && 'code' in error && error.code === 'ERR_WORKER_OUT_OF_MEMORY';
}
