import { readPbfHeader } from '../../../../geo/roads/pbf/header.ts';
import { Refusal } from '../../../../geo/roads/refusal.ts';
import { isoOf, sayPbfRefusal } from '../../map/read-pbf-file.ts';
import { unpack } from '../../map/unpack.ts';
import type { BlobTable } from './blob-table.ts';
import { SourceBlobs } from './source-blobs.ts';
import type { BlobRange, KindMarks } from './stages/sorted-source.ts';
import { NotSorted, Stopped } from './stopped.ts';

/** How a sorted file is divided among the workers. */
export interface SourcePlan {
  readonly marks: KindMarks;
  readonly nodes: readonly BlobRange[];
  readonly ways: readonly BlobRange[];
  readonly relations: readonly BlobRange[];
  /** first id of each range of nodes and of ways */
  readonly firstNode: Float64Array;
  readonly firstWay: Float64Array;
  /** whether the ids of each range of nodes lie within 2^32 of its first */
  readonly compact: boolean;
  readonly dataDate: string | undefined;
}

const NODE_RANGE_BYTES = 1.2e6;
const WAY_RANGE_BYTES = 1.5e6;
const RELATION_RANGE_BYTES = 0.5e6;
const MOST_RANGES = 768;

/**
 * Finds where ways and relations begin, by halving, and divides the blobs of each kind into ranges.
 * Throws NotSorted where the file cannot be read that way, Stopped where not at all.
 */
export async function planSource(
  path: string,
  table: BlobTable,
  pause: () => Promise<void>,
): Promise<SourcePlan> {
  const blobs = new SourceBlobs(path, table);
  try {
    const dataDate = readHeader(path, blobs);
    const { count } = table;
    const firstWay = firstWith(1, count, (blob) => {
      const kinds = blobs.kindsIn(blob);
      return kinds.ways || kinds.relations;
    });
    const firstRelation = firstWith(firstWay, count, (blob) => blobs.kindsIn(blob).relations);
    const nodes = rangesOf(table, 1, Math.min(count, firstWay + 1), NODE_RANGE_BYTES);
    const ways = rangesOf(table, firstWay, Math.min(count, firstRelation + 1), WAY_RANGE_BYTES);
    const relations = rangesOf(table, firstRelation, count, RELATION_RANGE_BYTES);
    const firstOf = async (ranges: readonly BlobRange[], kind: 'node' | 'way') => {
      const first = new Float64Array(ranges.length);
      for (const [i, { from, to }] of ranges.entries()) {
        let id: number | undefined;
        for (let blob = from; blob < to && id === undefined; blob++) id = blobs.firstId(blob, kind);
        // an empty range takes nothing
        first[i] = id ?? first[i - 1] ?? 0;
        if (i > 0 && first[i]! < first[i - 1]!) throw new NotSorted();
        if (i % 16 === 15) await pause();
      }
      return first;
    };
    const firstNode = await firstOf(nodes, 'node');
    let last: number | undefined;
    for (let blob = Math.min(count - 1, firstWay); blob > 0 && last === undefined; blob--)
      last = blobs.lastNode(blob);
    return {
      marks: { firstWay, firstRelation },
      nodes,
      ways,
      relations,
      firstNode,
      compact: isCompact([...firstNode, ...(last === undefined ? [] : [last])]),
      firstWay: await firstOf(ways, 'way'),
      dataDate,
    };
  } finally {
    blobs.close();
  }
}

function isCompact(first: readonly number[]): boolean {
  return first.every((id, i) => i === 0 || id - first[i - 1]! < 2 ** 32);
}

function readHeader(path: string, blobs: SourceBlobs): string | undefined {
  try {
    const header = readPbfHeader(blobs.bytesOf(0), unpack);
    if (header.locationsOnWays) throw new NotSorted();
    return isoOf(header.replicationTime);
  } catch (thrown) {
    if (!(thrown instanceof Refusal)) throw thrown;
    throw new Stopped({ code: thrown.problem.code, message: sayPbfRefusal(path, thrown, 0, 0) });
  }
}

/** The first of from … to - 1 for which it holds, `to` where it holds for none; it must hold for all that follow. */
function firstWith(from: number, to: number, holds: (blob: number) => boolean): number {
  let low = from;
  let high = to;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (holds(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

function rangesOf(table: BlobTable, from: number, to: number, aimBytes: number): BlobRange[] {
  let all = 0;
  for (let blob = from; blob < to; blob++) all += table.size[blob]!;
  const aim = Math.max(aimBytes, all / MOST_RANGES);
  const ranges: BlobRange[] = [];
  let start = from;
  let bytes = 0;
  for (let blob = from; blob < to; blob++) {
    bytes += table.size[blob]!;
    if (bytes < aim && blob + 1 < to) continue;
    ranges.push({ bucket: ranges.length, from: start, to: blob + 1 });
    start = blob + 1;
    bytes = 0;
  }
  return ranges;
}
