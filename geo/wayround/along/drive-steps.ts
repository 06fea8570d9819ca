import type { Drive, Stretch } from '../../drive/drive.ts';
import type { Roads } from '../../roads/roads.ts';
import type { TurnGraph } from '../graph/turn-graph.ts';

/** Part of a directed edge of the turn graph that a drive drives in one go. */
export interface DriveStep {
  readonly directed: number;
  /** metres along the drive */
  readonly fromM: number;
  readonly toM: number;
  /** it begins at the edge's first node, ends at its last */
  readonly fromTail: boolean;
  readonly toHead: boolean;
  /** the step before is driven up to where this one begins; false at the first and behind a break */
  readonly goesOn: boolean;
}

const SAME_PLACE_M = 1e-3;

/** A drive as steps along the turn graph, in driving order. What lies off the map is between them. */
export function driveSteps(drive: Drive, roads: Roads, graph: TurnGraph): DriveStep[] {
  const steps: DriveStep[] = [];
  for (const leg of drive.legs) {
    if (leg.kind !== 'stretch') continue;
    for (const step of stepsOf(leg, roads, graph)) {
      const last = steps.at(-1);
      const goesOn = last?.toHead === true && step.fromTail && touches(graph, last, step);
      steps.push({ ...step, goesOn });
    }
  }
  return steps;
}

function touches(graph: TurnGraph, last: DriveStep, next: Omit<DriveStep, 'goesOn'>): boolean {
  return graph.head[last.directed] === graph.tail[next.directed] && next.fromM - last.toM < SAME_PLACE_M;
}

function stepsOf(stretch: Stretch, roads: Roads, graph: TurnGraph): Omit<DriveStep, 'goesOn'>[] {
  const { way, forward, alongFromM, alongToM, fromM } = stretch;
  const first = graph.edgeOfSegment[roads.ways.start[way]!]!;
  const last = graph.edgeOfSegment[roads.ways.start[way + 1]! - 2]!;
  const [lowM, highM] = forward ? [alongFromM, alongToM] : [alongToM, alongFromM];
  const steps: Omit<DriveStep, 'goesOn'>[] = [];
  for (let edge = first; edge <= last; edge++) {
    const [beginM, endM] = [graph.alongM[graph.firstRef[edge]!]!, graph.alongM[graph.lastRef[edge]!]!];
    const [startM, stopM] = [Math.max(lowM, beginM), Math.min(highM, endM)];
    if (stopM - startM < SAME_PLACE_M && endM - beginM >= SAME_PLACE_M) continue;
    if (stopM < startM) continue;
    const [wholeBegin, wholeEnd] = [startM - beginM < SAME_PLACE_M, endM - stopM < SAME_PLACE_M];
    steps.push({
      directed: 2 * edge + (forward ? 0 : 1),
      fromM: fromM + (forward ? startM - alongFromM : alongFromM - stopM),
      toM: fromM + (forward ? stopM - alongFromM : alongFromM - startM),
      fromTail: forward ? wholeBegin : wholeEnd,
      toHead: forward ? wholeEnd : wholeBegin,
    });
  }
  return forward ? steps : steps.reverse();
}
