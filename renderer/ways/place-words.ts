import { nameSubject } from '../../geo/report/name-place.ts';
import type { Finding } from '../../geo/report/report.ts';
import { distanceIn, type Units } from '../../geo/units/in-units.ts';
import { clip, counted } from '../../geo/units/text.ts';

/** A finding's place as ways are told past it: `Tanner Row at 2.2 km`, without a name `width at 2.2 km`. */
export function namePast(finding: Finding, units: Units): string {
  const at = distanceIn(units, finding.fromM);
  return `${finding.road === undefined ? nameSubject(finding) : clip(finding.road, 40)} at ${at}`;
}

/** Several places that one way passes: `Tanner Row at 2.2 km and 2 more`. */
export function namePastAll(findings: readonly Finding[], units: Units): string {
  const [first, ...others] = findings;
  if (!first) return counted(0, 'place');
  return others.length === 0 ? namePast(first, units) : `${namePast(first, units)} and ${others.length} more`;
}

/** The findings of a list of ids, the one that was asked about first. */
export function findingsOf(
  ids: readonly string[],
  among: readonly Finding[],
  asked: string | undefined,
): Finding[] {
  const found = among.filter(({ id }) => ids.includes(id));
  return [...found.filter(({ id }) => id === asked), ...found.filter(({ id }) => id !== asked)];
}
