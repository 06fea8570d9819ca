import { rankOf } from '../../report/level.ts';
import type { LimitClaim } from '../../tags/limits.ts';
import { resolveTag } from '../../tags/resolve.ts';
import { contextsAt } from '../conditions.ts';
import { conditionRuns, reachOf } from '../end-runs.ts';
import type { Draft } from '../finding.ts';
import { goodsSignsAt } from '../goods-signs.ts';
import { claimsAt, limitedPlaces } from '../places.ts';
import type { RuleInput } from '../rule.ts';
import { type Family, familiesOf } from './claim-families.ts';
import { draftOf, strangeDraft } from './limit-draft.ts';
import { outcomeOf } from './limit-outcome.ts';
import { type Asked, FREE, type LimitRule, type Settled } from './limit-rule.ts';

/**
 * Holds every mapped limit of one subject on the driven ways and passed nodes against the vehicle: the claims of a
 * place, the limits they are forms of, what each comes to there and then, what that means for the vehicle.
 * The figure that leaves least is said once per place; what is not settled or cannot be read is said beside it.
 */
export function holdLimits(input: RuleInput, rule: LimitRule): Draft[] {
  return limitedPlaces(input.drive, input.roads).flatMap((place) => {
    const claims = claimsAt(place, rule.quantities);
    if (claims.length === 0) return [];
    const ofGoods = claims.some(({ binding }) => binding === 'goods');
    const asked: Asked = {
      input,
      rule,
      place,
      goods: ofGoods ? goodsSignsAt(input, place.fromM) : undefined,
    };
    const ours = claims.filter((claim) => reachesUs(claim, asked));
    const strange = ours.filter(({ understood }) => !understood);
    const families = familiesOf(
      ours.filter(({ understood }) => understood),
      place,
    );
    return worstOnce([
      ...strange.map((claim) => strangeDraft(asked, claim)),
      ...families.flatMap((family) => draftOf(asked, settle(asked, family)) ?? []),
    ]);
  });
}

/** What is said of goods vehicles reaches us where the country says so, that of articulated lorries nowhere. */
function reachesUs({ binding, key }: LimitClaim, { goods }: Asked): boolean {
  return binding !== 'goods' || (goods !== undefined && !key.includes('hgv_'));
}

/** What a limit comes to at the place when the vehicle passes, and what each value it may have means. */
function settle(asked: Asked, { plain, conditionals }: Family): Settled {
  const { input, place } = asked;
  const resolved = resolveTag(plain, conditionals, (claim) =>
    contextsAt(input, place, reachOf(place, conditionRuns(input, claim.key, claim.text))),
  );
  const head = plain ?? conditionals[0];
  const base = head && place.tags[plainKey(head)];
  return {
    resolved,
    ofGoods: head?.binding === 'goods',
    judge: ({ value, from }) =>
      value === undefined || from === undefined ? FREE : outcomeOf(asked, { claim: from, text: value, base }),
  };
}

function plainKey({ key }: LimitClaim): string {
  return key.replace(/:lanes.*$/, '').replace(/:conditional$/, '');
}

/** Settled figures of one place, the worst of them alone; everything else stays. */
function worstOnce(drafts: readonly Draft[]): Draft[] {
  const figures = drafts.filter(({ aspect }) => aspect === undefined);
  const worst = figures.reduce<Draft | undefined>(
    (sofar, draft) => (sofar === undefined || isWorse(draft, sofar) ? draft : sofar),
    undefined,
  );
  return [...(worst === undefined ? [] : [worst]), ...drafts.filter(({ aspect }) => aspect !== undefined)];
}

function isWorse(a: Draft, b: Draft): boolean {
  if (a.level === b.level) return (a.spare ?? 0) < (b.spare ?? 0);
  return rankOf(a.level) < rankOf(b.level);
}
