import type { Finding } from '../finding.ts';
import type { Verdict } from '../level.ts';
import { verdictOf } from '../verdict.ts';
import type { WayRound } from '../way-round.ts';

/** As much of a way as says what of the drive it takes the place of, and what is on it. */
export type WayOnDrive = Pick<WayRound, 'findingIds' | 'fromM' | 'toM' | 'extraM' | 'findings'>;

/** A drive with ways in place of its own stretches, as it will be judged once they are taken. */
export interface DriveByWays {
  readonly verdict: Verdict;
  /** in driving order, metres along the drive with the ways in it */
  readonly findings: Finding[];
  /** what is still met on the drive's own stretches, metres along the drive as it is */
  readonly left: readonly Finding[];
}

/** Rounding of places along a drive. Metres. */
const SAME_PLACE_M = 0.5;

/**
 * What the whole drive comes to by some ways that are driven together, without a check of it: what the ways pass or leave
 * aside is gone, what is on them has come. What was folded since a like place was told before stands for itself where that
 * one is gone.
 */
export function driveByWays(findings: readonly Finding[], ways: readonly WayOnDrive[]): DriveByWays {
  const inOrder = [...ways].sort((a, b) => a.fromM - b.fromM);
  const left = findings.filter((finding) => inOrder.every((way) => staysBeside(finding, way)));
  /** how much longer the ways before a place have made the drive */
  const longerM = (atM: number) =>
    inOrder.filter(({ toM }) => toM <= atM + SAME_PLACE_M).reduce((sum, { extraM }) => sum + extraM, 0);
  const placed = [
    ...left.map((finding) => moved(finding, longerM(finding.fromM), longerM(finding.toM))),
    ...inOrder.flatMap((way) => {
      const byM = way.fromM + longerM(way.fromM);
      return way.findings.filter((own) => !goesOn(own, way, left)).map((own) => moved(own, byM, byM));
    }),
  ];
  const all = unfolded(placed.sort((a, b) => a.fromM - b.fromM));
  return { verdict: verdictOf(all), findings: all, left };
}

function moved(finding: Finding, fromByM: number, toByM: number): Finding {
  const fromM = finding.fromM + fromByM;
  return { ...finding, fromM, toM: Math.max(fromM, finding.toM + toByM) };
}

/** What reaches further than the stretch a way takes the place of is still met before or behind it. */
function staysBeside({ id, fromM, toM }: Finding, way: WayOnDrive): boolean {
  if (way.findingIds.includes(id)) return false;
  return fromM < way.fromM - SAME_PLACE_M || toM > way.toM + SAME_PLACE_M;
}

/** A finding of the drive that goes on into the way is one, not two. */
function goesOn(own: Finding, way: WayOnDrive, left: readonly Finding[]): boolean {
  return left.some(
    (finding) =>
      finding.subject === own.subject &&
      finding.kind === own.kind &&
      finding.level === own.level &&
      finding.toM > way.fromM - SAME_PLACE_M &&
      finding.fromM < way.toM + SAME_PLACE_M &&
      finding.osm.some(({ type, id }) => own.osm.some((one) => one.type === type && one.id === id)),
  );
}

/** What may stop the vehicle is folded only beside a worse or an earlier one of its kind. */
function unfolded(findings: readonly Finding[]): Finding[] {
  const told = new Set(findings.filter(({ folded }) => folded !== true).map(sortOf));
  return findings.map((finding) => {
    const { folded, level } = finding;
    if (folded !== true || (level !== 'barred' && level !== 'tight') || told.has(sortOf(finding)))
      return finding;
    told.add(sortOf(finding));
    const { folded: _, ...open } = finding;
    return open;
  });
}

function sortOf({ subject, kind, level }: Finding): string {
  return `${subject} ${kind} ${level}`;
}
