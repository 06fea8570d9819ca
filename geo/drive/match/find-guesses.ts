import { distanceM } from '../../earth/sphere.ts';
import { placeOnEdge } from '../../graph/place-on-edge.ts';
import { type Reached, type Seed, searchRoads, wayTo } from '../../graph/search-roads.ts';
import { extraPerM } from '../../graph/step-costs.ts';
import { append, largest } from '../../lists.ts';
import type { Span } from '../drive.ts';
import type { BestChain } from './best-chain.ts';
import { type Fill, fillAfter } from './fill.ts';
import { keepsToLine } from './keeps-to-line.ts';
import { type Matching, WIDEST_M } from './lattice.ts';
import type { Path } from './trace-paths.ts';

/** Another way is sensible up to so much longer than the one filled in. */
const SENSIBLE_EXTRA = 1.5;
/** A way round so much longer than the straight line may stand for a road the map does not have. */
const LONG_WAY_ROUND = 1.6;

/** Spans of a path, in metres along it, filled in between far positions where another sensible road exists. */
export function findGuesses(matching: Matching, chain: BestChain, path: Path): Span[] {
  const { lattice, settings } = matching;
  const spans: Span[] = [];
  for (let i = path.first; i < path.last; i++) {
    if (lattice.gapM[i]! <= settings.sparseM) continue;
    const fill = fillAfter(matching, chain, i);
    if (fill === undefined || (settings.drawn && keepsToLine(matching, fill))) continue;
    const fromM = path.positionM[i - path.first]!;
    const toM = path.positionM[i - path.first + 1]!;
    if (toM - fromM > LONG_WAY_ROUND * lattice.gapM[i]! + settings.detourM) spans.push({ fromM, toM });
    else {
      // at the ends of the drive nothing tells which way round the road is entered or left
      const open = { start: i === path.first, end: i + 1 === path.last };
      append(spans, spansLeft(matching, fill, fromM, otherWay(matching, fill, open)));
    }
  }
  return spans;
}

/** What of a fill, laid from `startM` on, the other way does not drive, too. */
function spansLeft({ graph }: Matching, fill: Fill, startM: number, other: ReadonlySet<number>): Span[] {
  const spans: Span[] = [];
  let atM = startM;
  fill.edges.forEach((directed, k) => {
    const lengthM = graph.lengthM[directed >> 1]!;
    let drivenM = lengthM;
    if (k === 0) drivenM = lengthM - fill.fromM;
    else if (k === fill.edges.length - 1) drivenM = fill.toM;
    if (!other.has(directed)) spans.push({ fromM: atM, toM: atM + drivenM });
    atM += drivenM;
  });
  return spans;
}

/** Where another way may start and end: on the fill's own ends, and round the other way where the drive is open. */
interface Ends {
  readonly seeds: readonly Seed[];
  /** metres driven into each directed edge come to */
  readonly targets: ReadonlyMap<number, number>;
}

type PerM = (directed: number) => number;

/** Directed edges of the best way when the roads of the fill are made dearer: it leaves them where another will do. */
function otherWay(
  matching: Matching,
  fill: Fill,
  open: { readonly start: boolean; readonly end: boolean },
): ReadonlySet<number> {
  const { roads, graph, settings } = matching;
  const filled = new Set(fill.edges.map((directed) => directed >> 1));
  const perM: PerM = (directed) =>
    1 + extraPerM(graph, settings.farSteps, directed) + (filled.has(directed >> 1) ? SENSIBLE_EXTRA : 0);
  const { seeds, targets } = endsOf(matching, fill, open, perM);
  const place = placeOnEdge(roads, graph, fill.edges.at(-1)!, fill.toM);
  const { nodes } = roads;
  const reached = searchRoads(graph, settings.farSteps, seeds, {
    limitM: Infinity,
    remainingM: (node) =>
      Math.max(0, distanceM(nodes.lat[node]!, nodes.lon[node]!, place.lat, place.lon) - WIDEST_M),
    targets,
    slackM: largest(targets.values()) * (1 + SENSIBLE_EXTRA),
    extraM: (directed) => graph.lengthM[directed >> 1]! * (perM(directed) - 1),
  });
  const goal = cheapestOf(reached, targets, perM);
  if (goal === undefined) return new Set(fill.edges);
  const { edges, seed } = wayTo(reached, goal.entry);
  return new Set([...edges, goal.directed, seeds[seed]!.directed]);
}

function endsOf(
  { graph }: Matching,
  { edges, fromM, toM }: Fill,
  open: { readonly start: boolean; readonly end: boolean },
  perM: PerM,
): Ends {
  const first = edges[0]!;
  const last = edges.at(-1)!;
  const firstM = graph.lengthM[first >> 1]!;
  const lastM = graph.lengthM[last >> 1]!;
  const seedOn = (directed: number, metres: number) => ({ directed, costM: metres * perM(directed), metres });
  const seeds = [seedOn(first, firstM - fromM)];
  if (open.start) seeds.push(seedOn(first ^ 1, firstM - (firstM - fromM)));
  const targets = new Map([[last, toM]]);
  if (open.end) targets.set(last ^ 1, lastM - toM);
  return { seeds, targets };
}

function cheapestOf(reached: Reached, targets: Ends['targets'], perM: PerM) {
  let best: { directed: number; entry: number; costM: number } | undefined;
  for (const [directed, offsetM] of targets) {
    const entry = reached.indexOf.get(directed);
    if (entry === undefined) continue;
    const costM = reached.costM[entry]! + offsetM * perM(directed);
    if (best === undefined || costM < best.costM) best = { directed, entry, costM };
  }
  return best;
}
