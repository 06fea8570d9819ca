import type { BrokenTurn, Drive, Leg, Span } from '../../drive/drive.ts';
import { findBrokenTurns, placeTurn } from '../../drive/match/find-broken-turns.ts';
import { stretchesOf } from '../../drive/match/lay-legs.ts';
import type { EdgePart } from '../../drive/match/trace-paths.ts';
import type { Roads } from '../../roads/roads.ts';
import type { TurnGraph } from '../graph/turn-graph.ts';
import { cut, moved } from './cut-legs.ts';
import { type DriveStep, driveSteps } from './drive-steps.ts';

/** A way off a drive and back on to it. */
export interface Detour {
  /** metres along the drive */
  readonly fromM: number;
  readonly toM: number;
  readonly parts: readonly EdgePart[];
}

const SAME_PLACE_M = 1e-3;

export function lengthOf(parts: readonly EdgePart[]): number {
  return parts.reduce((sum, { fromM, toM }) => sum + toM - fromM, 0);
}

/** The whole trip with the way in the place of the drive's own stretch, as if it had been matched. */
export function splice(drive: Drive, { fromM, toM, parts }: Detour, roads: Roads, graph: TurnGraph): Drive {
  const byM = lengthOf(parts) - (toM - fromM);
  const legs = [
    ...drive.legs.flatMap((leg) => cut(leg, Number.NEGATIVE_INFINITY, fromM)),
    ...stretchesOf(parts, fromM, graph),
    ...drive.legs.flatMap((leg) => cut(leg, toM, Number.POSITIVE_INFINITY)).map((leg) => moved(leg, byM)),
  ];
  const spans = (of: readonly Span[]) => [
    ...of.flatMap((span) => cutSpan(span, Number.NEGATIVE_INFINITY, fromM)),
    ...of
      .flatMap((span) => cutSpan(span, toM, Number.POSITIVE_INFINITY))
      .map((span) => ({ fromM: span.fromM + byM, toM: span.toM + byM })),
  ];
  const whole = {
    lengthM: drive.lengthM + byM,
    legs: joined(legs),
    guessed: spans(drive.guessed),
    doubtful: spans(drive.doubtful),
    brokenTurns: [],
  };
  return { ...whole, brokenTurns: brokenTurns(whole, roads, graph) };
}

function cutSpan(span: Span, lowM: number, highM: number): Span[] {
  const [fromM, toM] = [Math.max(span.fromM, lowM), Math.min(span.toM, highM)];
  return toM > fromM ? [{ fromM, toM }] : [];
}

/** Stretches of one way and direction that follow each other are one, as the match has them. */
function joined(legs: readonly Leg[]): Leg[] {
  const out: Leg[] = [];
  for (const leg of legs) {
    const last = out.at(-1);
    if (
      last?.kind === 'stretch' &&
      leg.kind === 'stretch' &&
      last.way === leg.way &&
      last.forward === leg.forward &&
      Math.abs(last.alongToM - leg.alongFromM) < SAME_PLACE_M
    )
      out[out.length - 1] = { ...last, alongToM: leg.alongToM, toM: leg.toM };
    else out.push(leg);
  }
  return out;
}

/** Every turn of a drive that a restriction speaks of, run by run. */
export function brokenTurns(drive: Drive, roads: Roads, graph: TurnGraph): BrokenTurn[] {
  const runs: DriveStep[][] = [];
  for (const step of driveSteps(drive, roads, graph)) {
    if (step.goesOn) runs.at(-1)?.push(step);
    else runs.push([step]);
  }
  return runs.flatMap((run) =>
    findBrokenTurns(
      run.map((step) => partOf(step, graph)),
      roads,
      graph,
    ).map((turn) => placeTurn(turn, run[0]!.fromM, roads)),
  );
}

/** A step as a part of its edge. */
export function partOf({ directed, fromM, toM, fromTail }: DriveStep, graph: TurnGraph): EdgePart {
  const drivenM = toM - fromM;
  const lengthM = graph.lengthM[directed >> 1]!;
  return fromTail
    ? { directed, fromM: 0, toM: Math.min(lengthM, drivenM) }
    : { directed, fromM: Math.max(0, lengthM - drivenM), toM: lengthM };
}
