import { printMetres } from '../units/print.ts';
import { isCircleTooSmall } from './lock/circle-limits.ts';

/** How far the three parts of the length may miss the whole: a centimetre of reading on each measurement. */
const LENGTH_SUM_TOLERANCE_M = 0.02;

/** The sizes that are held against each other; while a card is typed some are not there yet. Metres. */
export interface Sizes {
  readonly lengthM?: number | undefined;
  readonly wheelbaseM?: number | undefined;
  readonly frontOverhangM?: number | undefined;
  readonly rearOverhangM?: number | undefined;
  readonly widthM?: number | undefined;
  readonly widthMirrorsM?: number | undefined;
  readonly widthMirrorsFoldedM?: number | undefined;
  readonly trackM?: number | undefined;
  readonly turningCircleM?: number | undefined;
  readonly turningCircleWallM?: number | undefined;
}

/** Two sizes of one card that cannot both be right; `field` is the one to look at. Metres. */
type SizeFault =
  | {
      readonly kind: 'parts and length';
      readonly field: 'lengthM';
      readonly partsM: number;
      readonly lengthM: number;
    }
  | {
      readonly kind: 'mirrors narrower than body';
      readonly field: 'widthMirrorsM';
      readonly mirrorsM: number;
      readonly bodyM: number;
    }
  | { readonly kind: 'folded wider than unfolded'; readonly field: 'widthMirrorsFoldedM' }
  | {
      readonly kind: 'track wider than body';
      readonly field: 'trackM';
      readonly trackM: number;
      readonly bodyM: number;
    }
  | {
      readonly kind: 'circle too small';
      readonly field: 'turningCircleM' | 'turningCircleWallM';
      readonly circleM: number;
      readonly wheelbaseM: number;
    };

/** What in the sizes of a card does not go together, as far as they are given. */
export function sizeFaults(sizes: Sizes): SizeFault[] {
  return [...lengthFaults(sizes), ...widthFaults(sizes), ...trackFaults(sizes), ...circleFaults(sizes)];
}

function lengthFaults({ lengthM, wheelbaseM, frontOverhangM, rearOverhangM }: Sizes): SizeFault[] {
  if (lengthM === undefined || wheelbaseM === undefined) return [];
  if (frontOverhangM === undefined || rearOverhangM === undefined) return [];
  const partsM = frontOverhangM + wheelbaseM + rearOverhangM;
  if (Math.abs(partsM - lengthM) <= LENGTH_SUM_TOLERANCE_M + 1e-9) return [];
  return [{ kind: 'parts and length', field: 'lengthM', partsM, lengthM }];
}

function widthFaults({ widthM, widthMirrorsM, widthMirrorsFoldedM }: Sizes): SizeFault[] {
  if (widthMirrorsM === undefined) return [];
  const found: SizeFault[] = [];
  if (widthM !== undefined && widthMirrorsM < widthM)
    found.push({
      kind: 'mirrors narrower than body',
      field: 'widthMirrorsM',
      mirrorsM: widthMirrorsM,
      bodyM: widthM,
    });
  if (widthMirrorsFoldedM !== undefined && widthMirrorsFoldedM > widthMirrorsM)
    found.push({ kind: 'folded wider than unfolded', field: 'widthMirrorsFoldedM' });
  return found;
}

/** Wheels stand under the body: the middles of two tyres are nearer together than its sides. */
function trackFaults({ widthM, trackM }: Sizes): SizeFault[] {
  if (widthM === undefined || trackM === undefined || trackM < widthM) return [];
  return [{ kind: 'track wider than body', field: 'trackM', trackM, bodyM: widthM }];
}

function circleFaults(sizes: Sizes): SizeFault[] {
  const { wheelbaseM, frontOverhangM = 0 } = sizes;
  if (wheelbaseM === undefined) return [];
  return (['turningCircleM', 'turningCircleWallM'] as const).flatMap((field): SizeFault[] => {
    const circleM = sizes[field];
    // between walls the nose runs on the circle, between kerbs the front wheels
    const aheadM = wheelbaseM + (field === 'turningCircleWallM' ? frontOverhangM : 0);
    if (circleM === undefined || !isCircleTooSmall({ circleM, aheadM, wheelbaseM })) return [];
    return [{ kind: 'circle too small', field, circleM, wheelbaseM }];
  });
}

/** As the refusal of a file says it. */
export function saySizeFault(fault: SizeFault): string {
  switch (fault.kind) {
    case 'parts and length':
      return `frontOverhangM + wheelbaseM + rearOverhangM is ${fault.partsM.toFixed(3)} m, but lengthM is ${fault.lengthM.toFixed(3)} m; measure again, they must agree within ${LENGTH_SUM_TOLERANCE_M} m`;
    case 'mirrors narrower than body':
      return `the width over the mirrors (${fault.mirrorsM} m) is less than the body (${fault.bodyM} m)`;
    case 'folded wider than unfolded':
      return 'the folded mirrors are wider than the unfolded ones';
    case 'track wider than body':
      return `the track (${fault.trackM} m) is not less than the width of the body (${fault.bodyM} m); it is measured from the middle of one tyre to the middle of the other`;
    case 'circle too small':
      return `${fault.circleM} m is too small for a wheelbase of ${fault.wheelbaseM} m; give the whole width of the circle, not its radius`;
  }
}

/** As it stands beside the field of the form. */
export function saySizeFaultShort(fault: SizeFault): string {
  switch (fault.kind) {
    case 'parts and length':
      return `Overhangs and wheelbase add up to ${printMetres(fault.partsM)}, not ${printMetres(fault.lengthM)}. Measure again.`;
    case 'mirrors narrower than body':
      return 'Less than the body.';
    case 'folded wider than unfolded':
      return 'Wider than the unfolded mirrors.';
    case 'track wider than body':
      return 'Not less than the body. Measure from the middle of one tyre to the middle of the other.';
    case 'circle too small':
      return 'Too small for this wheelbase. Give the whole width of the circle, not its radius.';
  }
}
