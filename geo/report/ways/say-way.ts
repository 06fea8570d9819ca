import { durationText } from '../../clock/print-times.ts';
import { distanceIn, lengthIn, sizeIn, trueMinus, type Units } from '../../units/in-units.ts';
import { printKg } from '../../units/print.ts';
import { clip, counted, listed, lowerFirst } from '../../units/text.ts';
import { LEVEL_WORD, LEVELS } from '../level.ts';
import { nameSubject } from '../name-place.ts';
import { sayFolded } from '../say-slight.ts';
import type { WayRound } from '../way-round.ts';

type Cost = Pick<WayRound, 'extraM' | 'extraS'>;

/** Less than this is no difference to whoever drives it. */
const SAME_S = 30;
const SAME_M = 50;
/** From here on hours are told apart from minutes. */
const HOURS_FROM_S = 2 * 3600;

/** What a way costs against the drive's own stretch: `4 minutes more, 2.1 km longer`. No full stop. */
export function sayExtra({ extraM, extraS }: Cost, units: Units): string {
  const time = Math.abs(extraS) < SAME_S ? undefined : sayTime(Math.abs(extraS));
  const far = Math.abs(extraM) < SAME_M ? undefined : lengthIn(units, Math.abs(extraM));
  const more = (extra: number) => (extra > 0 ? 'more' : 'less');
  if (time === undefined && far === undefined) return 'about as long as the drive’s own road';
  if (time === undefined) return `${far} ${extraM > 0 ? 'longer' : 'shorter'}, in about the same time`;
  if (far === undefined) return `${time} ${more(extraS)}, about as far`;
  const longer = extraM > 0 ? 'longer' : 'shorter';
  const but = extraM > 0 === extraS > 0 ? '' : 'but ';
  return `${time} ${more(extraS)}, ${but}${far} ${longer}`;
}

function sayTime(seconds: number): string {
  return seconds < HOURS_FROM_S
    ? counted(Math.max(1, Math.round(seconds / 60)), 'minute')
    : durationText(seconds);
}

/** Where a way leaves the drive and meets it: `Off the drive at 1.2 km, back on it at 4.6 km`. No full stop. */
export function sayLeaves({ fromM, toM }: Pick<WayRound, 'fromM' | 'toM'>, units: Units): string {
  return `Off the drive at ${distanceIn(units, fromM)}, back on it at ${distanceIn(units, toM)}`;
}

/** More names than these nobody keeps in mind. */
const NAMES_MOST = 4;
const NAME_LONGEST = 40;

/**
 * The roads that a way runs on, as signposts name them: `by B188, Mill Lane and L282`; its longest ones, in the order
 * driven. Without a road of its own it only leaves a loop of the drive out, and says so.
 */
export function sayBy({ roads }: Pick<WayRound, 'roads'>): string {
  if (roads.length === 0) return 'by no other road: it leaves out a loop';
  const lengths = new Map<string, number>();
  for (const { ref, name, fromM = 0, toM = 0 } of roads) {
    const called = (ref ?? name ?? '').trim();
    if (called !== '') lengths.set(called, (lengths.get(called) ?? 0) + toM - fromM);
  }
  const longest = new Set(
    [...lengths]
      .sort(([, a], [, b]) => b - a)
      .slice(0, NAMES_MOST)
      .map(([called]) => called),
  );
  const inOrder = [...lengths.keys()].filter((called) => longest.has(called));
  return inOrder.length === 0
    ? 'by roads without a name'
    : `by ${listed(inOrder.map((called) => clip(called, NAME_LONGEST)))}`;
}

/** What it costs, as short as a drawing has room for: `+4 min` and `+2.1 km`, with a true minus. */
export function sayExtraShort({ extraM, extraS }: Cost, units: Units): readonly [time: string, far: string] {
  const sign = (extra: number) => (extra < 0 ? '−' : '+');
  return [
    Math.abs(extraS) < SAME_S ? '±0 min' : `${sign(extraS)}${durationText(Math.abs(extraS))}`,
    Math.abs(extraM) < SAME_M ? '±0' : `${sign(extraM)}${lengthIn(oneOf(units), Math.abs(extraM))}`,
  ];
}

const oneOf = (units: Units): Units => (units === 'imperial' ? 'imperial' : 'metric');

/** The least room on a way: `height, 0.45 m to spare`; undefined where no limit is mapped on it. */
export function sayTightest({ tightest }: Pick<WayRound, 'tightest'>, units: Units): string | undefined {
  if (!tightest) return undefined;
  const { unit, spare } = tightest;
  const over = spare < 0;
  const rounding = over ? 'up' : 'down';
  const figure =
    unit === 'm'
      ? sizeIn(units, Math.abs(spare), rounding)
      : unit === 'kg'
        ? printKg(Math.abs(spare), rounding)
        : trueMinus(`${Math.abs(spare)} ${unit}`);
  return `${lowerFirst(nameSubject(tightest))}, ${figure} ${over ? 'over' : 'to spare'}`;
}

/** What is met on the way alone: `The way itself: take care at 3 places. One bridge without a height: read the signs.` */
export function sayWayItself(way: Pick<WayRound, 'verdict' | 'counts' | 'findings'>): string {
  const folded = sayFolded(way.findings);
  const verdict = `The way itself: ${lowerFirst(LEVEL_WORD[way.verdict])}${sayOnWay(way)}.`;
  return folded === undefined ? verdict : `${verdict} ${folded}`;
}

/** ` at 2 places, also 1 unknown`; '' for one that nothing mapped stops. The verdict is the worst of its levels. */
function sayOnWay({ verdict, counts }: Pick<WayRound, 'verdict' | 'counts'>): string {
  if (verdict === 'clear') return '';
  const others = LEVELS.filter((level) => level !== verdict && counts[level] > 0).map(
    (level) => `${counts[level]} ${LEVEL_WORD[level].toLowerCase()}`,
  );
  return [
    ` at ${counted(counts[verdict], 'place')}`,
    ...(others.length > 0 ? [`also ${listed(others)}`] : []),
  ].join(', ');
}

/** What a screen reader hears when ways were found: `2 ways past Mill Lane: the first 4 minutes more, 2.1 km longer.` */
export function sayWaysFound(ways: readonly Cost[], past: string, units: Units): string {
  const [first] = ways;
  if (!first) return `No way past ${past} was found.`;
  const cost = sayExtra(first, units);
  return ways.length === 1
    ? `One way past ${past}: ${cost}.`
    : `${ways.length} ways past ${past}: the first ${cost}.`;
}
