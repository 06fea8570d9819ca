import type { Drive } from '../../geo/drive/drive.ts';
import { roadGraph } from '../../geo/graph/road-graph.ts';
import type { Roads } from '../../geo/roads/roads.ts';

/** Metres driven of each directed edge of the road graph. */
export type Driven = ReadonlyMap<number, number>;

export function drivenOf(drive: Drive, roads: Roads): Driven {
  const driven = new Map<number, number>();
  for (const { directed, fromM, toM } of piecesOf(drive, roads))
    driven.set(directed, (driven.get(directed) ?? 0) + toM - fromM);
  return driven;
}

interface Piece {
  readonly directed: number;
  /** metres along the drive */
  readonly fromM: number;
  readonly toM: number;
}

function* piecesOf(drive: Drive, roads: Roads): Generator<Piece> {
  const graph = roadGraph(roads);
  for (const leg of drive.legs) {
    if (leg.kind !== 'stretch') continue;
    const low = Math.min(leg.alongFromM, leg.alongToM);
    const high = Math.max(leg.alongFromM, leg.alongToM);
    const last = roads.ways.start[leg.way + 1]! - 1;
    for (let ref = roads.ways.start[leg.way]!; ref < last; ref++) {
      const [begin, end] = [Math.max(low, graph.alongM[ref]!), Math.min(high, graph.alongM[ref + 1]!)];
      if (end <= begin) continue;
      const fromM = leg.fromM + (leg.forward ? begin - low : high - end);
      const directed = 2 * graph.edgeOfSegment[ref]! + (leg.forward ? 0 : 1);
      yield { directed, fromM, toM: fromM + end - begin };
    }
  }
}

export interface Score {
  /** metres of the true drive matched on the right way in the right direction */
  readonly rightM: number;
  /** true, but not matched */
  readonly missedM: number;
  /** matched, but not true */
  readonly addedM: number;
}

/** Compares a match with the truth, edge by edge with direction, as often as each is driven. */
export function scoreMatch(truth: Driven, matched: Driven): Score {
  let [rightM, missedM, addedM] = [0, 0, 0];
  for (const [directed, trueM] of truth) {
    const right = Math.min(trueM, matched.get(directed) ?? 0);
    rightM += right;
    missedM += trueM - right;
  }
  for (const [directed, metres] of matched) addedM += Math.max(0, metres - (truth.get(directed) ?? 0));
  return { rightM, missedM, addedM };
}

export interface GuessScore {
  readonly rightM: number;
  /** of that, marked as guessed */
  readonly rightMarkedM: number;
  readonly wrongM: number;
  /** of that, not marked */
  readonly wrongUnmarkedM: number;
}

/** How well the spans marked as guessed tell the wrong pieces of a drive from the right ones. */
export function scoreGuesses(drive: Drive, truth: Driven, roads: Roads): GuessScore {
  const left = new Map(truth);
  const sum = { rightM: 0, rightMarkedM: 0, wrongM: 0, wrongUnmarkedM: 0 };
  for (const { directed, fromM, toM } of piecesOf(drive, roads)) {
    const lengthM = toM - fromM;
    const right = Math.min(lengthM, left.get(directed) ?? 0);
    left.set(directed, (left.get(directed) ?? 0) - right);
    const marked = markedShare(drive, fromM, toM);
    sum.rightM += right;
    sum.rightMarkedM += right * marked;
    sum.wrongM += lengthM - right;
    sum.wrongUnmarkedM += (lengthM - right) * (1 - marked);
  }
  return sum;
}

function markedShare({ guessed }: Drive, fromM: number, toM: number): number {
  let markedM = 0;
  for (const span of guessed) markedM += Math.max(0, Math.min(toM, span.toM) - Math.max(fromM, span.fromM));
  return toM > fromM ? markedM / (toM - fromM) : 0;
}
