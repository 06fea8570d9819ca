import type { KindOf } from '../../report/kinds.ts';
import type { Access } from '../../tags/access.ts';
import type { Reach } from '../../tags/conditional/context.ts';
import type { Draft } from '../finding.ts';
import type { Place } from '../places.ts';
import type { RuleInput } from '../rule.ts';

/** Who may drive at one place. */
export interface AccessAsked {
  readonly input: RuleInput;
  readonly place: Place;
  readonly reach: Reach;
  /** the same where a sign only advises against going past: roads with such signs belong to the run */
  readonly advisedReach: Reach;
  /** what the plain tags and the class of road say; undefined where they say nothing */
  readonly deciding: Access | undefined;
}

/** What is said of a place's access, without its place. */
export type AccessSaid = Omit<Draft<'access'>, 'run' | 'subject'> & { readonly kind: KindOf<'access'> };
