import { distanceIn, lengthIn, type Units } from '../units/in-units.ts';
import { clip, lowerFirst } from '../units/text.ts';
import { decidingOf } from './deciding.ts';
import type { Kind } from './kinds.ts';
import { LEVEL_WORD } from './level.ts';
import type { Finding } from './report.ts';
import { SUBJECT_WORD } from './subject-word.ts';

/** A finding in as few words as tell it from the others. */
interface PlaceName {
  /** `Barred width` */
  readonly what: string;
  /** `width` */
  readonly subject: string;
  /** `0.35 m over`; undefined where no figure is mapped */
  readonly figure: string | undefined;
  /** the road, where it has a name or number */
  readonly road: string | undefined;
  /** `2.2 km` */
  readonly at: string;
}

/** What it is about, small: `narrow road`; of the map itself what is wrong with it, `off the map`. */
export function nameSubject({ subject, kind }: Pick<Finding, 'subject' | 'kind'>): string {
  return subject === 'map' ? (MAP_WORD[kind] ?? kind) : lowerFirst(SUBJECT_WORD[subject]);
}

/** Kinds that do not say by themselves what they are of. */
const MAP_WORD: Partial<Readonly<Record<Kind, string>>> = {
  incomplete: 'map incomplete',
  guessed: 'road guessed',
  'not understood': 'map not understood',
};

/** What a finding is called on a mark, or under the verdict. */
export function namePlace(finding: Finding, units: Units): PlaceName {
  const { level, fromM, road } = finding;
  const about = nameSubject(finding);
  return {
    what: `${LEVEL_WORD[level]} ${about}`,
    subject: about,
    figure: figureOf(finding, units),
    road: road === undefined ? undefined : clip(road, 60),
    at: distanceIn(units, fromM),
  };
}

/** The same in one line: `Barred width: 0.35 m over, Tanner Row, 2.2 km`. */
export function namePlaceInLine(finding: Finding, units: Units): string {
  const { what, figure, road, at } = namePlace(finding, units);
  return `${what}: ${[figure, road, at].filter((part) => part !== undefined).join(', ')}`;
}

function figureOf(finding: Finding, units: Units): string | undefined {
  const decides = decidingOf(finding, units);
  switch (decides.kind) {
    case 'sum':
      return `${decides.sum.short} ${decides.sum.over ? 'over' : 'spare'}`;
    case 'text':
      return clip(decides.text, 24);
    case 'reach':
      return `for ${lengthIn(units, decides.lengthM)}`;
    case 'no figure':
      return 'no figure';
    case 'place':
      return undefined;
  }
}
