import type { KindOf } from '../../report/kinds.ts';
import type { Tags } from '../../roads/roads.ts';
import type { UnreadWidth } from '../../tags/carriageway.ts';
import type { Incline } from '../../tags/incline.ts';
import { METRES_PER_FOOT } from '../../units/exact.ts';
import { inUnits, lengthIn, sizeIn, type Units } from '../../units/in-units.ts';
import { printSizeM } from '../../units/print.ts';
import { capital, countedInWords } from '../../units/text.ts';
import { printSlope } from '../../vehicle/ground-angles.ts';
import type { Words } from '../words.ts';

/** How one gets along the road in words: its width, its slope, what is built into it. */

export type NarrowKind = Exclude<KindOf<'narrow'>, 'unreadable'>;

/** Room on a stretch of narrow road, at its worst. */
export interface NarrowFacts {
  readonly units: Units;
  readonly lengthM: number;
  /** left to drive on beside parked cars; undefined where no width is mapped */
  readonly leftM: number | undefined;
  readonly parked: boolean;
  /** the width is an estimate, by its key */
  readonly estimated: boolean;
  readonly twoWay: boolean;
  /** passing places mapped one by one, and whether the road is tagged with some */
  readonly passingPlaces: number;
  readonly hasPassingPlaces: boolean;
  /** of the vehicle */
  readonly mirrorsWidthM: number;
  readonly leastWidthM: number;
}

export function sayNarrow(kind: NarrowKind, facts: NarrowFacts): Words {
  const { units } = facts;
  const length = lengthIn(units, facts.lengthM);
  const mirrors = sizeIn(units, facts.mirrorsWidthM, 'up');
  const wide = sayWidth(facts);
  switch (kind) {
    case 'too narrow':
      return {
        say: `${length} of road mapped ${wide}, less than the vehicle (${sizeIn(units, facts.leastWidthM, 'up')} at its narrowest).`,
        advice: 'Find out how wide it is before driving there, or take another road.',
      };
    case 'hardly wider':
      return {
        say: `${length} of road ${wide}; over the mirrors the vehicle is ${mirrors}${sayPassingPlaces(facts)}.`,
        advice: facts.twoWay
          ? 'Walking pace, mirrors in where needed, and look far ahead: nobody can pass but where it is wider.'
          : 'Walking pace, mirrors in where needed.',
      };
    case 'single track':
      return sayLane(
        `Single track for ${length}${facts.leftM === undefined ? '' : `, ${wide}`}`,
        sayPassingPlaces(facts),
      );
    case 'give way':
      return sayLane(
        `${length} of road ${wide}: a car and this vehicle (${mirrors}) do not pass`,
        sayPassingPlaces(facts),
      );
    case 'creep past':
      return {
        say: `${length} of road ${wide}: a car and this vehicle (${mirrors}) pass with care.`,
        advice: 'Keep to your edge and slow down when something comes.',
      };
    case 'bus':
      return {
        say: `${length} of road ${wide}: a bus or lorry and this vehicle (${mirrors}) hardly pass.`,
        advice: 'Give way early where the road is wider.',
      };
  }
}

function sayWidth({ leftM = 0, parked, estimated, units }: NarrowFacts): string {
  const left = sizeIn(units, leftM, 'down');
  return `${estimated ? 'estimated ' : ''}${left} wide${parked ? ' beside parked cars' : ''}`;
}

/** '' where none are mapped. */
function sayPassingPlaces({ passingPlaces, hasPassingPlaces }: NarrowFacts): string {
  if (passingPlaces > 0) return `, with ${countedInWords(passingPlaces, 'passing place')} mapped`;
  return hasPassingPlaces ? ', with passing places mapped' : '';
}

function sayLane(what: string, passingPlaces: string): Words {
  if (passingPlaces !== '')
    return {
      say: `${what}${passingPlaces}.`,
      advice: 'Look far ahead; stop at a passing place rather than meet between two.',
    };
  return {
    say: `${what}; no passing places are mapped.`,
    advice: 'Look far ahead and remember the last wide spot: you may have to reverse to it.',
  };
}

/** A width that nobody can read or believe. */
export function sayUnreadableWidth({ key, text, why }: UnreadWidth, mirrorsWidthM: number): Words {
  return {
    say:
      why === undefined
        ? `A width is mapped that cannot be read: ${key}=${text}.`
        : `"${key}=${text}": ${why}.`,
    advice: `Look before you drive in; over the mirrors the vehicle is ${printSizeM(mirrorsWidthM)}.`,
  };
}

const LOW_GEAR = 'Choose the gear before the slope, not on it.';
/** Per cent; common practice, no source. */
const VERY_STEEP = 15;

/** @param percent at the steepest, up as driven; @param several slopes of one hill */
export function saySlope(
  percent: number,
  {
    lengthM,
    several,
    turned,
    units,
  }: {
    readonly units: Units;
    readonly lengthM: number;
    readonly several: boolean;
    /** the incline as mapped, where the way is driven against its drawn direction; else undefined */
    readonly turned: string | undefined;
  },
): Words {
  const up = percent > 0;
  const figure = `${Math.ceil(Math.abs(percent) * 10 - 1e-9) / 10} %`;
  const drawn =
    turned === undefined
      ? ''
      : ` It is mapped the other way round ("incline=${turned}"), as the road is drawn.`;
  const very = Math.abs(percent) >= VERY_STEEP;
  return {
    say: `${up ? 'A climb' : 'A descent'} of ${figure}${several ? ' at its steepest' : ''} over ${lengthIn(units, lengthM)}.${drawn}`,
    advice: up
      ? `${LOW_GEAR}${very ? ' Front wheels may spin when wet: do not stop on it.' : ''}`
      : `Low gear at the top, and stay off the brakes as much as you can.${very ? ' If the brakes smell, stop and let them cool.' : ''}`,
  };
}

/** A slope without a figure; `text` of `incline`, as mapped. */
export function saySlopeNoFigure(
  incline: Exclude<Incline['kind'], 'percent'>,
  { lengthM, text, units }: { readonly lengthM: number; readonly text: string; readonly units: Units },
): Words {
  const length = lengthIn(units, lengthM);
  switch (incline) {
    case 'steep':
      return { say: `${length} mapped as steep, with no figure.`, advice: LOW_GEAR };
    case 'up':
    case 'down':
      return {
        say: `The road goes ${incline} here for ${length}; how steeply is not mapped.`,
        advice: LOW_GEAR,
      };
    case 'not believed':
      return { say: `"incline=${text}" is not believed as a slope.`, advice: LOW_GEAR };
    case 'some':
    case 'unreadable':
      return { say: `"incline=${text}": a slope without a figure that can be read.`, advice: LOW_GEAR };
  }
}

/** A break of slope that a part of the vehicle may not clear. Slopes per cent, undefined where none is mapped. */
export interface SlopeBreak {
  readonly part: 'tail' | 'belly';
  readonly fromPercent: number | undefined;
  readonly toPercent: number | undefined;
  /** the slope that the part clears, rise over run */
  readonly clears: number;
}

export function sayBreak({ part, fromPercent, toPercent, clears }: SlopeBreak): Words {
  const slope = (percent: number | undefined) =>
    percent === undefined ? 'the level (no slope is mapped)' : `${Math.round(percent)} %`;
  const mapped = `from ${slope(fromPercent)} to ${slope(toPercent)}`;
  return {
    say:
      part === 'tail'
        ? `The road bends up ${mapped} if the break is sharp; the tail clears ${oneIn(clears)} only.`
        : `The road bends down ${mapped} if the break is sharp; the belly clears ${printSlope(clears)} only.`,
    advice: 'Creep over it at a slant with the passengers out, and have someone watch the underside.',
  };
}

/** `1 in 7`, rounded against the vehicle. */
function oneIn(slope: number): string {
  return `1 in ${Math.ceil(1 / slope - 1e-9)}`;
}

/** @param tags of the crossing; @param lowTail slope that the tail clears, where that may be too little */
export function sayLevelCrossing(
  tracks: number,
  tags: Tags,
  {
    lengthM,
    lowTail,
    units,
  }: { readonly lengthM: number; readonly lowTail: number | undefined; readonly units: Units },
): Words {
  const over = tracks > 1 ? ` over ${tracks} tracks` : '';
  const low =
    lowTail === undefined
      ? ''
      : ` Tracks may stand proud of the road; the tail clears ${printSlope(lowTail)}.`;
  return {
    say: `A level crossing${over}${sayGuard(tags)}.${low}`,
    advice: `Drive on only when there is room for ${inUnits(units, `${lengthM.toFixed(1)} m`, `${Math.ceil(lengthM / METRES_PER_FOOT)} ft`)} beyond the tracks.`,
  };
}

function sayGuard(tags: Tags): string {
  if (tags['crossing:barrier'] !== 'no') return '';
  return tags['crossing:light'] === 'yes' ? ' with lights and no barrier' : ' without a barrier';
}

export const TRAM_CROSSING: Words = { say: 'Tram tracks cross the road.', advice: 'Do not stop on them.' };

const CALMING: Readonly<Record<Calming, readonly [one: string, several: string]>> = {
  hump: ['a hump', 'humps'],
  bump: ['a short sharp bump', 'short sharp bumps'],
  mini_bumps: ['a row of small bumps', 'rows of small bumps'],
  table: ['a raised table', 'raised tables'],
  cushion: ['a speed cushion', 'speed cushions'],
  dip: ['a dip', 'dips'],
  chicane: ['a chicane', 'chicanes'],
  choker: ['a narrowing', 'narrowings'],
  rumble_strip: ['a rumble strip', 'rumble strips'],
};

/** Values of `traffic_calming`. */
export type Calming =
  | 'hump'
  | 'bump'
  | 'mini_bumps'
  | 'table'
  | 'cushion'
  | 'dip'
  | 'chicane'
  | 'choker'
  | 'rumble_strip';

/** What slows traffic on one stretch of street. */
export interface CalmingFacts {
  readonly units: Units;
  /** each one met, in driving order */
  readonly met: readonly Calming[];
  /** from the first to the last */
  readonly overM: number;
  /** slope that the tail clears, where it is told */
  readonly tail?: number;
  /** the least width left, 'not mapped' where it is not of every one */
  readonly leftM: number | 'not mapped';
}

/** Shorter, the stretch is a place. Metres. */
const PLACE_M = 20;

export function sayCalming(kind: 'hump' | 'narrowing' | 'bumps', facts: CalmingFacts): Words {
  const { met, overM, tail, leftM, units } = facts;
  const counts = new Map<Calming, number>();
  for (const what of met) counts.set(what, (counts.get(what) ?? 0) + 1);
  const list = [...counts]
    .map(([what, count]) => (count === 1 ? CALMING[what][0] : `${count} ${CALMING[what][1]}`))
    .join(', ');
  const within = met.length > 1 && overM > PLACE_M ? ` within ${lengthIn(units, overM)}` : '';
  const what = `${capital(list)}${within}`;
  const clears = tail === undefined ? '' : ` The tail clears ${oneIn(tail)}.`;
  switch (kind) {
    case 'hump':
      return {
        say: `${what}.${clears}`,
        advice: 'Walking pace with both axles; the tail drops when the front wheels climb.',
      };
    case 'narrowing':
      return {
        say: `${what}${leftM === 'not mapped' ? '; the width left is not mapped' : `, mapped ${sizeIn(units, leftM, 'down')} wide${met.length > 1 ? ' at the narrowest' : ''}`}.`,
        advice: 'Swing wide and watch the tail; wait where something comes.',
      };
    case 'bumps':
      return { say: `${what}.${clears}`, advice: 'Slow down; loose things will fly.' };
  }
}
