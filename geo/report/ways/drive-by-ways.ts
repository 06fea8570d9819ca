import type { Finding } from '../finding.ts';
import type { Verdict } from '../level.ts';
import { verdictOf } from '../verdict.ts';
import type { WayRound } from '../way-round.ts';

/** As much of a way as says what of the drive it takes the place of, and what is on it. */
export type WayOnDrive = Pick<WayRound, 'findingIds' | 'fromM' | 'toM' | 'findings'>;

/** A drive with ways in place of its own stretches, as it will be judged once they are taken. */
export interface DriveByWays {
  readonly verdict: Verdict;
  /** by their metres as placed: where nothing places them, along the drive as it is, or along a way */
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
 * @param place moves a finding, of the drive or of the way named, to where it is met once the ways are taken
 */
export function driveByWays(
  findings: readonly Finding[],
  ways: readonly WayOnDrive[],
  place: (finding: Finding, way?: WayOnDrive) => Finding = (finding) => finding,
): DriveByWays {
  const left = findings.filter((finding) => ways.every((way) => staysBeside(finding, way)));
  const all = [
    ...left.map((finding) => place(finding)),
    ...ways.flatMap((way) => way.findings.filter((own) => !goesOn(own, left)).map((own) => place(own, way))),
  ];
  const told = unfolded(all.sort((a, b) => a.fromM - b.fromM));
  return { verdict: verdictOf(told), findings: told, left };
}

/** What reaches further than the stretch a way takes the place of is still met before or behind it. */
function staysBeside({ id, fromM, toM }: Finding, way: WayOnDrive): boolean {
  if (way.findingIds.includes(id)) return false;
  return fromM < way.fromM - SAME_PLACE_M || toM > way.toM + SAME_PLACE_M;
}

/** A finding of the drive that goes on into the way is one, not two. */
function goesOn(own: Finding, left: readonly Finding[]): boolean {
  const of = sortOf(own);
  return left.some(
    (finding) => sortOf(finding) === of && finding.osm.some(({ id }) => own.osm.some((one) => one.id === id)),
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
