import { closeSync, openSync } from 'node:fs';
import type { FileFacts } from '../../../../geo/roads/sink.ts';
import type { IdPlan } from '../../../../geo/shelf/import/id-buckets.ts';
import { newWeights } from '../../../../geo/shelf/import/tile-plan.ts';
import { Cancelled } from '../../map/map-reading.ts';
import { WAYLESS } from '../../map/read-pbf-file.ts';
import { walkBlobs } from './blob-table.ts';
import { planSource } from './plan-source.ts';
import { type ImportProgress, ProgressTeller } from './progress.ts';
import type { Runner } from './runner.ts';
import { dropFiles } from './spill.ts';
import type { SpillIndex } from './spill-index.ts';
import type { PlacedNodes } from './stages/place-nodes.ts';
import type { IdSpan } from './stages/sorted-source.ts';
import type { TakenRelations } from './stages/take-relations.ts';
import type { TakenWays, WayChunk } from './stages/take-ways.ts';
import { NotSorted, sourceLost } from './stopped.ts';

/** A source read and taken apart: what the tiles are made of. */
export interface ReadSource {
  readonly facts: FileFacts;
  readonly relations: readonly string[];
  readonly chunks: readonly WayChunk[];
  readonly placed: readonly PlacedNodes[];
  readonly weights: Int32Array;
  /** into how many parts the nodes with tags are divided */
  readonly taggedBuckets: number;
  readonly progress: ProgressTeller;
}

export interface ReadJob {
  readonly temp: string;
  readonly signal: AbortSignal;
  readonly runner: Runner;
  readonly hooks: { onProgress?(progress: ImportProgress): void };
}

/** Reads a PBF file with several workers. Throws NotSorted where its order does not allow it. */
export async function readSorted(path: string, size: number, job: ReadJob): Promise<ReadSource> {
  const { temp, runner } = job;
  const progress = new ProgressTeller(job.hooks.onProgress, size, [
    'plan',
    'relations',
    'ways',
    'nodes',
    ...LATER_STEPS,
  ]);
  runner.prepare();
  const { table, plan } = await planned(path, size, job);
  progress.finish('plan');
  const source = { path, table };
  const { marks } = plan;
  const nodes: IdPlan = { kind: 'ranges', first: plan.firstNode };
  const ways: IdPlan = { kind: 'ranges', first: plan.firstWay };
  const { compact } = plan;
  const stepOf = (step: 'relations' | 'ways' | 'nodes', of: number) => (done: number) =>
    progress.at(step, done / of);

  const relations = await runner.run(
    'sortedRelations',
    { source, marks, temp, ways },
    plan.relations,
    stepOf('relations', plan.relations.length),
  );
  holdOrder(relations.done);
  progress.finish('relations');
  const taken = await runner.run(
    'sortedWays',
    { source, marks, temp, nodes, compact, chunkCounter: newCounter(), pairs: pairsOf(relations.ends) },
    plan.ways,
    stepOf('ways', plan.ways.length),
  );
  holdOrder(taken.done);
  await dropFiles(relations.ends.map((end) => end.pairs.path));
  progress.finish('ways');
  const chunks = chunksOf(taken.ends);
  const weights = newWeights();
  const taggedBuckets = Math.max(1, Math.min(MOST_TAGGED_BUCKETS, plan.nodes.length));
  const placed = await runner.run(
    'sortedNodes',
    {
      source,
      marks,
      temp,
      refs: taken.ends.map((end) => end.refs),
      first: compact ? plan.firstNode : undefined,
      chunks: chunks.length,
      taggedBuckets,
      weights,
    },
    plan.nodes,
    stepOf('nodes', plan.nodes.length),
  );
  holdOrder(placed.done);
  await dropFiles(taken.ends.map((end) => end.refs.path));
  progress.finish('nodes');
  const notes = taken.done.some((span) => span.first !== undefined) ? [] : [WAYLESS];
  return {
    facts: {
      notes,
      incomplete: notes,
      ...(plan.dataDate === undefined ? {} : { dataDate: plan.dataDate }),
    },
    relations: relations.ends.map((end) => end.path),
    chunks,
    placed: placed.ends,
    weights,
    taggedBuckets,
    progress,
  };
}

/** Reads a source of any format and order, at the cost of writing all of it once more. */
export async function readGeneral(path: string, size: number, job: ReadJob): Promise<ReadSource> {
  const { temp, runner } = job;
  const progress = new ProgressTeller(job.hooks.onProgress, size, ['read', 'ways', 'nodes', ...LATER_STEPS]);
  const count = Math.min(512, Math.max(4, Math.ceil(size / 500_000)));
  const mixed = { kind: 'mixed', count } as const;
  const done = newCounter();
  const watch = setInterval(
    () => progress.at('read', Math.min(1, (Atomics.load(done, 0) * 65536) / size)),
    200,
  );
  let read: Awaited<ReturnType<typeof runner.run<'readGeneral'>>>;
  try {
    read = await runner.run(
      'readGeneral',
      { path, temp, nodes: mixed, ways: mixed, done },
      [undefined],
      () => {},
    );
  } finally {
    clearInterval(watch);
  }
  progress.finish('read');
  const [all] = read.ends;
  if (all === undefined) throw new Error('nothing was read');
  const buckets = Array.from({ length: count }, (_, bucket) => bucket);
  const taken = await runner.run(
    'generalWays',
    {
      name: path,
      elements: [all.ways],
      temp,
      nodes: mixed,
      compact: false,
      chunkCounter: newCounter(),
      pairs: pairsOf([all]),
    },
    buckets,
    (ready) => progress.at('ways', ready / count),
  );
  await dropFiles([all.ways.path, all.pairs.path]);
  progress.finish('ways');
  const chunks = chunksOf(taken.ends);
  const weights = newWeights();
  const placed = await runner.run(
    'generalNodes',
    {
      name: path,
      elements: [all.nodes],
      temp,
      refs: taken.ends.map((end) => end.refs),
      first: undefined,
      chunks: chunks.length,
      taggedBuckets: count,
      weights,
    },
    buckets,
    (ready) => progress.at('nodes', ready / count),
  );
  await dropFiles([all.nodes.path, ...taken.ends.map((end) => end.refs.path)]);
  progress.finish('nodes');
  return {
    facts: all.facts,
    relations: [all.path],
    chunks,
    placed: placed.ends,
    weights,
    taggedBuckets: count,
    progress,
  };
}

/** One of them is read whole. */
const MOST_TAGGED_BUCKETS = 512;

const LATER_STEPS = ['rebuild', 'areas', 'lines', 'tiles', 'names'] as const;

async function planned(path: string, size: number, { signal }: ReadJob) {
  const pause = async () => {
    await new Promise((resolve) => setImmediate(resolve));
    if (signal.aborted) throw new Cancelled();
  };
  const fd = openSource(path);
  try {
    const table = await walkBlobs(fd, path, size, pause);
    return { table, plan: await planSource(path, table, pause) };
  } finally {
    closeSync(fd);
  }
}

function openSource(path: string): number {
  try {
    return openSync(path, 'r');
  } catch (error) {
    throw sourceLost(path, error);
  }
}

/** Each range was in order; here that each begins behind the one before. */
function holdOrder(spans: readonly IdSpan[]): void {
  let last = Number.NEGATIVE_INFINITY;
  for (const span of spans) {
    if (span.first !== undefined && span.first <= last) throw new NotSorted();
    last = span.last ?? last;
  }
}

function pairsOf(ends: readonly TakenRelations[]): SpillIndex[] {
  return ends.map((end) => end.pairs);
}

function chunksOf(ends: readonly TakenWays[]): WayChunk[] {
  const chunks: WayChunk[] = [];
  for (const end of ends) for (const [number, chunk] of end.chunks) chunks[number] = chunk;
  return chunks;
}

function newCounter(): Int32Array {
  return new Int32Array(new SharedArrayBuffer(4));
}
