import { pick } from '../../tags/pick.ts';
import { saysYes } from '../../tags/says-yes.ts';
import { printMetres, printRun } from '../../units/print.ts';
import { readLength } from '../../units/read-length.ts';
import type { Draft } from '../finding.ts';
import { drivenWays, type Place, passedNodes } from '../places.ts';
import type { SubjectRule } from '../rule.ts';
import { coveredM, joinRuns, type Piece, type Run, wholeOf } from '../run.ts';

/** A ford's node and its way, or two arms of one brook, are one ford. Metres. */
const ONE_FORD_M = 30;
/** Water over a car's sill is no ford for a motorhome. Metres; common practice, no source. */
const DEEP_M = 0.3;

type Water = 'ford' | 'tidal' | 'flood';

interface WaterPiece extends Piece {
  readonly water: Water;
}

/** Water on the road: fords, tidal roads, roads that flood. */
export const water: SubjectRule = (input) => {
  const places = [...drivenWays(input.drive, input.roads), ...passedNodes(input.drive, input.roads)];
  const pieces = places
    .filter(({ tags }) => tags['route'] !== 'ferry')
    .flatMap((place) => kindsOf(place).map((kind): WaterPiece => ({ ...wholeOf(place), water: kind })));
  return joinRuns(pieces, ONE_FORD_M, (piece) => piece.water).map(draftOf);
};

function kindsOf({ tags }: Place): Water[] {
  const kinds: Water[] = [];
  if (saysYes(tags['ford']) || tags['highway'] === 'ford') kinds.push('ford');
  if (saysYes(tags['tidal'])) kinds.push('tidal');
  const hazard = tags['hazard'] ?? '';
  if (saysYes(tags['flood_prone']) || /\bflood/.test(hazard) || saysYes(tags['hazard:flooding']))
    kinds.push('flood');
  return kinds;
}

function draftOf(run: Run<WaterPiece>): Draft {
  const kind = run[0].water;
  const tags = Object.assign({}, ...run.map(({ place }) => pick(place.tags, KEYS[kind])));
  const length = coveredM(run);
  const over = length > 0 ? ` over ${printRun(length)}` : '';
  const draft = {
    subject: 'water' as const,
    kind: kind === 'flood' ? ('floods' as const) : kind,
    level: 'care' as const,
    run,
    again: 'folded' as const,
    tags,
    aspect: kind,
  };
  switch (kind) {
    case 'ford':
      return { ...draft, ...sayFord(tags, over) };
    case 'tidal':
      return {
        ...draft,
        say: `The sea covers the road${over} at high water.`,
        advice:
          'Find the tide table and the safe crossing times before setting out; do not drive through salt water.',
      };
    case 'flood':
      return {
        ...draft,
        say: `The road is known to flood${over}.`,
        advice:
          'After heavy rain ask locally, or take another road; turn back where the road surface is out of sight.',
      };
  }
}

const KEYS: Readonly<Record<Water, readonly string[]>> = {
  ford: ['ford', 'highway', 'depth', 'intermittent', 'seasonal', 'surface'],
  tidal: ['tidal'],
  flood: ['flood_prone', 'hazard', 'hazard:flooding'],
};

function sayFord(tags: Record<string, string>, over: string): Pick<Draft, 'say' | 'advice' | 'level'> {
  if (tags['ford'] === 'stepping_stones' || tags['ford'] === 'boat')
    return {
      level: 'unknown',
      say: `A ford${over} mapped for ${tags['ford'] === 'boat' ? 'boats' : 'walkers on stepping stones'}.`,
      advice: 'Find out whether vehicles get through, or take another road.',
    };
  const reading = readLength(tags['depth'] ?? '');
  const depth = reading.kind === 'value' ? `, ${printMetres(reading.value, 'up')} deep as mapped` : '';
  const dry = tags['intermittent'] === 'yes' || saysYes(tags['seasonal']) ? ' It runs dry at times.' : '';
  const deep = reading.kind === 'value' && reading.value >= DEEP_M;
  return {
    level: 'care',
    say: `A ford${over}${depth}.${dry}`,
    advice: deep
      ? 'Too deep for a low floor: look at the gauge, and take another road unless it is nearly dry.'
      : 'Look at the gauge first. Walking pace, no stop in the water, watch the tail on the way out, then dry the brakes.',
  };
}
