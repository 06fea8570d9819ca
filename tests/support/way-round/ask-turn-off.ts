import { type CheckInput, checkDrive } from '../../../geo/check.ts';
import type { Drive } from '../../../geo/drive/drive.ts';
import { stretchesOf } from '../../../geo/drive/match/lay-legs.ts';
import type { Finding } from '../../../geo/report/finding.ts';
import type { Roads } from '../../../geo/roads/roads.ts';
import { turnGraph } from '../../../geo/wayround/graph/open-turn-graph.ts';
import type { TurnGraph } from '../../../geo/wayround/graph/turn-graph.ts';
import { lastTurnOffs } from '../../../geo/wayround/turn-off.ts';
import { roadsFrom } from '../build-roads.ts';
import { COACH_BUILT } from '../coach-built.ts';
import { seeded } from '../random-drives.ts';
import { isLegalWalk, type WalkPiece } from './legal-walk.ts';
import { randomNetwork } from './random-network.ts';

/** Walks tried before a network is left as too large for this. */
const MOST_TRIED = 4000;

/** A legal drive on a random network with a bar planted on one of its edges. */
interface Planted {
  readonly roads: Roads;
  readonly graph: TurnGraph;
  /** directed edges, in driving order */
  readonly edges: readonly number[];
  /** which of them is barred */
  readonly barred: number;
}

/**
 * The last place to turn off before a planted bar, as the product tells it and as trying every walk over the raw tags
 * does: metres along the drive, or none. undefined where the network makes no such drive, or too many walks.
 */
export function askTurnOff(
  seed: number,
): { readonly told: number | 'none'; readonly tried: number | 'none' } | undefined {
  const planted = plant(seed);
  if (planted === undefined) return undefined;
  const told = lastTold(planted);
  const tried = told === undefined ? undefined : lastByTrying(planted);
  return told === undefined || tried === undefined ? undefined : { told, tried };
}

function plant(seed: number): Planted | undefined {
  const random = seeded(seed);
  const roads = roadsFrom(randomNetwork(random));
  const graph = turnGraph(roads);
  const edges = [Math.floor(random() * 2 * graph.edgeCount)];
  while (edges.length < 7) {
    const node = graph.head[edges.at(-1)!]!;
    const out = [...graph.out.subarray(graph.outStart[node]!, graph.outStart[node + 1]!)].filter(
      (next) => !edges.includes(next) && !edges.includes(next ^ 1) && isLegal(roads, graph, [...edges, next]),
    );
    if (out.length === 0) break;
    edges.push(out[Math.floor(random() * out.length)]!);
  }
  if (edges.length < 3 || !isLegal(roads, graph, edges)) return undefined;
  return { roads, graph, edges, barred: 1 + Math.floor(random() * (edges.length - 1)) };
}

function isLegal(roads: Roads, graph: TurnGraph, edges: readonly number[]): boolean {
  return isLegalWalk(
    edges.map((directed) => pieceOf(roads, graph, directed)),
    roads,
  );
}

function pieceOf(roads: Roads, graph: TurnGraph, directed: number): WalkPiece {
  const edge = directed >> 1;
  const nodes = [...roads.ways.refs.subarray(graph.firstRef[edge]!, graph.lastRef[edge]! + 1)];
  const forward = directed % 2 === 0;
  return { way: graph.way[edge]!, forward, nodes: forward ? nodes : nodes.reverse() };
}

function beginsAtM({ graph, edges }: Planted, index: number): number {
  return edges.slice(0, index).reduce((sum, directed) => sum + graph.lengthM[directed >> 1]!, 0);
}

/** undefined where the drive is barred before anything is planted, as where a bollard stands at its start. */
function lastTold(planted: Planted): number | 'none' | undefined {
  const { roads, graph, edges, barred } = planted;
  const parts = edges.map((directed) => ({ directed, fromM: 0, toM: graph.lengthM[directed >> 1]! }));
  const legs = stretchesOf(parts, 0, graph);
  const drive: Drive = {
    lengthM: legs.at(-1)?.toM ?? 0,
    legs,
    guessed: [],
    doubtful: [],
    brokenTurns: [],
  };
  const check: CheckInput = {
    route: { kind: 'track', name: '', number: 1, segments: [] },
    file: 'drive.gpx',
    drive,
    roads,
    card: COACH_BUILT,
    program: 'test',
    made: '2027-01-01T00:00:00Z',
  };
  const bar: Finding = {
    id: 'planted',
    level: 'barred',
    subject: 'height',
    kind: 'limit',
    fromM: beginsAtM(planted, barred),
    toM: beginsAtM(planted, barred + 1),
    at: { lat: 50, lon: 7 },
    osm: [],
    tags: {},
    say: '',
    advice: '',
  };
  const checked = checkDrive(check);
  if (checked.verdict === 'barred') return undefined;
  const report = { ...checked, findings: [bar] };
  return lastTurnOffs({ check, report }).get('planted')?.atM ?? 'none';
}

function lastByTrying(planted: Planted): number | 'none' | undefined {
  for (let i = planted.barred - 1; i >= 0; i--) {
    const leaves = canLeaveAfter(planted, i);
    if (leaves === undefined) return undefined;
    if (leaves) return beginsAtM(planted, i + 1);
  }
  return 'none';
}

/** Whether some legal walk turns off at the end of an edge and gets behind the bar or back to the start without it. */
function canLeaveAfter({ roads, graph, edges, barred }: Planted, index: number): boolean | undefined {
  const prefix = edges.slice(0, index + 1);
  const behind = new Map(edges.slice(barred + 1).map((edge, i) => [edge, edges.slice(barred + 2 + i)]));
  const [first, last] = [edges[0]!, edges.at(-1)!];
  const ends = [graph.tail[first]!, graph.head[last]!];
  let tried = 0;
  const go = (walk: readonly number[]): boolean => {
    if (tried++ > MOST_TRIED) return false;
    const node = graph.head[walk.at(-1)!]!;
    for (let i = graph.outStart[node]!; i < graph.outStart[node + 1]!; i++) {
      const next = graph.out[i]!;
      const turnsOff = walk.length > prefix.length || next !== edges[index + 1];
      if (!turnsOff || next === edges[barred] || walk.slice(prefix.length).includes(next)) continue;
      const whole = [...walk, next];
      // what no later piece can mend
      if (!isLegal({ ...roads, nodes: { ...roads.nodes, tags: turningOnly(roads) } }, graph, whole.slice(-3)))
        continue;
      const rest = behind.get(next);
      if (rest !== undefined && isLegal(roads, graph, [...whole, ...rest])) return true;
      const isThere = ends.includes(graph.head[next]!) || [first, first ^ 1, last, last ^ 1].includes(next);
      if (isThere && isLegal(roads, graph, whole)) return true;
      if (go(whole)) return true;
    }
    return false;
  };
  const found = go(prefix);
  return tried > MOST_TRIED && !found ? undefined : found;
}

function turningOnly(roads: Roads): Roads['nodes']['tags'] {
  return new Map([...roads.nodes.tags].filter(([, tags]) => tags['highway'] === 'turning_circle'));
}
