import { distanceIn, type Units } from '../units/in-units.ts';
import { capital, clip } from '../units/text.ts';
import type { Finding } from './finding.ts';
import { type Sort, sortOf } from './say-slight.ts';

/** Folded findings of one sort, as a driver finds them. */
interface FoldedPlaces {
  /** `Bridges without a height (read the signs)` */
  readonly what: string;
  /** in driving order, each road once: `Mill Lane at 0.7 km, 3.4 km` */
  readonly places: readonly string[];
}

/** Whether a folded finding is told with its place: all that may stop the vehicle. What a note settles has its own line. */
export function isToBeFound({ folded, level, note }: Finding): boolean {
  return folded === true && level !== 'care' && note === undefined;
}

/** Where everything is that is folded though it may stop the vehicle; what only asks for care is counted, not placed. */
export function foldedPlaces(findings: readonly Finding[], units: Units): FoldedPlaces[] {
  const bySort = new Map<Sort, Map<string, string[]>>();
  for (const finding of findings.filter(isToBeFound)) {
    const sort = sortOf(finding);
    const roads = bySort.get(sort) ?? new Map<string, string[]>();
    const road = finding.road === undefined ? 'a road without a name' : clip(finding.road, 60);
    roads.set(road, [...(roads.get(road) ?? []), distanceIn(units, finding.fromM)]);
    bySort.set(sort, roads);
  }
  return [...bySort].map(([{ one, several, signed }, roads]) => {
    const places = [...roads].map(([road, at]) => `${road} at ${at.join(', ')}`);
    const single = [...roads.values()].flat().length === 1;
    return { what: `${capital(single ? one : several)}${signed ? ' (read the signs)' : ''}`, places };
  });
}

/** The same, a line for each sort: `Bridges without a height (read the signs): A7 at 1.2 km, 3.4 km; Mill Lane at 7.8 km.` */
export function sayFoldedPlaces(findings: readonly Finding[], units: Units): string[] {
  return foldedPlaces(findings, units).map(({ what, places }) => `${what}: ${places.join('; ')}.`);
}
