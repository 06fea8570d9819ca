import { pick } from '../../tags/pick.ts';
import { isSiteRoad } from '../../tags/road-class.ts';
import { breakoverRad, departureSlope } from '../../vehicle/ground-angles.ts';
import { drivenWays, type Place } from '../places.ts';
import type { SubjectRule } from '../rule.ts';
import type { SlopeBreak } from './say-passage.ts';
import { sayBreak } from './say-passage.ts';
import { slopesOn } from './slope.ts';

/** Ways further apart do not meet. Metres. */
const MEETING_M = 1;

/**
 * Breaks of grade where one incline meets another, a way without one taken as level: concave ones against the tail
 * (h / O), convex ones against the belly. Only with the card's clearances, and only between ways that meet.
 */
export const slopeBreak: SubjectRule = (input) => {
  const clears = { tail: departureSlope(input.card), bellyRad: breakoverRad(input.card) };
  if (clears.tail === undefined && clears.bellyRad === undefined) return [];
  const mapped = new Map(slopesOn(input).map(({ place, incline }) => [place, incline]));
  const gradeOf = (place: Place): Grade | undefined => {
    const incline = mapped.get(place);
    if (incline === undefined) return { mapped: undefined, percent: 0 };
    return incline.kind === 'percent' ? { mapped: incline.percent, percent: incline.percent } : undefined;
  };
  const places = drivenWays(input.drive, input.roads);
  return places.flatMap((place, i) => {
    const before = places[i - 1];
    if (before === undefined || place.fromM - before.toM > MEETING_M) return [];
    const [from, to] = [gradeOf(before), gradeOf(place)];
    const touches = from === undefined || to === undefined ? undefined : touch(from, to, clears);
    if (from === undefined || to === undefined || touches === undefined) return [];
    const steeper = Math.abs(to.percent) > Math.abs(from.percent) ? place : before;
    return [
      {
        subject: 'slope',
        kind: 'break of slope',
        level: 'care',
        again: 'folded',
        run: [{ place: steeper, fromM: place.fromM, toM: place.fromM }],
        aspect: 'break',
        tags: pick(steeper.tags, ['incline']),
        // public roads are laid out in curves, up and down as well; ramps into yards and car parks are not
        folded: !isSiteRoad(before.tags) && !isSiteRoad(place.tags),
        ...sayBreak(touches),
      },
    ];
  });
};

/** Per cent, up as driven; level where nothing is mapped. */
interface Grade {
  readonly mapped: number | undefined;
  readonly percent: number;
}

/** The part that a sharp break would touch. @param clears slope of the tail, angle of the belly */
function touch(
  from: Grade,
  to: Grade,
  { tail, bellyRad }: { readonly tail: number | undefined; readonly bellyRad: number | undefined },
): SlopeBreak | undefined {
  const change = Math.atan(to.percent / 100) - Math.atan(from.percent / 100);
  const slopes = { fromPercent: from.mapped, toPercent: to.mapped };
  if (change > 0 && tail !== undefined && change > Math.atan(tail))
    return { part: 'tail', clears: tail, ...slopes };
  if (change < 0 && bellyRad !== undefined && -change > bellyRad)
    return { part: 'belly', clears: Math.tan(bellyRad), ...slopes };
  return undefined;
}
