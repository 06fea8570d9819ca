import { lookUp } from '../../country/look-up.ts';
import { smallest } from '../../lists.ts';
import type { Driven } from '../../tags/driven.ts';

/** What passing a node costs: seconds stood still on average, and the speed it is passed at. */
interface NodeDelay {
  readonly waitS: number;
  /** km/h; Infinity where it does not slow */
  readonly passKmh: number;
}

const NO_DELAY: NodeDelay = { waitS: 0, passKmh: Number.POSITIVE_INFINITY };

/** Averages over times of day, deliberately light. Common practice, no source. */
const SIGNALS: NodeDelay = { waitS: 12, passKmh: 30 };
const HIGHWAY: Readonly<Record<string, NodeDelay>> = {
  stop: { waitS: 3, passKmh: 5 },
  give_way: { waitS: 2, passKmh: 15 },
  mini_roundabout: { waitS: 1, passKmh: 20 },
  toll_gantry: NO_DELAY,
};
const CALMING: Readonly<Record<string, NodeDelay>> = {
  hump: { waitS: 0, passKmh: 20 },
  bump: { waitS: 0, passKmh: 10 },
  table: { waitS: 0, passKmh: 25 },
  cushion: { waitS: 0, passKmh: 20 },
  chicane: { waitS: 1, passKmh: 20 },
  choker: { waitS: 2, passKmh: 20 },
};
const BARRIER: Readonly<Record<string, NodeDelay>> = {
  gate: { waitS: 40, passKmh: 5 },
  lift_gate: { waitS: 15, passKmh: 5 },
  swing_gate: { waitS: 40, passKmh: 5 },
  toll_booth: { waitS: 30, passKmh: 5 },
  border_control: { waitS: 60, passKmh: 5 },
  cattle_grid: { waitS: 0, passKmh: 20 },
  height_restrictor: { waitS: 0, passKmh: 10 },
};
const LEVEL_CROSSING: NodeDelay = { waitS: 5, passKmh: 30 };

/** Whether a node's signals are for one direction along the way that reaches it. */
export function hasSignals(driven: Driven): boolean {
  return driven.tags['highway'] === 'traffic_signals' && !isAgainst(driven);
}

/**
 * Delay at a node for one direction along the way that reaches it; signs for the other direction cost nothing, nor do
 * signals of a junction that was waited at already.
 */
export function nodeDelay(driven: Driven, { waited }: { readonly waited: boolean }): NodeDelay {
  const { tags } = driven;
  const against = isAgainst(driven);
  const found = [
    hasSignals(driven) && !waited ? SIGNALS : undefined,
    against ? undefined : lookUp(HIGHWAY, tags['highway']),
    against ? undefined : lookUp(CALMING, tags['traffic_calming']),
    lookUp(BARRIER, tags['barrier']),
    tags['railway'] === 'level_crossing' ? LEVEL_CROSSING : undefined,
  ].filter((delay) => delay !== undefined);
  if (found.length === 0) return NO_DELAY;
  return {
    waitS: found.reduce((sum, { waitS }) => sum + waitS, 0),
    passKmh: smallest(found.map(({ passKmh }) => passKmh)),
  };
}

function isAgainst({ tags, forward }: Driven): boolean {
  const direction = tags['direction'] ?? tags['traffic_signals:direction'];
  return direction === (forward ? 'backward' : 'forward');
}
