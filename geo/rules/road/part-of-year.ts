import { textOf } from '../../tags/text-of.ts';
import { drivenWays, type Place } from '../places.ts';
import type { SubjectRule } from '../rule.ts';
import { coveredM, joinRuns, type Piece, wholeOf } from '../run.ts';
import { saySeason } from './say-ground.ts';

/** Pieces of one such road. Metres. */
const ONE_ROAD_M = 100;

/** The most telling first; one of them is said. */
const KEYS = ['ice_road', 'winter_road', 'seasonal'] as const;
type Key = (typeof KEYS)[number];

interface SeasonPiece extends Piece {
  readonly key: Key;
  readonly text: string;
}

/** Driven roads that are not there, or not open, all the year: whether they are on the day nobody here knows. */
export const partOfYear: SubjectRule = (input) => {
  const pieces = drivenWays(input.drive, input.roads).flatMap(pieceOf);
  return joinRuns(pieces, ONE_ROAD_M, ({ key, text }) => `${key}=${text}`).map((run) => {
    const [{ key, text, place }] = run;
    const season = place.tags['route'] === 'ferry' ? 'ferry' : key;
    return {
      subject: 'ground',
      kind: 'part of the year',
      level: 'unknown',
      wants: 'permission',
      run,
      again: 'folded',
      tags: { [key]: text },
      aspect: key,
      ...saySeason(season, { lengthM: coveredM(run), tag: `${key}=${text}`, units: input.units }),
    };
  });
};

function pieceOf(place: Place): SeasonPiece[] {
  const key = KEYS.find((each) => isSaid(place, each));
  return key === undefined ? [] : [{ ...wholeOf(place), key, text: textOf(place.tags, key) }];
}

/** In a ford it is the water that comes and goes. */
function isSaid({ tags }: Place, key: Key): boolean {
  const text = tags[key];
  if (text === undefined || text === 'no') return false;
  return key !== 'seasonal' || (tags['ford'] ?? 'no') === 'no';
}
