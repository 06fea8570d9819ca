import { basename } from 'node:path';
import { given } from '../../../geo/given.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { assembleRoads } from '../../../geo/roads/assemble.ts';
import type { DrawnRoute, Reach } from '../../../geo/roads/discs.ts';
import { withLocalIds } from '../../../geo/roads/local-ids.ts';
import { corridorMask } from '../../../geo/roads/mask.ts';
import { RoadCollector } from '../../../geo/roads/road-collector.ts';
import type { MapSource, Roads } from '../../../geo/roads/roads.ts';
import type { MapSink } from '../../../geo/roads/sink.ts';
import { openOrdinary, unreadable } from '../files/read-bytes.ts';
import { Cancelled, type ReadFacts } from './map-reading.ts';
import { readerFor } from './tell-format.ts';

export interface OpenMapHooks {
  /** 0…1, never falling */
  onProgress?(share: number): void;
  readonly signal?: AbortSignal;
  /** how far about the route roads are kept */
  readonly reach?: Reach;
}

/** How long the thread may be kept from other work. */
const PAUSE_EVERY_MS = 15;

/**
 * Reads map files of any known format, told apart by content, as one map.
 * @param route with one, only what lies within reach of it is kept, so that memory stays flat
 */
export async function openMap(
  paths: readonly string[],
  route: DrawnRoute | undefined,
  hooks: OpenMapHooks = {},
): Promise<Result<Roads>> {
  if (paths.length === 0) return fail('map.none', 'No map file is named. Name at least one.');
  const collector = new RoadCollector(route && corridorMask(route, hooks.reach));
  const passes = new Passes(paths, hooks);
  try {
    const first = await passes.run(collector.all, 0, 0.6);
    if (!first.ok) return first;
    if (collector.needsWaysAgain()) {
      const again = await passes.run(collector.waysAgain(), 0.6, 0.8);
      if (!again.ok) return again;
    }
    const lacking = collector.missingNodes();
    if (lacking) {
      const filled = await passes.run(lacking, 0.8, 0.95);
      if (!filled.ok) return filled;
    }
    if (hooks.signal?.aborted) throw new Cancelled();
    const roads = assembleRoads(collector, sourcesOf(paths, first.value), {
      notes: notesOf(paths, first.value, (facts) => facts.notes),
      incomplete: notesOf(paths, first.value, (facts) => facts.incomplete ?? []),
    });
    hooks.onProgress?.(1);
    return ok(roads);
  } catch (thrown) {
    if (thrown instanceof Cancelled) return fail('cancelled', 'Cancelled.');
    throw thrown;
  }
}

function sourcesOf(paths: readonly string[], facts: readonly ReadFacts[]): MapSource[] {
  return facts.map(({ sha256, dataDate }, i) => ({
    name: basename(paths[i] ?? ''),
    sha256,
    ...given({ dataDate }),
  }));
}

function notesOf(
  paths: readonly string[],
  facts: readonly ReadFacts[],
  wanted: (facts: ReadFacts) => readonly string[],
): string[] {
  return facts.flatMap((each, i) => wanted(each).map((note) => `${basename(paths[i] ?? '')}: ${note}`));
}

/** Reads all files from start to end, as often as asked. */
class Passes {
  private readonly paths: readonly string[];
  private readonly hooks: OpenMapHooks;
  private first = true;
  private lastPause = 0;

  constructor(paths: readonly string[], hooks: OpenMapHooks) {
    this.paths = paths;
    this.hooks = hooks;
  }

  async run(sink: MapSink, fromShare: number, toShare: number): Promise<Result<ReadFacts[]>> {
    const all: ReadFacts[] = [];
    for (const [i, path] of this.paths.entries()) {
      const share = (done: number) => fromShare + ((toShare - fromShare) * (i + done)) / this.paths.length;
      const read = await this.readOne(path, withLocalIds(sink, i), share);
      if (!read.ok) return read;
      all.push(read.value);
    }
    this.first = false;
    return ok(all);
  }

  private async readOne(
    path: string,
    sink: MapSink,
    share: (done: number) => number,
  ): Promise<Result<ReadFacts>> {
    const opened = await openOrdinary(path, 'map file');
    if (!opened.ok) return opened;
    const { handle, size } = opened.value;
    try {
      const reader = await readerFor(handle, path);
      if (!reader.ok) return reader;
      return await reader.value({
        handle,
        size,
        name: path,
        sink,
        withHash: this.first,
        pause: (done) => this.pause(() => share(Math.min(1, done / size))),
      });
    } catch (error) {
      if (error instanceof Error && 'syscall' in error)
        return { ok: false, error: unreadable(path, 'map file', error) };
      throw error;
    } finally {
      await handle.close();
    }
  }

  private async pause(share: () => number): Promise<void> {
    if (performance.now() - this.lastPause < PAUSE_EVERY_MS) return;
    this.hooks.onProgress?.(share());
    await new Promise((resolve) => setImmediate(resolve));
    if (this.hooks.signal?.aborted) throw new Cancelled();
    this.lastPause = performance.now();
  }
}
