import { printRun } from '../../units/print.ts';
import type { Draft } from '../finding.ts';
import { drivenWays, type Place } from '../places.ts';
import type { RuleInput } from '../rule.ts';
import { coveredM, joinRuns, type Piece, wholeOf } from '../run.ts';

/** Pieces of one such road. Metres. */
const ONE_ROAD_M = 100;

interface SeasonPiece extends Piece {
  readonly key: Key;
  readonly text: string;
}

/** The most telling first; one of them is said. */
const WORDS = {
  ice_road: ['of road over ice', ': there in hard winters only'],
  winter_road: ['of road that is used in winter only', ''],
  seasonal: ['of road that is open for part of the year', ''],
  ferry: ['of ferry that runs for part of the year', ''],
} as const;
const KEYS = ['ice_road', 'winter_road', 'seasonal'] as const;
type Key = (typeof KEYS)[number];

/** Driven roads that are not there, or not open, all the year: whether they are on the day nobody here knows. */
export function partOfYear(input: RuleInput): Draft[] {
  const pieces = drivenWays(input.drive, input.roads).flatMap(pieceOf);
  return joinRuns(pieces, ONE_ROAD_M, ({ key, text }) => `${key}=${text}`).map((run) => {
    const [{ key, text }] = run;
    const [what, after] = WORDS[run[0].place.tags['route'] === 'ferry' ? 'ferry' : key];
    return {
      subject: 'ground',
      kind: 'part of the year',
      level: 'unknown',
      run,
      again: 'folded',
      tags: { [key]: text },
      say: `${printRun(coveredM(run))} ${what} (${key}=${text})${after}.`,
      advice: 'Ask locally whether it is open on the day, and what it carries.',
      aspect: key,
    };
  });
}

function pieceOf(place: Place): SeasonPiece[] {
  const key = KEYS.find((each) => isSaid(place, each));
  return key === undefined ? [] : [{ ...wholeOf(place), key, text: place.tags[key] ?? '' }];
}

/** In a ford it is the water that comes and goes. */
function isSaid({ tags }: Place, key: Key): boolean {
  const text = tags[key];
  if (text === undefined || text === 'no') return false;
  return key !== 'seasonal' || (tags['ford'] ?? 'no') === 'no';
}
