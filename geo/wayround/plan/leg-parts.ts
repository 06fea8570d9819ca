import type { EdgePart } from '../../drive/match/trace-paths.ts';
import type { TurnGraph } from '../graph/turn-graph.ts';
import type { Found } from '../search/question.ts';
import type { Snapped } from './snap.ts';

/** A place of a plan on its road; at a stop the vehicle has business, so that roads for those who go there are open. */
export interface PlanStop extends Snapped {
  readonly stop: boolean;
  /** it may turn round there */
  readonly turns?: boolean;
}

/** A leg as it was found; `turned`: it begins with turning round where the leg before it stopped. */
export interface LegFound {
  readonly found: Found;
  readonly turned: boolean;
}

/** What is driven. */
export interface LaidParts {
  readonly parts: readonly EdgePart[];
  /** where each place lies on it, metres along */
  readonly placesM: readonly number[];
  /** places where the vehicle turns round, counted from 0 */
  readonly turnsAt: readonly number[];
}

/** The place of a stop along a directed edge, metres in its own direction. */
export function offsetM({ atM }: Snapped, directed: number, graph: TurnGraph): number {
  return directed % 2 === 0 ? atM : graph.lengthM[directed >> 1]! - atM;
}

/** Legs joined: a leg goes on along the edge that the one before it ended on, or has turned round there. */
export function partsOf(legs: readonly LegFound[], stops: readonly PlanStop[], graph: TurnGraph): LaidParts {
  const parts: EdgePart[] = [];
  const placesM = [0];
  let drivenM = 0;
  const drive = (part: EdgePart) => {
    drivenM += part.toM - part.fromM;
    parts.push(part);
  };
  for (const [leg, { found, turned }] of legs.entries()) {
    const edges = found.states.map((state) => graph.edgeOf[state]!);
    const [from, to] = [stops[leg], stops[leg + 1]];
    for (const [i, directed] of edges.entries()) {
      const toM = graph.lengthM[directed >> 1]!;
      const begins = i === 0 && (leg === 0 || turned);
      if (i > 0 || begins)
        drive({ directed, fromM: begins && from ? offsetM(from, directed, graph) : 0, toM });
    }
    const last = parts.at(-1);
    if (last === undefined || to === undefined) continue;
    const endM = offsetM(to, last.directed, graph);
    placesM.push(drivenM - (last.toM - endM));
    const next = legs[leg + 1];
    if (next !== undefined && !next.turned) continue;
    drivenM -= last.toM - endM;
    parts[parts.length - 1] = { ...last, toM: endM };
  }
  return {
    parts: parts.filter(({ fromM, toM }) => toM > fromM),
    placesM,
    turnsAt: legs.flatMap(({ turned }, leg) => (turned ? [leg] : [])),
  };
}
