import { fail, type Problem } from '../result.ts';
import type { Drive } from './drive.ts';

/** Roads and gaps of a drive across a continent and back; each may be a finding, and a page of more is read by nobody. */
const MOST_LEGS = 100_000;

/** Why a drive is not checked that goes to and fro, or breaks off, more often than anybody drives; undefined where it may be. */
export function refuseEndless({ legs }: Pick<Drive, 'legs'>): Problem | undefined {
  if (legs.length <= MOST_LEGS) return undefined;
  return fail(
    'drive.endless',
    `The drive changes roads, turns back or breaks off ${legs.length} times, which no drive does (${MOST_LEGS} are checked). Is it a drive? If so, check it in parts.`,
  ).error;
}
