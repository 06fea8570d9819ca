import { capital, countedInWords, listed } from '../units/text.ts';
import type { Kind, Subject } from './kinds.ts';
import type { Finding } from './report.ts';

/** Folded findings of one sort, with the words for one and for several. */
export interface Sort {
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

/** What a folded finding is counted as. */
export function sortOf({ level, kind, subject, note }: Finding): Sort {
  if (level === 'care') return note === undefined ? OTHER : SETTLED;
  if (level !== 'unknown') return kind === 'back up once' ? MORE_CORNERS : MET_AGAIN;
  const fits = ({ kinds, subjects }: Sort) =>
    kinds?.includes(kind) === true || subjects?.includes(subject) === true;
  return UNKNOWN.find(fits) ?? OTHER;
}
