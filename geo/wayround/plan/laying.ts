import type { Finding } from '../../report/finding.ts';
import type { Problem } from '../../result.ts';
import type { Lessons } from '../past/judge-way.ts';
import type { Question } from '../search/question.ts';
import type { PlanStop } from './leg-parts.ts';
import type { PlanInput } from './plan-input.ts';

/** Places on their roads, with what every search between them shares. */
export interface Laying {
  readonly stops: readonly PlanStop[];
  readonly base: Question;
  readonly lessons: Lessons;
}

/** Nothing was laid: a leg that no road serves, with what bars it where one was found, or a time that cannot be read. */
export type Unlaid =
  | { readonly leg: number; readonly bars?: readonly Finding[] }
  | { readonly fault: Problem };

/** Lays a plan out on its roads, for the vehicle of the input. */
export type Lay<T extends object> = (input: PlanInput, laying: Laying) => T | Unlaid;

/** What was laid out and on which roads; where places had to be moved for it, why the nearer roads did not do. */
export interface Laid<T> {
  readonly value: T;
  readonly laying: Laying;
  readonly passedOver?: { readonly laying: Laying; readonly why: string };
}
