import type { Finding, Level } from '../../report/report.ts';
import type { Quantity } from '../../tags/limit-key.ts';
import type { LimitClaim } from '../../tags/limits.ts';
import type { Place } from '../places.ts';

/** What a figure means for the vehicle: undefined where it passes freely. */
export interface Judged {
  readonly level: Level;
  readonly vehicle: NonNullable<Finding['vehicle']>;
  /** limit minus vehicle, negative when over */
  readonly spare: number;
  readonly say: string;
  readonly advice: string;
}

/** How one subject holds limits against the vehicle. */
export interface LimitRule {
  readonly subject: 'height' | 'width' | 'length' | 'mass' | 'axle' | 'map';
  readonly quantities: readonly Quantity[];
  readonly unit: 'm' | 'kg';
  /** a figure in metres or kilograms */
  judge(claim: LimitClaim, value: number, place: Place): Judged | undefined;
  /** why a figure is not to be believed */
  disbelieve?(value: number): string | undefined;
  /** what has to be said where a word stands in place of a figure; undefined: nothing */
  judgeWord?(kind: 'none' | 'default' | 'unsigned', place: Place): string | undefined;
  /** what to do where nothing is proved */
  readonly unknownAdvice: string;
}
