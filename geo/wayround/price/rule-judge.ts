import type { LocalMoment } from '../../clock/moment.ts';
import type { TurnRestriction } from '../../roads/roads.ts';
import { contextsAt } from '../../rules/conditions.ts';
import { turnRuleFor } from '../../tags/turn-restriction.ts';
import { askedAlone } from './asked-alone.ts';
import type { RoadJudge } from './road-judge.ts';

/** What the restrictions on one turn come to for the vehicle. */
export interface RuleSaid {
  readonly binds: 'yes' | 'no' | 'unsure';
  readonly clocked: boolean;
}

/** Judges turn restrictions for one vehicle as the checker does, each once for a country and a minute. */
export class RuleJudge {
  private readonly known = new Map<string, RuleSaid>();

  constructor(private readonly judge: RoadJudge) {}

  /** The hardest of several restrictions on one turn at a node. */
  hardest(rules: readonly TurnRestriction[], node: number, moment?: LocalMoment): RuleSaid {
    let binds: RuleSaid['binds'] = 'no';
    let clocked = false;
    for (const rule of rules) {
      const said = this.one(rule, node, moment);
      clocked ||= said.clocked;
      if (said.binds === 'yes' || (said.binds === 'unsure' && binds === 'no')) binds = said.binds;
    }
    return { binds, clocked };
  }

  private one(rule: TurnRestriction, node: number, moment: LocalMoment | undefined): RuleSaid {
    const at = this.judge.placeOf(node);
    const country = this.judge.countryAt(at);
    const clock = moment === undefined ? '' : `${moment.month}-${moment.day} ${moment.hour}:${moment.minute}`;
    const key = `${rule.id}|${country}|${clock}`;
    const known = this.known.get(key);
    if (known !== undefined) return known;
    let clocked = false;
    const asked = askedAlone(
      {
        wayTags: {},
        kind: 0,
        forward: true,
        junction: false,
        at,
        country,
        reach: 'through',
        moment,
        onClock: () => {
          clocked = true;
        },
      },
      this.judge.asker,
    );
    const place = { type: 'relation', id: rule.id, index: -1, tags: rule.tags, forward: true } as const;
    const here = { ...place, fromM: 0, toM: 0, road: undefined, wayTags: {} };
    const { binds } = turnRuleFor(rule.tags, () => contextsAt(asked, here, 'through'));
    const said = { binds, clocked };
    this.known.set(key, said);
    return said;
  }
}
