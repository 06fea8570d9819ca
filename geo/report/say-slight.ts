import { distanceIn, type Units } from '../units/in-units.ts';
import { capital, clip, countedInWords, listed } from '../units/text.ts';
import type { Kind, Subject } from './kinds.ts';
import type { Finding } from './report.ts';

/** Folded findings of one sort, with the words for one and for several. */
interface Sort {
  readonly kinds?: readonly Kind[];
  readonly subjects?: readonly Subject[];
  readonly one: string;
  readonly several: string;
  /** a sign may stand there that settles it */
  readonly signed?: true;
}

/** The first that fits counts; what fits none is told last. */
const UNKNOWN: readonly Sort[] = [
  {
    kinds: ['bridge above', 'gateway'],
    one: 'bridge without a height',
    several: 'bridges without a height',
    signed: true,
  },
  { kinds: ['roof'], one: 'tunnel without a height', several: 'tunnels without a height', signed: true },
  {
    kinds: ['building above'],
    one: 'building drawn over the road',
    several: 'buildings drawn over the road',
    signed: true,
  },
  { kinds: ['off the map'], one: 'short bit off the map', several: 'short bits off the map' },
  { kinds: ['gap in the route'], one: 'short break in the route', several: 'short breaks in the route' },
  { kinds: ['guessed'], one: 'part filled in', several: 'parts filled in' },
  {
    subjects: ['height', 'width', 'length', 'mass', 'axle'],
    one: 'limit that does not seem to bind this vehicle',
    several: 'limits that do not seem to bind this vehicle',
    signed: true,
  },
];
/** Folded, since worse ones stand before them, or since they were told where they were met first. */
const MORE_CORNERS: Sort = {
  one: 'further corner where it has to back up once',
  several: 'further corners where it has to back up once',
};
const MET_AGAIN: Sort = { one: 'place told above and met again', several: 'places told above and met again' };
const SETTLED: Sort = {
  one: 'place that the firm’s own note settles',
  several: 'places that the firm’s own notes settle',
};
const OTHER: Sort = { one: 'other minor place', several: 'other minor places' };

/**
 * What is folded away, in one line: "19 bridges without a height and one other minor place: read the signs."
 * @returns undefined where nothing is
 */
export function sayFolded(findings: readonly Finding[]): string | undefined {
  const counts = new Map<Sort, number>();
  for (const finding of findings) {
    if (finding.folded !== true) continue;
    const sort = sortOf(finding);
    counts.set(sort, (counts.get(sort) ?? 0) + 1);
  }
  const told = [MORE_CORNERS, MET_AGAIN, ...UNKNOWN, SETTLED, OTHER].flatMap((sort) => {
    const count = counts.get(sort);
    return count === undefined ? [] : [{ sort, count }];
  });
  if (told.length === 0) return undefined;
  const parts = told.map(({ sort: { one, several }, count }) => countedInWords(count, one, several));
  const toDo = told.some(({ sort }) => sort.signed) ? ': read the signs' : '';
  const list = `${listed(parts)}${toDo}.`;
  return `${capital(list)}`;
}

function sortOf({ level, kind, subject, note }: Finding): Sort {
  if (level === 'care') return note === undefined ? OTHER : SETTLED;
  if (level !== 'unknown') return kind === 'back up once' ? MORE_CORNERS : MET_AGAIN;
  const fits = ({ kinds, subjects }: Sort) =>
    kinds?.includes(kind) === true || subjects?.includes(subject) === true;
  return UNKNOWN.find(fits) ?? OTHER;
}

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
