import { shortIn, type Units } from '../units/in-units.ts';
import type { Turn } from './turn.ts';

/** A range no wider is not worth two figures. Metres. */
const RANGE_LEAST_M = 0.01;
/** A swing that nobody sees. Metres. */
const HARDLY_M = 0.025;

/** The figures of one turn as they stand in its row and beside its drawing: the same, rounded alike against the driver. */
interface TurnFigures {
  /** the tail's swing on the sweep that fits, with its range */
  readonly plan: string;
  readonly gently: string;
  /** at full lock, with its range, and that it was measured where it was */
  readonly worst: string;
  /** from the middle of its lane the gap beside it; undefined where no such edge is */
  readonly gap: string | undefined;
}

/** A turn to the nearest five degrees, as maps draw no corner more exactly: `100°`. */
export function sayTurnDeg({ turnDeg }: Pick<Turn, 'turnDeg'>): string {
  return `${Math.round(turnDeg / 5) * 5}°`;
}

/**
 * `keep 65 cm free to the left`: what the driver does about the tail, one figure wherever the turn is told. It is the
 * most that the tail may come out there, however the wheel is turned.
 */
export function sayKeepFree({ swing }: Pick<Turn, 'swing'>, units: Units): string {
  return `keep ${shortIn(units, keepFreeM({ swing }), 'up')} free to the ${swing.side}`;
}

/** The most that the tail may come out in a turn. Metres. */
export function keepFreeM({ swing }: Pick<Turn, 'swing'>): number {
  return Math.max(swing.planToM, swing.worstToM);
}

/** The most that the tail may come out on the way judged: on the sweep that fits, else at full lock. Metres. */
export function mostOutM(turn: Pick<Turn, 'swing' | 'room'>): number {
  return turn.room === 'back up' ? keepFreeM(turn) : turn.swing.planToM;
}

/** How far a tail that comes out so far goes over the edge of its lane, begun in the middle of it; undefined: it stays within. */
export function sayOverLane({ start }: Pick<Turn, 'start'>, outM: number, units: Units): string | undefined {
  const overM = start === undefined ? 0 : outM - start.gapM;
  return overM > 0 ? shortIn(units, overM, 'up') : undefined;
}

/** The figures of a turn in words. */
export function sayTurnFigures({ swing, start, lockFrom }: Turn, units: Units): TurnFigures {
  const measured = lockFrom === 'measured' ? ', full lock as measured in the yard' : '';
  return {
    plan: `${shortIn(units, swing.planM, 'up')}${range(units, swing.planFromM, swing.planToM)}`,
    gently: swing.gentleM < HARDLY_M ? 'hardly at all' : shortIn(units, swing.gentleM, 'up'),
    worst: `${shortIn(units, swing.worstM, 'up')}${range(units, swing.worstFromM, swing.worstToM)}${measured}`,
    gap: start && shortIn(units, start.gapM, 'down'),
  };
}

/** ` (20 to 31 cm)`, rounded outwards; nothing where both ends are the figure itself. */
function range(units: Units, fromM: number, toM: number): string {
  if (toM - fromM < RANGE_LEAST_M) return '';
  const to = shortIn(units, toM, 'up');
  const low = shortIn(units, fromM, 'down');
  // one unit is said once
  const from = units === 'both' ? low : low.replace(/ (cm|in)$/, '');
  return ` (${from} to ${to})`;
}
