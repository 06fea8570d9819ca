import { largest } from '../../../../geo/lists.ts';
import { type Box, BoxMaker } from '../../../../geo/roads/box.ts';
import { RASTER_BYTES } from '../../../../geo/shelf/import/grid.ts';
import { planTiles } from '../../../../geo/shelf/import/tile-plan.ts';
import type { PartMeta } from '../../../../geo/shelf/part-meta.ts';
import type { BlockPlaces } from './block-out.ts';
import { syncPart } from './part-writer.ts';
import type { ReadSource } from './read-source.ts';
import type { Runner } from './runner.ts';
import { dropFiles } from './spill.ts';
import { filledBuckets } from './spill-index.ts';
import type { RebuildTask, Rebuilt } from './stages/rebuild.ts';
import type { SortedNames } from './stages/sort-names.ts';

/** Aimed at for one bucket of tiles: a few megabytes of records. */
const NODES_PER_BUCKET = 150_000;

export interface TilesJob {
  readonly outFile: string;
  readonly temp: string;
  readonly runner: Runner;
  /** where blocks may be written from */
  readonly start: number;
}

/** All blocks of a part, written. */
export interface MadeTiles {
  readonly blocks: readonly BlockPlaces[];
  readonly names: readonly SortedNames[];
  readonly end: number;
  readonly counts: Pick<PartMeta, 'roads' | 'mainRoads' | 'minorRoads' | 'nodes' | 'box'>;
}

/** Makes the tiles of a source that was read: ways get their places, tiles their ways, the index its names. */
export async function makeTiles(read: ReadSource, job: TilesJob): Promise<MadeTiles> {
  const { outFile, temp, runner, start } = job;
  const { progress, placed } = read;
  const plan = planTiles(read.weights, NODES_PER_BUCKET);
  const roads = new SharedArrayBuffer(RASTER_BYTES);
  const outEnd = new BigInt64Array(new SharedArrayBuffer(8));
  outEnd[0] = BigInt(start);
  const tasks = rebuildTasks(read.chunks.length, read.taggedBuckets);
  const rebuilt = await runner.run(
    'rebuild',
    {
      temp,
      chunks: read.chunks,
      places: placed.map((end) => end.places),
      fine: placed.map((end) => end.fine),
      tagged: placed.map((end) => end.tagged),
      plan,
      roads,
    },
    tasks,
    (done) => progress.at('rebuild', done / tasks.length),
  );
  await dropFiles([
    ...read.chunks.map((chunk) => chunk.path),
    ...placed.flatMap((end) => [end.places.path, end.fine.path, end.tagged.path]),
  ]);
  progress.finish('rebuild');
  const tellOf =
    (step: 'areas' | 'lines' | 'tiles' | 'names', of: number) =>
    (done: number): void =>
      progress.at(step, done / of);
  const edges = rebuilt.ends.map((end) => end.areas);
  const areaBuckets = filledBuckets(edges);
  const areas = await runner.run(
    'areas',
    { temp, areas: edges, plan },
    areaBuckets,
    tellOf('areas', areaBuckets.length),
  );
  progress.finish('areas');
  const drawn = rebuilt.ends.map((end) => end.lines);
  const lineBuckets = filledBuckets(drawn);
  const lines = await runner.run(
    'lines',
    { temp, lines: drawn, plan },
    lineBuckets,
    tellOf('lines', lineBuckets.length),
  );
  await dropFiles([...edges, ...drawn].map(({ path }) => path));
  progress.finish('lines');
  const records = [...rebuilt.ends, ...areas.ends, ...lines.ends].map((end) => end.tiles);
  const buckets = filledBuckets(records);
  const tiles = await runner.run(
    'tiles',
    { tiles: records, relations: read.relations, roads, outFile, outEnd },
    buckets,
    tellOf('tiles', buckets.length),
  );
  progress.finish('tiles');
  // the disk takes its time, and the names need little of it
  const written = syncPart(outFile);
  written.catch(() => {});
  const texts = rebuilt.ends.map((end) => end.names);
  const nameBuckets = filledBuckets(texts);
  const names = await runner.run(
    'names',
    { names: texts, outFile, outEnd },
    nameBuckets,
    tellOf('names', nameBuckets.length),
  );
  await written;
  progress.finish('names');
  return {
    blocks: tiles.ends.map((end) => end.blocks),
    names: names.ends,
    end: Number(outEnd[0]),
    counts: countsOf(
      rebuilt.ends,
      placed.reduce((sum, end) => sum + end.nodes, 0),
    ),
  };
}

function rebuildTasks(chunks: number, tagged: number): RebuildTask[] {
  return [
    ...range(tagged).map((bucket) => ({ kind: 'tagged', bucket }) as const),
    ...range(chunks).map((chunk) => ({ kind: 'chunk', chunk }) as const),
  ];
}

function range(count: number): number[] {
  return Array.from({ length: count }, (_, i) => i);
}

function countsOf(ends: readonly Rebuilt[], nodes: number): MadeTiles['counts'] {
  const sum = (count: (end: Rebuilt) => number) => ends.reduce((all, end) => all + count(end), 0);
  return {
    roads: sum((end) => end.roads),
    mainRoads: sum((end) => end.mainRoads),
    minorRoads: sum((end) => end.minorRoads),
    nodes,
    box: aroundAll(ends.flatMap(({ box }) => box ?? [])),
  };
}

/** Of boxes that together are wider than half the Earth, all the way round. */
function aroundAll(boxes: readonly Box[]): Box | null {
  const maker = new BoxMaker();
  for (const { south, west, north, east } of boxes) {
    maker.add(south, west);
    maker.add(north, east > 180 ? east - 360 : east);
  }
  const box = maker.box();
  if (box === undefined) return null;
  const widest = largest(boxes.map(({ west, east }) => east - west));
  return widest <= 180 && box.east - box.west >= widest ? box : { ...box, west: -180, east: 180 };
}
