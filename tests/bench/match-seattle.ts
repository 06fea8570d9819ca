/**
 * The field test of Newson & Krumm 2009: a recorded drive of 80 km whose true route is known. Prints the route mismatch
 * fraction (their figure 6: length wrongly left out plus wrongly added over the true length) beside what they published;
 * of the sparse routes also how much of what is on another road is not marked as guessed, how much of the right is, and
 * what a planner would fill in that knows the true road under every point.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Span } from '../../geo/drive/drive.ts';
import { followRoads } from '../../geo/drive/match/follow-roads.ts';
import { roadGraph } from '../../geo/graph/road-graph.ts';
import type { Roads } from '../../geo/roads/roads.ts';
import { openMap } from '../../main/services/map/open-map.ts';
import { readRouteFile } from '../../main/services/route/read-route-file.ts';
import { type Driven, drivenOf, type GuessScore, scoreGuesses, scoreMatch } from '../support/score-match.ts';
import { sparseOracle } from './sparse-oracle.ts';

const FILES = [
  { name: 'track_1s', mostPercent: 0.1, published: '0' },
  { name: 'track_5s', mostPercent: 0.1 },
  { name: 'track_10s', mostPercent: 0.2 },
  { name: 'track_30s', mostPercent: 0.2, published: '0.11' },
  { name: 'planned_dense', mostPercent: 0 },
  { name: 'planned_rdp10', mostPercent: 0 },
  { name: 'planned_shift', mostPercent: 0 },
  { name: 'planned_rte_1km', mostPercent: 8, mostUnmarkedPercent: 5, everyM: 1000 },
  { name: 'planned_rte_5km', mostUnmarkedPercent: 5, everyM: 5000 },
] as const;

const data = process.env['LANEGAUGE_DATA'];
if (data) await run(join(data, 'seattle'));
else console.log('LANEGAUGE_DATA is not set: nothing to match');

async function run(folder: string): Promise<void> {
  const opened = await openMap([join(folder, 'network.osm.xml.gz')], undefined);
  if (!opened.ok) throw new Error(opened.error.message);
  const roads = opened.value;
  const built = performance.now();
  const { edgeCount } = roadGraph(roads);
  console.log(`graph of ${edgeCount} edges: ${(performance.now() - built).toFixed(0)} ms`);
  const truth = readTruth(join(folder, 'truth.json'), roads);
  for (const file of FILES) {
    const read = await readRouteFile(join(folder, `${file.name}.gpx`));
    const route = read.ok ? read.value.routes[0] : undefined;
    if (route === undefined) throw new Error(`${file.name} cannot be read`);
    const started = performance.now();
    const drive = followRoads(route, roads);
    const ms = performance.now() - started;
    const matched = drivenOf(drive, roads);
    const score = scoreMatch(...withoutEnds(truth, matched));
    const percent = (100 * (score.missedM + score.addedM)) / truth.lengthM;
    const most = 'mostPercent' in file ? file.mostPercent : undefined;
    const verdict =
      most === undefined ? '' : percent <= most + 0.0005 ? `ok (at most ${most})` : `MORE THAN ${most}`;
    const published = 'published' in file ? `, published ${file.published}` : '';
    console.log(
      `${file.name.padEnd(16)} mismatch ${percent.toFixed(3).padStart(7)} % ${verdict}${published}; added ${score.addedM.toFixed(0)} m; ` +
        `guessed ${share(drive.guessed, drive.lengthM)}, doubtful ${share(drive.doubtful, drive.lengthM)}; ` +
        `${'mostUnmarkedPercent' in file ? tellGuesses(scoreGuesses(drive, truth.driven, roads), file.mostUnmarkedPercent) : ''}` +
        `off the map ${drive.legs.filter((leg) => leg.kind === 'offMap').length}; ${ms.toFixed(0)} ms`,
    );
    if ('everyM' in file) console.log(tellOracle(roads, truth, file.everyM));
  }
}

function tellOracle(roads: Roads, { order, driven }: Truth, everyM: number): string {
  const told = (['quickest', 'shortest'] as const).map((chosen) => {
    const share = sparseOracle(roads, order, driven, { everyM, chosen });
    return `the ${chosen} way between the true roads ${(100 * share).toFixed(1)} %`;
  });
  return `  on another road, by a graph library: ${told.join(', ')}`;
}

function tellGuesses({ rightM, rightMarkedM, wrongM, wrongUnmarkedM }: GuessScore, most: number): string {
  const unmarked = (100 * wrongUnmarkedM) / Math.max(1, wrongM);
  return (
    `on another road ${((100 * wrongM) / (rightM + wrongM)).toFixed(1)} %, of it not marked ${unmarked.toFixed(1)} % ` +
    `${unmarked <= most ? 'ok' : `MORE THAN ${most}`}, of the right marked ${((100 * rightMarkedM) / rightM).toFixed(1)} %; `
  );
}

interface Truth {
  readonly driven: Driven;
  /** directed edges as they were driven */
  readonly order: readonly number[];
  readonly ends: readonly number[];
  readonly lengthM: number;
}

function readTruth(path: string, roads: Roads): Truth {
  const { edges } = JSON.parse(readFileSync(path, 'utf8')) as { edges: [number, number][] };
  const graph = roadGraph(roads);
  const edgesOf = new Map<number, number[]>();
  for (let edge = 0; edge < graph.edgeCount; edge++) {
    const id = roads.ways.id[graph.way[edge]!]!;
    edgesOf.set(id, [...(edgesOf.get(id) ?? []), edge]);
  }
  const driven = new Map<number, number>();
  let lengthM = 0;
  const directed = edges.map(([way, forward]) => {
    const along = (edgesOf.get(way) ?? []).map((edge) => 2 * edge + 1 - forward);
    return forward === 1 ? along : along.reverse();
  });
  const order = directed.flat();
  for (const edge of order) {
    const metres = graph.lengthM[edge >> 1]!;
    driven.set(edge, (driven.get(edge) ?? 0) + metres);
    lengthM += metres;
  }
  return { driven, order, ends: [...(directed[0] ?? []), ...(directed.at(-1) ?? [])], lengthM };
}

/** The truth counts its first and last edge whole; the drive begins and ends somewhere on them. */
function withoutEnds(truth: Truth, matched: Driven): [Driven, Driven] {
  const keep = (driven: Driven) => new Map([...driven].filter(([edge]) => !truth.ends.includes(edge)));
  return [keep(truth.driven), keep(matched)];
}

function share(spans: readonly Span[], lengthM: number): string {
  const metres = spans.reduce((sum, span) => sum + span.toM - span.fromM, 0);
  return `${((100 * metres) / lengthM).toFixed(1)} %`;
}
