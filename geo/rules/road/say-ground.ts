import type { KindOf } from '../../report/kinds.ts';
import type { Tags } from '../../roads/roads.ts';
import { lengthIn, sizeIn, type Units } from '../../units/in-units.ts';
import { printTonnes } from '../../units/print.ts';
import type { Words } from '../words.ts';

/** What the road is made of, and the water on it, in words. */

export type GroundKind = Exclude<KindOf<'ground'>, 'pitch' | 'soft pitch' | 'part of the year'>;
export type WaterKind = KindOf<'water'>;

/** More tags than this are cut short. */
const TAGS_SAID = 3;

/** `surface=mud, tracktype=grade5` of all the pieces of a run, each once. */
function asMapped(tags: readonly Tags[]): string {
  const said = [...new Set(tags.flatMap((one) => Object.entries(one).map(([k, v]) => `${k}=${v}`)))];
  return said.length > TAGS_SAID ? `${said.slice(0, TAGS_SAID).join(', ')} and more` : said.join(', ');
}

/** @param tags of each piece, as mapped */
export function sayGround(
  kind: GroundKind,
  lengthM: number,
  {
    tags,
    grossKg,
    units,
  }: { readonly tags: readonly Tags[]; readonly grossKg: number; readonly units: Units },
): Words {
  const length = lengthIn(units, lengthM);
  const mapped = asMapped(tags);
  const mass = printTonnes(grossKg);
  switch (kind) {
    case 'impassable':
      return {
        say: `${length} mapped as impassable for wheels (${mapped}).`,
        advice: 'Do not drive there on the strength of this map. Take another road.',
      };
    case 'very soft':
      return {
        say: `${length} of ground that will not carry ${mass} when wet, and may not when dry (${mapped}).`,
        advice: 'Expect to get stuck: front wheels dig in. Take another road, or walk it first.',
      };
    case 'very rough':
      return {
        say: `${length} of very rough road, made for high clearance (${mapped}).`,
        advice: 'A low floor and a long tail will ground. Take another road, or walk it first.',
      };
    case 'soft':
      return {
        say: `${length} of soft ground (${mapped}).`,
        advice: `Not after rain with ${mass} on front drive. Do not stop on it; turn round on firm ground.`,
      };
    case 'may be soft':
      return {
        say: `${length} of road that may be soft: its ground is not mapped, the land beneath it is (${mapped}).`,
        advice: `Look before you drive in; after rain ${mass} on front drive may not get out by itself.`,
      };
    case 'loose':
      return {
        say: `${length} of loose or uneven road (${mapped}).`,
        advice: 'Slow down; brake early.',
      };
    case 'not mapped':
      return {
        say: `${length} of track; the map does not tell its ground.`,
        advice: 'Look before you drive in; there may be no place to turn.',
      };
  }
}

/** Where the drive starts or ends off the road, on land that is soft, or may be. */
export function sayPitch(
  kind: 'pitch' | 'soft pitch',
  end: 'starts' | 'ends',
  { tags, grossKg }: { readonly tags: Tags; readonly grossKg: number },
): Words {
  const where = kind === 'pitch' ? 'ground that may be soft' : 'soft ground';
  return {
    say: `The drive ${end} off the road on ${where} (${asMapped([tags])}).`,
    advice: `Stay on the hard part, or ask for it: ${printTonnes(grossKg)} on front drive does not leave wet grass or sand by itself.`,
  };
}

/** What a road that is there for part of the year is. */
export type Season = 'ice_road' | 'winter_road' | 'seasonal' | 'ferry';

const SEASON: Readonly<Record<Season, readonly [what: string, after: string]>> = {
  ice_road: ['of road over ice', ': there in hard winters only'],
  winter_road: ['of road that is used in winter only', ''],
  seasonal: ['of road that is open for part of the year', ''],
  ferry: ['of ferry that runs for part of the year', ''],
};

/** A stretch, and the tag that says of it when it is open, as mapped. */
interface SeasonFacts {
  readonly lengthM: number;
  readonly tag: string;
  readonly units: Units;
}

export function saySeason(season: Season, { lengthM, tag, units }: SeasonFacts): Words {
  const [what, after] = SEASON[season];
  return {
    say: `${lengthIn(units, lengthM)} ${what} (${tag})${after}.`,
    advice: 'Ask locally whether it is open on the day, and what it carries.',
  };
}

/** What is mapped of a ford. */
export interface FordFacts {
  readonly units: Units;
  /** for others than vehicles */
  readonly madeFor: 'stepping_stones' | 'boat' | undefined;
  readonly depthM: number | undefined;
  /** a depth is mapped that says nothing */
  readonly unread: boolean;
  /** why a depth is not believed; undefined: none is, or none can be read */
  readonly notBelieved: string | undefined;
  readonly dryAtTimes: boolean;
}

/** Water on the road, over so many metres of it; 0 for a place. */
export function sayWater(kind: WaterKind, lengthM: number, ford: FordFacts): Words {
  const over = lengthM > 0 ? ` over ${lengthIn(ford.units, lengthM)}` : '';
  switch (kind) {
    case 'not for vehicles':
      return {
        say: `A ford${over} mapped for ${ford.madeFor === 'boat' ? 'boats' : 'walkers on stepping stones'}.`,
        advice: 'Find out whether vehicles get through, or take another road.',
      };
    case 'deep ford':
      return {
        say: sayFord(ford, over),
        advice: 'Too deep for a low floor: look at the gauge, and take another road unless it is nearly dry.',
      };
    case 'ford':
      return {
        say: sayFord(ford, over),
        advice:
          'Look at the gauge first. Walking pace, no stop in the water, watch the tail on the way out, then dry the brakes.',
      };
    case 'tidal':
      return {
        say: `The sea covers the road${over} at high water.`,
        advice:
          'Find the tide table and the safe crossing times before setting out; do not drive through salt water.',
      };
    case 'floods':
      return {
        say: `The road is known to flood${over}.`,
        advice:
          'After heavy rain ask locally before you set out; turn back where the road surface is out of sight.',
      };
  }
}

function sayFord({ depthM, unread, notBelieved, dryAtTimes, units }: FordFacts, over: string): string {
  const depth = depthM === undefined ? '' : `, ${sizeIn(units, depthM, 'up')} deep as mapped`;
  const why = notBelieved === undefined ? 'A depth is mapped that cannot be read' : notBelieved;
  const doubt = unread ? ` ${why}.` : '';
  return `A ford${over}${depth}.${doubt}${dryAtTimes ? ' It runs dry at times.' : ''}`;
}
