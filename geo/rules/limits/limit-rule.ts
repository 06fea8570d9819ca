import type { About, Wants } from '../../report/kinds.ts';
import type { Finding, Level } from '../../report/report.ts';
import type { Quantity } from '../../tags/limit-key.ts';
import type { LimitClaim } from '../../tags/limits.ts';
import type { Possible, Resolved } from '../../tags/resolve.ts';
import type { GoodsSigns } from '../goods-signs.ts';
import type { Place } from '../places.ts';
import type { RuleInput } from '../rule.ts';
import type { Words } from '../words.ts';
import type { HeightWord } from './height-word.ts';

export type LimitSubject = 'height' | 'width' | 'length' | 'mass' | 'axle';

/** What a figure means for the vehicle. */
export interface Judged extends Words {
  readonly about: About<LimitSubject>;
  readonly level: Level;
  readonly vehicle: NonNullable<Finding['vehicle']>;
  /** limit minus vehicle, negative when over */
  readonly spare: number;
  /** for an unknown: what would settle it */
  readonly wants?: Wants;
}

/** Why a value proves nothing, as the end of a sentence, and what would. */
export interface Doubt {
  readonly of: 'no figure' | 'not believed' | 'unreadable' | 'not understood';
  readonly why: string;
  readonly wants: Wants;
}

/** How one subject holds limits against the vehicle. */
export interface LimitRule {
  readonly subject: LimitSubject | 'map';
  readonly quantities: readonly Quantity[];
  readonly unit: 'm' | 'kg';
  /** a figure in metres or kilograms; undefined: the vehicle passes freely */
  judge(claim: LimitClaim, value: number, place: Place): Judged | undefined;
  /** a word that stands in place of a figure; undefined: it will do */
  judgeWord?(word: HeightWord, place: Place): Doubt | undefined;
  /** what to do where nothing is proved */
  readonly unknownAdvice: string;
}

/** One rule asked at one place. */
export interface Asked {
  readonly input: RuleInput;
  readonly rule: LimitRule;
  readonly place: Place;
  /** whether signs for goods vehicles count there; undefined: not asked, or they do not */
  readonly goods: GoodsSigns | undefined;
}

/** What one value of a limit means for the vehicle. */
export type Outcome =
  | { readonly kind: 'free' }
  | { readonly kind: 'held'; readonly judged: Judged; readonly value: number; readonly asMapped: string }
  | { readonly kind: 'doubt'; readonly doubt: Doubt };

export const FREE: Outcome = { kind: 'free' };

/** A value of a claim; `base` is the value of the key without `:lanes`, which an empty lane has. */
export interface Valued {
  readonly claim: LimitClaim;
  /** `a|b` when the claim is given lane by lane */
  readonly text: string;
  readonly base?: string | undefined;
}

/** What one limit comes to at a place, there and then. */
export interface Settled {
  /** the values it may have, and what that hangs on */
  readonly resolved: Resolved<LimitClaim>;
  readonly ofGoods: boolean;
  /** what a value means for the vehicle */
  judge(possible: Pick<Possible<LimitClaim>, 'value' | 'from'>): Outcome;
}
