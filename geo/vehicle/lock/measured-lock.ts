import { believedRadii } from './circle-limits.ts';
import { type LockSizes, trackOf, type YardMeasures } from './lock-sizes.ts';
import { radiusOfSwingM } from './radius-of-swing.ts';

/*
 * The radius of the rear-axle centre at full lock, worked back from what chalk and tape tell; every error taken at its
 * worst, so that the range holds the truth as long as no single error is larger than stated. No slip, rectangle body.
 */

/** How far off a tape pulled over some metres and one chalk mark are, where nothing else is said. Metres; common practice, no source. */
export const USUAL_OFF_M = { tape: 0.01, chalk: 0.01 } as const;
/** How far off the card's own figures may be: a track that is given, a usual one, and body sizes. Metres; judgement. */
const TRACK_OFF_M = { given: 0.02, usual: 0.15 } as const;
const SIZE_OFF_M = 0.02;
/** A range so many times from end to end tells no more than the usual lock of vans does. Judgement. */
const RANGE_MOST = 1.5;

/** A radius and where it may lie. Metres. */
export interface RadiusRange {
  readonly radiusM: number;
  readonly lowM: number;
  readonly highM: number;
}

/** A measurement that cannot be, and what is wrong with it. */
export interface MeasureFault {
  readonly field: 'rearWheelCircleM' | 'tailOutM';
  /** a turn tighter than wheels allow; wider than any lock; a tail so short that its swing tells nothing */
  readonly kind: 'too tight' | 'too wide' | 'tells nothing';
}

/** What the yard tells of a vehicle's full lock. */
export interface MeasuredLock extends RadiusRange {
  /** the circle and the tail, both measured, leave no radius that suits both */
  readonly atOdds: boolean;
}

type Read = { readonly range: RadiusRange } | { readonly fault: MeasureFault };

/** What of the measurements cannot be, one fault for each. */
export function measureFaults(sizes: LockSizes): MeasureFault[] {
  return readAll(sizes).flatMap((read) => ('fault' in read ? [read.fault] : []));
}

/**
 * The radius that the measurements give: the part that their ranges share, else both ranges together.
 * @returns undefined where nothing was measured, or what was cannot be (see `measureFaults`)
 */
export function measuredLock(sizes: LockSizes): MeasuredLock | undefined {
  const ranges = readAll(sizes).flatMap((read) => ('range' in read ? [read.range] : []));
  const [first, second = first] = ranges;
  if (!first || !second) return undefined;
  const [lowM, highM] = [Math.max(first.lowM, second.lowM), Math.min(first.highM, second.highM)];
  if (lowM > highM)
    return {
      // the circle is the nearer measure of a radius
      radiusM: first.radiusM,
      lowM: Math.min(first.lowM, second.lowM),
      highM: Math.max(first.highM, second.highM),
      atOdds: true,
    };
  return { radiusM: Math.min(highM, Math.max(lowM, first.radiusM)), lowM, highM, atOdds: false };
}

function readAll(sizes: LockSizes): Read[] {
  const { measured } = sizes;
  if (!measured) return [];
  const { rearWheelCircleM, tailOutM } = measured;
  return [
    ...(rearWheelCircleM === undefined ? [] : [readCircle(sizes, measured, rearWheelCircleM)]),
    ...(tailOutM === undefined ? [] : [readTail(sizes, measured, tailOutM)]),
  ];
}

/** R = D/2 + t/2: the inner wheel runs half the track inside the middle. */
function readCircle(sizes: LockSizes, measured: YardMeasures, acrossM: number): Read {
  const trackOffM = sizes.trackM === undefined ? TRACK_OFF_M.usual : TRACK_OFF_M.given;
  // a mark at either end of the tape
  const offM = (tapeOf(measured) + 2 * chalkOf(measured) + trackOffM) / 2;
  const radiusM = (acrossM + trackOf(sizes)) / 2;
  return believed(sizes, 'rearWheelCircleM', { radiusM, lowM: radiusM - offM, highM: radiusM + offM });
}

/** The farthest mark is that of the corner that comes out most: the radius at which no corner comes out farther. */
function readTail(sizes: LockSizes, measured: YardMeasures, outM: number): Read {
  const offM = tapeOf(measured) + 2 * chalkOf(measured);
  return believed(sizes, 'tailOutM', {
    radiusM: radiusAt(sizes, measured, outM, 0),
    lowM: radiusAt(sizes, measured, outM + offM, -SIZE_OFF_M),
    highM: radiusAt(sizes, measured, outM - offM, SIZE_OFF_M),
  });
}

/** @param offM by how much the body is longer behind the axle and narrower than the card says */
function radiusAt(
  { rearOverhangM, widthM, rack }: LockSizes,
  { withRack = false }: YardMeasures,
  outM: number,
  offM: number,
): number {
  const bM = rearOverhangM + offM;
  const halfM = widthM / 2 - offM / 2;
  const body = { bM, wM: halfM, outM };
  if (!withRack || !rack) return radiusOfSwingM([body]);
  const wM = rack.widthM / 2 - offM / 2;
  // a rack narrower than the body starts farther in
  const inM = (widthM - rack.widthM) / 2;
  return radiusOfSwingM([body, { bM: bM + rack.lengthM, wM, outM: outM + inM - offM / 2 }]);
}

/** Held within what any lock gives; a range that lies outside it, or hardly narrows it, is no measurement. */
function believed({ wheelbaseM }: LockSizes, field: MeasureFault['field'], range: RadiusRange): Read {
  const { leastM, mostM } = believedRadii(wheelbaseM);
  const { radiusM } = range;
  // a mark that came out farther than the tail is long gives a radius below nought
  if (!(range.highM >= leastM)) return { fault: { field, kind: 'too tight' } };
  if (range.lowM > mostM) return { fault: { field, kind: 'too wide' } };
  const [lowM, highM] = [Math.max(leastM, range.lowM), Math.min(mostM, range.highM)];
  if (highM > RANGE_MOST * lowM) return { fault: { field, kind: 'tells nothing' } };
  return { range: { radiusM: Math.min(highM, Math.max(lowM, radiusM)), lowM, highM } };
}

function tapeOf({ tapeOffM = USUAL_OFF_M.tape }: YardMeasures): number {
  return tapeOffM;
}

function chalkOf({ chalkOffM = USUAL_OFF_M.chalk }: YardMeasures): number {
  return chalkOffM;
}

/**
 * Whether the farthest mark lay too far along for a wheel that was hard over from the start: it must lie beside where the
 * rear axle stood, give or take what one mark cannot tell on the top of an arc, √(2ρ·off).
 */
export function isMarkMisplaced(sizes: LockSizes): boolean {
  const { measured } = sizes;
  const lock = measuredLock(sizes);
  if (!lock || measured?.tailAheadM === undefined) return false;
  const rackM = measured.withRack === true ? (sizes.rack?.lengthM ?? 0) : 0;
  const farM = Math.hypot(lock.highM + sizes.widthM / 2, sizes.rearOverhangM + rackM);
  const offM = tapeOf(measured) + 2 * chalkOf(measured);
  return Math.abs(measured.tailAheadM) > Math.sqrt(2 * farM * offM) + offM;
}
