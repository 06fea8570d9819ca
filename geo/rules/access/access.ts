import { given } from '../../given.ts';
import { accessFor } from '../../tags/access.ts';
import { modeRank } from '../../tags/modes.ts';
import { type EndRuns, reachOf, restrictedRuns, unsuitableRuns } from '../end-runs.ts';
import type { Draft } from '../finding.ts';
import { isInDoubt } from '../in-doubt.ts';
import { opensFrom, withOpens } from '../opens.ts';
import { type Place, waysSpokenOf } from '../places.ts';
import type { RuleInput, SubjectRule } from '../rule.ts';
import { runOf } from '../run.ts';
import type { AccessAsked, AccessSaid } from './access-asked.ts';
import { brokenTurns } from './broken-turns.ts';
import { judgeAccess } from './judge-access.ts';
import { lorryAccess } from './lorry-access.ts';
import { nodeAccess } from './node-access.ts';
import { sayClosedInDoubt, sayOneway } from './say-access.ts';
import { wrongWays } from './wrong-way.ts';

/** Who may drive there: access of every driven way and of points on it, one-way roads driven against, turn restrictions broken. */
export const access: SubjectRule = (input) => {
  const { drive, roads } = input;
  const runs = { restricted: restrictedRuns(input), unsuitable: unsuitableRuns(input) };
  return [
    ...waysSpokenOf(drive, roads).flatMap((place) => wayAccess(input, place, runs)),
    ...nodeAccess(input),
    ...againstOneways(input),
    ...brokenTurns(input),
  ];
};

function wayAccess(
  input: RuleInput,
  place: Place,
  runs: { readonly restricted: EndRuns; readonly unsuitable: EndRuns },
): Draft[] {
  const deciding = accessFor(place);
  const asked: AccessAsked = {
    input,
    place,
    reach: reachOf(place, runs.restricted),
    advisedReach: reachOf(place, runs.unsuitable),
    deciding,
  };
  const judged = judgeAccess(asked);
  const said = judged.said && whereInDoubt(asked, judged.said);
  const own = [...(said === undefined ? [] : [said]), ...judged.beside].map(
    (each): Draft => ({ ...each, subject: 'access', run: runOf(place) }),
  );
  if (said?.level === 'barred' || deciding.rank >= modeRank('motorhome')) return own;
  return [...own, ...lorryAccess(asked)];
}

/** A road closed to motor traffic bars only a drive that is clearly on it. */
function whereInDoubt({ input, place }: AccessAsked, said: AccessSaid): AccessSaid {
  if (said.level !== 'barred' || said.kind !== 'closed' || !isInDoubt(input.drive, place)) return said;
  return { ...said, level: 'unknown', wants: 'route', ...sayClosedInDoubt(said.say) };
}

/** In doubtful matches the map rule speaks instead. */
function againstOneways(input: RuleInput): Draft[] {
  return wrongWays(input)
    .filter(({ doubtful }) => !doubtful)
    .map(({ place, oneway }): Draft => {
      const certain = oneway.allowed === 'no';
      const draft: Draft = {
        subject: 'access',
        kind: 'one-way',
        level: certain ? 'barred' : 'unknown',
        ...given({ wants: certain ? undefined : (oneway.open?.wants ?? ('sign' as const)) }),
        run: runOf(place),
        tags: { [oneway.key]: oneway.text },
        ...sayOneway(oneway),
        aspect: 'oneway',
      };
      return withOpens(draft, opensFrom(input, place, oneway.allowedAt));
    });
}
