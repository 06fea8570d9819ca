import { given } from '../../given.ts';
import type { TurnRestriction } from '../../roads/roads.ts';
import { turnRuleFor } from '../../tags/turn-restriction.ts';
import { contextsAt } from '../conditions.ts';
import type { Draft } from '../finding.ts';
import { opensFrom, withOpens } from '../opens.ts';
import { type Place, roadName } from '../places.ts';
import type { RuleInput } from '../rule.ts';
import { runOf } from '../run.ts';
import { sayBrokenTurn } from './say-access.ts';

/** Turns driven that a restriction forbids us, or may. */
export function brokenTurns(input: RuleInput): Draft[] {
  return input.drive.brokenTurns.flatMap(({ atM, restriction }): Draft[] => {
    const place = turnPlace(input, restriction, atM);
    const rule = turnRuleFor(restriction.tags, () => contextsAt(input, place, 'through'));
    if (rule.binds === 'no') return [];
    const certain = rule.binds === 'yes';
    const draft: Draft = {
      subject: 'access',
      kind: 'turn restriction',
      level: certain ? 'barred' : 'unknown',
      ...given({ wants: certain ? undefined : (rule.open?.wants ?? ('sign' as const)) }),
      run: runOf(place),
      tags: { [rule.key]: rule.text },
      ...sayBrokenTurn(rule),
    };
    return [withOpens(draft, opensFrom(input, place, rule.liftedAt))];
  });
}

/** Rounding of places along the drive. Metres. */
const SAME_PLACE_M = 0.01;

function turnPlace(input: RuleInput, { id, tags }: TurnRestriction, atM: number): Place {
  const leg = input.drive.legs.find((one) => one.kind === 'stretch' && one.toM >= atM - SAME_PLACE_M);
  const wayTags = (leg?.kind === 'stretch' ? input.roads.ways.tags[leg.way] : undefined) ?? {};
  return {
    type: 'relation',
    id,
    index: -1,
    tags,
    forward: true,
    fromM: atM,
    toM: atM,
    road: roadName(wayTags),
    wayTags,
  };
}
