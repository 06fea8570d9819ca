import type { LocalMoment } from '../../clock/moment.ts';
import { nodeDelay } from '../../drive/times/node-delay.ts';
import { toRad, wrapLon } from '../../earth/angles.ts';
import type { Roads } from '../../roads/roads.ts';
import type { TurnGraph } from '../graph/turn-graph.ts';
import { type Judged, OPEN } from './judged.ts';
import type { RoadJudge, RoadKind } from './road-judge.ts';

/**
 * What each directed edge of the graph costs one vehicle, in whole tenths of seconds, filled in where a search goes.
 * Whole numbers, so that sums from both ends agree.
 */
export class RoadCosts {
  private readonly kindOf: Int32Array;
  private readonly pointOf: Int32Array;
  private readonly waitOf: Int32Array;
  private readonly cost: Uint32Array;
  private readonly time: Uint32Array;
  private readonly comesIn: Float32Array;
  private readonly goesOut: Float32Array;
  private readonly kinds: RoadKind[] = [];
  private readonly points: Judged[] = [];
  /** roads are guessed at where a search meets them, and judged when asked to */
  private guesses: boolean;
  private readonly kindIndex = new Map<RoadKind, number>();
  private readonly pointIndex = new Map<Judged, number>();

  constructor(
    readonly graph: TurnGraph,
    readonly roads: Roads,
    readonly judge: RoadJudge,
    { guesses }: { readonly guesses: boolean },
  ) {
    this.guesses = guesses;
    const count = 2 * graph.edgeCount;
    this.kindOf = new Int32Array(count);
    this.pointOf = new Int32Array(count);
    this.waitOf = new Int32Array(count).fill(-1);
    this.cost = new Uint32Array(count);
    this.time = new Uint32Array(count);
    this.comesIn = new Float32Array(count).fill(Number.NaN);
    this.goesOut = new Float32Array(count).fill(Number.NaN);
  }

  /** What the checker says of the road of an edge, in its direction. */
  kind(directed: number): RoadKind {
    const known = this.kindOf[directed]!;
    if (known > 0) return this.kinds[known - 1] as RoadKind;
    const way = this.graph.way[directed >> 1]!;
    const driven = directed % 2 === 0;
    const kind = this.guesses ? this.judge.guessKind(way, driven) : this.judge.roadKind(way, driven);
    this.kindOf[directed] = indexIn(this.kinds, this.kindIndex, kind) + 1;
    return kind;
  }

  /** The same judged, wherever that kind of road is met from now on. @returns whether it had been guessed too well of */
  settle(directed: number): boolean {
    const guess = this.kind(directed);
    if (!guess.guessed) return false;
    const kind = this.judge.roadKind(this.graph.way[directed >> 1]!, directed % 2 === 0);
    const index = this.kindOf[directed]! - 1;
    this.kinds[index] = kind;
    this.kindIndex.set(kind, index);
    return (
      kind.open !== OPEN.always ||
      kind.priceTenths > 0 ||
      kind.doubt ||
      kind.clocked ||
      kind.ground !== guess.ground
    );
  }

  /** Judges every road from now on where it is met. */
  guessNoMore(): void {
    if (!this.guesses) return;
    this.guesses = false;
    for (let directed = 0; directed < this.kindOf.length; directed++) {
      const index = this.kindOf[directed]! - 1;
      if (this.kinds[index]?.guessed === true) this.kindOf[directed] = 0;
    }
  }

  /** The same at a minute. */
  kindWhen(directed: number, moment: LocalMoment): RoadKind {
    return this.judge.roadKind(this.graph.way[directed >> 1]!, directed % 2 === 0, moment);
  }

  /** What it says of the point at the end of an edge. */
  point(directed: number): Judged {
    const known = this.pointOf[directed]!;
    if (known > 0) return this.points[known - 1] as Judged;
    const point = this.pointWhen(directed, undefined);
    this.pointOf[directed] = indexIn(this.points, this.pointIndex, point) + 1;
    return point;
  }

  pointWhen(directed: number, moment: LocalMoment | undefined): Judged {
    const { head, way } = this.graph;
    return this.judge.point(head[directed]!, way[directed >> 1]!, directed % 2 === 0, moment);
  }

  /** Tenths of seconds that driving a whole edge counts, its price per metre included. */
  costTenths(directed: number): number {
    if (this.cost[directed] === 0) this.fill(directed);
    return this.cost[directed]!;
  }

  /** Tenths of seconds that driving it takes. */
  timeTenths(directed: number): number {
    if (this.cost[directed] === 0) this.fill(directed);
    return this.time[directed]!;
  }

  private fill(directed: number): void {
    const { timePerM, costPerM } = this.kind(directed);
    const lengthM = this.graph.lengthM[directed >> 1]!;
    let waitS = 0;
    const { firstRef, lastRef } = this.graph;
    for (let ref = firstRef[directed >> 1]! + 1; ref < lastRef[directed >> 1]!; ref++)
      waitS += this.delayS(this.roads.ways.refs[ref]!, directed);
    this.time[directed] = Math.max(1, Math.ceil(lengthM * timePerM + waitS * 10));
    this.cost[directed] = Math.max(1, Math.ceil(lengthM * costPerM + waitS * 10));
  }

  /** Tenths of seconds stood still at the end of an edge. */
  waitTenths(directed: number): number {
    if (this.waitOf[directed]! < 0)
      this.waitOf[directed] = Math.round(this.delayS(this.graph.head[directed]!, directed) * 10);
    return this.waitOf[directed]!;
  }

  private delayS(node: number, directed: number): number {
    const tags = this.roads.nodes.tags.get(node);
    return tags === undefined ? 0 : nodeDelay({ tags, forward: directed % 2 === 0 }, { waited: false }).waitS;
  }

  /** Radians, clockwise from north, of the last piece of an edge; nearby headings compare. */
  headingIn(directed: number): number {
    if (Number.isNaN(this.comesIn[directed]!)) this.comesIn[directed] = this.headingAt(directed, 'head');
    return this.comesIn[directed]!;
  }

  /** The same of its first piece. */
  headingOut(directed: number): number {
    if (Number.isNaN(this.goesOut[directed]!)) this.goesOut[directed] = this.headingAt(directed, 'tail');
    return this.goesOut[directed]!;
  }

  private headingAt(directed: number, end: 'head' | 'tail'): number {
    const { firstRef, lastRef } = this.graph;
    const forward = directed % 2 === 0;
    const last = forward === (end === 'head');
    const ref = last ? lastRef[directed >> 1]! - 1 : firstRef[directed >> 1]!;
    const { refs } = this.roads.ways;
    const { lat, lon } = this.roads.nodes;
    const from = refs[forward ? ref : ref + 1]!;
    const to = refs[forward ? ref + 1 : ref]!;
    const east = wrapLon(lon[to]! - lon[from]!) * Math.cos(toRad(lat[from]!));
    return Math.atan2(east, lat[to]! - lat[from]!);
  }
}

function indexIn<T>(list: T[], index: Map<T, number>, item: T): number {
  const known = index.get(item);
  if (known !== undefined) return known;
  list.push(item);
  index.set(item, list.length - 1);
  return list.length - 1;
}
