import { largest } from '../../lists.ts';
import type { Level } from '../../report/report.ts';
import { mergeTags } from '../../roads/set-tag.ts';
import { pick } from '../../tags/pick.ts';
import { saysYes } from '../../tags/says-yes.ts';
import { textOf } from '../../tags/text-of.ts';
import type { Units } from '../../units/in-units.ts';
import { readLength } from '../../units/read-length.ts';
import type { Draft } from '../finding.ts';
import { drivenWays, type Place, passedNodes } from '../places.ts';
import type { SubjectRule } from '../rule.ts';
import { coveredM, joinRuns, type Piece, type Run, wholeOf } from '../run.ts';
import { type FordFacts, sayWater, type WaterKind } from './say-ground.ts';

/** A ford's node and its way, or two arms of one brook, are one ford. Metres. */
const ONE_FORD_M = 30;
/** Water over a car's sill is no ford for a motorhome. Metres; common practice, no source. */
const DEEP_M = 0.3;
/** Values of `ford` that are for others than vehicles. */
const NOT_FOR_VEHICLES = ['stepping_stones', 'boat'] as const;
/** Among the words of `hazard`. */
const FLOODS = /\bflood/;

type Water = 'ford' | 'tidal' | 'flood';

interface WaterPiece extends Piece {
  readonly water: Water;
}

/** Water on the road: fords, tidal roads, roads that flood. */
export const water: SubjectRule = (input) => {
  const places = [...drivenWays(input.drive, input.roads), ...passedNodes(input.drive, input.roads)];
  const pieces = places
    .filter(({ tags }) => tags['route'] !== 'ferry')
    .flatMap((place) => watersOf(place).map((kind): WaterPiece => ({ ...wholeOf(place), water: kind })));
  return joinRuns(pieces, ONE_FORD_M, (piece) => piece.water).map((run) => draftOf(run, input.units));
};

function watersOf({ tags }: Place): Water[] {
  const waters: Water[] = [];
  if (saysYes(tags['ford']) || tags['highway'] === 'ford') waters.push('ford');
  if (saysYes(tags['tidal'])) waters.push('tidal');
  if (saysYes(tags['flood_prone']) || FLOODS.test(textOf(tags, 'hazard')) || saysYes(tags['hazard:flooding']))
    waters.push('flood');
  return waters;
}

const KEYS: Readonly<Record<Water, readonly string[]>> = {
  ford: ['ford', 'highway', 'depth', 'intermittent', 'seasonal', 'surface'],
  tidal: ['tidal'],
  flood: ['flood_prone', 'hazard', 'hazard:flooding'],
};

const LEVEL: Readonly<Record<WaterKind, Level>> = {
  'deep ford': 'tight',
  'not for vehicles': 'unknown',
  ford: 'care',
  tidal: 'care',
  floods: 'care',
};

function draftOf(run: Run<WaterPiece>, units: Units): Draft {
  const { water: what } = run[0];
  const tags: Record<string, string> = mergeTags(run.map(({ place }) => pick(place.tags, KEYS[what])));
  const ford = fordFacts(run, units);
  const kind = what === 'ford' ? fordKind(ford) : what === 'flood' ? 'floods' : what;
  const open = kind === 'not for vehicles' || (kind === 'ford' && ford.notBelieved !== undefined);
  return {
    subject: 'water',
    kind,
    level: open ? 'unknown' : LEVEL[kind],
    ...(open ? { wants: 'measure' } : {}),
    run,
    tags,
    aspect: what,
    again: 'folded',
    ...sayWater(kind, coveredM(run), ford),
  };
}

function fordKind({ madeFor, depthM }: FordFacts): WaterKind {
  if (madeFor !== undefined) return 'not for vehicles';
  return depthM !== undefined && depthM >= DEEP_M ? 'deep ford' : 'ford';
}

/** What is mapped of a ford; of several depths the greatest. */
function fordFacts(run: Run<WaterPiece>, units: Units): FordFacts {
  const tags = run.map(({ place }) => place.tags);
  const depths = tags.flatMap(({ depth }) => (depth === undefined ? [] : [readLength(depth, 'depth')]));
  const metres = depths.flatMap((reading) => (reading.kind === 'value' ? [reading.value] : []));
  return {
    units,
    madeFor: NOT_FOR_VEHICLES.find((one) => tags.some(({ ford }) => ford === one)),
    depthM: metres.length === 0 ? undefined : largest(metres),
    unread: metres.length < depths.length,
    notBelieved: depths.flatMap((reading) => (reading.kind === 'not believed' ? [reading.reason] : []))[0],
    dryAtTimes: tags.some(({ intermittent, seasonal }) => intermittent === 'yes' || saysYes(seasonal)),
  };
}
