import type { CheckInput } from '../../check.ts';
import { passesOf } from '../../day/passes.ts';
import { traceDrive } from '../../drive/times/trace.ts';
import type { ServiceKind } from '../../services/kinds.ts';
import { offersOf } from '../../services/offers.ts';
import type { Offer, ServicePoint } from '../../services/point.ts';

/** Places so far beside the drive are looked at. Metres. */
export const REACH_M = 3_000;
/** Of so many passes of places a way is looked for: the nearest. */
const MOST_TRIED = 30;

/** One pass of the drive by a place. */
export interface Candidate {
  readonly point: ServicePoint;
  readonly offers: readonly Offer[];
  readonly nearM: number;
  readonly awayM: number;
}

/** What is looked for along a drive, and where. */
export interface Asked {
  readonly check: Pick<CheckInput, 'drive' | 'roads'>;
  readonly points: readonly ServicePoint[];
  readonly wanted: readonly ServiceKind[];
}

/** Passes by places that have what is wanted, those that say so first; and how many more there are. */
export function candidatesOf({ check, points, wanted }: Asked): { tried: Candidate[]; leftOut: number } {
  const trace = traceDrive(check.drive, check.roads);
  const all = points.flatMap((point) => {
    const offers = offersOf(point.tags).filter(({ kind }) => wanted.includes(kind));
    if (offers.length === 0) return [];
    return passesOf(trace, point, REACH_M).map(({ atM, awayM }) => ({ point, offers, nearM: atM, awayM }));
  });
  const doubt = ({ offers }: Candidate) => (offers.some(({ is }) => is === 'yes') ? 0 : 1);
  all.sort((a, b) => doubt(a) - doubt(b) || a.awayM - b.awayM);
  return { tried: all.slice(0, MOST_TRIED), leftOut: Math.max(0, all.length - MOST_TRIED) };
}
