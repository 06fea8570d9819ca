import { printCm } from '../units/print.ts';
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
  /** from the middle of its lane: the gap beside it, and how far the tail goes over that; undefined where no such edge is */
  readonly gap: string | undefined;
  readonly over: string | undefined;
}

/** The figures of a turn in words. */
export function sayTurnFigures({ swing, start, lockFrom }: Turn): TurnFigures {
  const measured = lockFrom === 'measured' ? ', full lock as measured in the yard' : '';
  return {
    plan: `${printCm(swing.planM, 'up')}${range(swing.planFromM, swing.planToM)}`,
    gently: swing.gentleM < HARDLY_M ? 'hardly at all' : printCm(swing.gentleM, 'up'),
    worst: `${printCm(swing.worstM, 'up')}${range(swing.worstFromM, swing.worstToM)}${measured}`,
    gap: start && printCm(start.gapM, 'down'),
    over: start && start.overM > 0 ? printCm(start.overM, 'up') : undefined,
  };
}

/** ` (20 to 31 cm)`, rounded outwards; nothing where both ends are the figure itself. */
function range(fromM: number, toM: number): string {
  if (toM - fromM < RANGE_LEAST_M) return '';
  return ` (${printCm(fromM, 'down').replace(' cm', '')} to ${printCm(toM, 'up')})`;
}
