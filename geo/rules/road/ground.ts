import { areasOf } from '../../drive/beside/areas.ts';
import { pointAt } from '../../drive/point-at.ts';
import type { KindOf } from '../../report/kinds.ts';
import { type Firmness, firmnessOf, isPaved, saysGround } from '../../tags/ground.ts';
import { pick } from '../../tags/pick.ts';
import { isSiteRoad } from '../../tags/road-class.ts';
import { printRun, printTonnes } from '../../units/print.ts';
import type { Draft } from '../finding.ts';
import { drivenWays, type Place } from '../places.ts';
import type { RuleInput, SubjectRule } from '../rule.ts';
import { coveredM, joinRuns, type Piece, type Run, wholeOf } from '../run.ts';
import { partOfYear } from './part-of-year.ts';
import { softLandAt, softLandAtEnds } from './soft-land.ts';

/** Shorter pieces of good ground between bad ones do not end the bad stretch. Metres. */
const GAP_M = 100;

interface GroundPiece extends Piece {
  readonly firmness: Firmness;
  readonly tags: Place['tags'];
}

/** Ground that a front-driven vehicle of some 3.5 t has to mind: soft, rough, loose, unknown; soft pitches at the ends; roads of a season. */
export const ground: SubjectRule = (input) => {
  const pieces = drivenWays(input.drive, input.roads).flatMap((place) => groundOf(input, place));
  return [
    ...joinRuns(pieces, GAP_M, ({ firmness }) => firmness).map((run) => draftOf(input, run)),
    ...softLandAtEnds(input),
    ...partOfYear(input),
  ];
};

function groundOf(input: RuleInput, place: Place): GroundPiece[] {
  if (place.tags['route'] === 'ferry') return [];
  const said = firmnessOf(place.tags);
  if (said !== undefined) return [{ ...wholeOf(place), ...said }];
  if (saysGround(place.tags) || isPaved(place.tags)) return [];
  const land = isSiteRoad(place.tags) ? landUnder(input, place) : undefined;
  if (land !== undefined) return [{ ...wholeOf(place), firmness: 'soft', tags: land }];
  if (place.tags['highway'] !== 'track') return [];
  return [{ ...wholeOf(place), firmness: 'unknown', tags: pick(place.tags, ['highway']) }];
}

/** The soft land that the middle of a way lies on. */
function landUnder(input: RuleInput, place: Place): Place['tags'] | undefined {
  const middle = pointAt(input.drive, input.roads, (place.fromM + place.toM) / 2);
  return middle === undefined ? undefined : softLandAt(areasOf(input.roads), input.roads, middle)?.tags;
}

function draftOf(input: RuleInput, run: Run<GroundPiece>): Draft {
  const [{ firmness, tags }] = run;
  const words = [...new Set(run.flatMap((piece) => Object.entries(piece.tags).map(([k, v]) => `${k}=${v}`)))];
  const mapped = words.length > 3 ? `${words.slice(0, 3).join(', ')} and more` : words.join(', ');
  const length = printRun(coveredM(run));
  const mass = printTonnes(input.envelope.grossKg);
  const draft = {
    subject: 'ground' as const,
    kind: KIND[firmness],
    level: 'care' as const,
    run,
    again: 'folded' as const,
    tags,
    aspect: firmness,
  };
  switch (firmness) {
    case 'impassable':
      return {
        ...draft,
        level: 'unknown',
        say: `${length} mapped as impassable for wheels (${mapped}).`,
        advice: 'Do not drive there on the strength of this map. Take another road.',
      };
    case 'verySoft':
      return {
        ...draft,
        say: `${length} of ground that will not carry ${mass} when wet, and may not when dry (${mapped}).`,
        advice: 'Expect to get stuck: front wheels dig in. Take another road, or walk it first.',
      };
    case 'veryRough':
      return {
        ...draft,
        say: `${length} of very rough road, made for high clearance (${mapped}).`,
        advice: 'A low floor and a long tail will ground. Take another road, or walk it first.',
      };
    case 'soft':
      return {
        ...draft,
        say: `${length} of soft ground (${mapped}).`,
        advice: `Not after rain with ${mass} on front drive. Do not stop on it; turn round on firm ground.`,
      };
    case 'loose':
      return {
        ...draft,
        folded: true,
        say: `${length} of loose or uneven road (${mapped}).`,
        advice: 'Slow down; brake early.',
      };
    case 'unknown':
      return {
        ...draft,
        folded: coveredM(run) < SHORT_TRACK_M,
        say: `${length} of track; the map does not tell its ground.`,
        advice: 'Look before you drive in; there may be no place to turn.',
      };
  }
}

const KIND: Readonly<Record<Firmness, KindOf<'ground'>>> = {
  impassable: 'impassable',
  verySoft: 'very soft',
  veryRough: 'very rough',
  soft: 'soft',
  loose: 'loose',
  unknown: 'not mapped',
};

/** A track this short is seen to its end from the road. Metres. */
const SHORT_TRACK_M = 100;
