import type { KindOf } from '../../report/kinds.ts';
import { drivenIncline, type Incline, readIncline } from '../../tags/incline.ts';
import { pick } from '../../tags/pick.ts';
import { isSiteRoad } from '../../tags/road-class.ts';
import { printRun } from '../../units/print.ts';
import { breakoverRad, departureSlope, printSlope } from '../../vehicle/ground-angles.ts';
import type { Draft } from '../finding.ts';
import { drivenWays, type Place } from '../places.ts';
import type { RuleInput, SubjectRule } from '../rule.ts';
import { coveredM, joinRuns, type Piece, type Run, wholeOf } from '../run.ts';

/** Signed as steep. Per cent; common practice, no source. */
const STEEP = 10;
const VERY_STEEP = 15;
/** Shorter level pieces do not end a hill. Metres. */
const GAP_M = 100;

interface SlopePiece extends Piece {
  readonly incline: Incline;
}

/** Steep inclines, up and down as driven; and breaks of grade that the tail or the belly may not clear. */
export const slope: SubjectRule = (input) => {
  const pieces = drivenWays(input.drive, input.roads).flatMap((place): SlopePiece[] => {
    const text = place.tags['incline'];
    if (text === undefined) return [];
    return [{ ...wholeOf(place), incline: drivenIncline(readIncline(text), place.forward) }];
  });
  return [
    ...joinRuns(pieces.filter(isWorthAWord), GAP_M, groupOf).map(slopeDraft),
    ...gradeBreaks(input, pieces),
  ];
};

function isWorthAWord({ incline }: SlopePiece): boolean {
  return incline.kind !== 'percent' || Math.abs(incline.percent) >= STEEP;
}

function groupOf({ incline }: SlopePiece): string {
  if (incline.kind !== 'percent') return incline.kind;
  return incline.percent > 0 ? 'climb' : 'fall';
}

function slopeDraft(run: Run<SlopePiece>): Draft {
  const [first] = run;
  const { incline } = first;
  const draft = {
    subject: 'slope' as const,
    kind: kindOf(incline),
    level: 'care' as const,
    run,
    again: 'folded' as const,
    tags: pick(first.place.tags, ['incline']),
    aspect: groupOf(first),
  };
  const length = printRun(coveredM(run));
  switch (incline.kind) {
    case 'percent':
      return { ...draft, ...sayPercent(run, length) };
    case 'steep':
      return { ...draft, say: `${length} mapped as steep, with no figure.`, advice: LOW_GEAR };
    case 'up':
    case 'down':
      return {
        ...draft,
        folded: true,
        say: `The road goes ${incline.kind} here for ${length}; how steeply is not mapped.`,
        advice: LOW_GEAR,
      };
    default:
      return {
        ...draft,
        folded: true,
        say: `"incline=${first.place.tags['incline']}": a slope without a figure that can be read.`,
        advice: LOW_GEAR,
      };
  }
}

function kindOf(incline: Incline): KindOf<'slope'> {
  if (incline.kind !== 'percent') return 'no figure';
  return incline.percent > 0 ? 'climb' : 'descent';
}

const LOW_GEAR = 'Choose the gear before the slope, not on it.';

function sayPercent(run: Run<SlopePiece>, length: string): Pick<Draft, 'say' | 'advice' | 'limit' | 'tags'> {
  const percentOf = ({ incline }: SlopePiece) => (incline.kind === 'percent' ? incline.percent : 0);
  const worst = run.reduce((a, b) => (Math.abs(percentOf(b)) > Math.abs(percentOf(a)) ? b : a));
  const percent = percentOf(worst);
  const asMapped = worst.place.tags['incline'] ?? '';
  const figure = `${Math.ceil(Math.abs(percent) - 1e-9)} %`;
  const very = Math.abs(percent) >= VERY_STEEP;
  return {
    tags: { incline: asMapped },
    limit: { value: Math.round(percent * 10) / 10, unit: '%', asMapped },
    say: `${percent > 0 ? 'A climb' : 'A descent'} of ${figure}${run.length > 1 ? ' at its steepest' : ''} over ${length}.`,
    advice:
      percent > 0
        ? `${LOW_GEAR}${very ? ' Front wheels may spin when wet: do not stop on it.' : ''}`
        : `Low gear at the top, and stay off the brakes as much as you can.${very ? ' If the brakes smell, stop and let them cool.' : ''}`,
  };
}

/** Ways further apart do not meet. Metres. */
const MEETING_M = 1;

/**
 * Breaks of grade where one incline meets another, a way without one taken as level: concave ones against the tail
 * (h / O), convex ones against the belly. Only with the card's clearances, and only between ways that meet.
 */
function gradeBreaks(input: RuleInput, pieces: readonly SlopePiece[]): Draft[] {
  const tail = departureSlope(input.card);
  const belly = breakoverRad(input.card);
  if (tail === undefined && belly === undefined) return [];
  const percents = new Map(
    pieces.map(({ place, incline }) => [place, incline.kind === 'percent' ? incline.percent : undefined]),
  );
  const places = drivenWays(input.drive, input.roads);
  const gradeOf = (place: Place) => (percents.has(place) ? percents.get(place) : 0);
  return places.flatMap((place, i) => {
    const before = places[i - 1];
    if (before === undefined || place.fromM - before.toM > MEETING_M) return [];
    const [from, to] = [gradeOf(before), gradeOf(place)];
    if (from === undefined || to === undefined || from === to) return [];
    const says = (which: Place, percent: number) =>
      percents.has(which) ? `${Math.round(percent)} %` : 'the level (no slope is mapped)';
    const mapped = `from ${says(before, from)} to ${says(place, to)}`;
    const touches = touch(from, to, mapped, tail, belly);
    if (touches === undefined) return [];
    const steeper = Math.abs(to) > Math.abs(from) ? place : before;
    return [
      {
        subject: 'slope',
        kind: 'break of slope',
        level: 'care',
        again: 'folded',
        run: [{ place: steeper, fromM: place.fromM, toM: place.fromM }],
        aspect: 'break',
        tags: pick(steeper.tags, ['incline']),
        say: touches,
        // public roads are laid out in curves, up and down as well; ramps into yards and car parks are not
        folded: !isSiteRoad(before.tags) && !isSiteRoad(place.tags),
        advice: 'Creep over it at a slant with the passengers out, and have someone watch the underside.',
      },
    ];
  });
}

function touch(
  from: number,
  to: number,
  mapped: string,
  tail: number | undefined,
  belly: number | undefined,
): string | undefined {
  const change = Math.atan(to / 100) - Math.atan(from / 100);
  if (change > 0 && tail !== undefined && change > Math.atan(tail))
    return `The road bends up ${mapped} if the break is sharp; the tail clears 1 in ${Math.ceil(1 / tail - 1e-9)} only.`;
  if (change < 0 && belly !== undefined && -change > belly)
    return `The road bends down ${mapped} if the break is sharp; the belly clears ${printSlope(Math.tan(belly))} only.`;
  return undefined;
}
