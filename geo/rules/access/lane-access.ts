import type { Level } from '../../report/report.ts';
import { type Access, type AccessTag, accessConditions, accessLanes } from '../../tags/access.ts';
import { accessLevel, readAccessValue } from '../../tags/access-value.ts';
import { limitOnLanes } from '../../tags/lanes.ts';
import { resolveTag } from '../../tags/resolve.ts';
import { contextsAt } from '../conditions.ts';
import type { Place } from '../places.ts';
import type { RuleInput } from '../rule.ts';
import { type AccessWords, adviseAccess, sayOpenAccess } from './say-access.ts';

/** Lanes of the motorhome's own keys, conditions among them judged. */
export function laneWords(
  input: RuleInput,
  place: Place,
  within: boolean,
  deciding: Access | undefined,
): AccessWords[] {
  const { tags, forward } = place;
  const rank = deciding?.rank ?? 0;
  const plains = accessLanes(tags, forward, rank);
  const conditionals = accessConditions(tags, forward, rank).filter(({ lanes }) => lanes);
  const heads = plains.length > 0 ? plains : conditionals.length > 0 ? [undefined] : [];
  return heads.flatMap((plain) => {
    const { possible, open } = resolveTag(plain, conditionals, () => contextsAt(input, place, within));
    const said = possible.map(({ value, from }) =>
      value === undefined || from === undefined
        ? undefined
        : laneWordsOf({ ...from, text: value }, within, deciding),
    );
    const [first, ...more] = said.filter((words) => words !== undefined);
    if (open.length === 0) return first === undefined ? [] : [first];
    const allCare = first?.level === 'care' && more.every((words) => words.level === 'care');
    if (allCare && !open.some((each) => each.unreadable)) return [first];
    if (first === undefined && !open.some((each) => each.unreadable)) return [];
    const about = open.map(sayOpenAccess).join(' ');
    return {
      kind: 'lane' as const,
      level: 'unknown' as const,
      tags: Object.fromEntries(open.map(({ tag }) => [tag.key, tag.text])),
      say: first === undefined ? about : `${first.say} ${about}`,
      advice: adviseAccess('unknown', within),
      aspect: open[0]?.tag.key ?? '',
    };
  });
}

/**
 * Lanes closed to us beside open ones are everyday (bus lanes) and painted on the road: a folded care that names them;
 * on a road that is otherwise closed to us, a tight. All lanes closed is closed.
 */
export function laneWordsOf(
  tag: AccessTag,
  within: boolean,
  deciding: Access | undefined,
): AccessWords | undefined {
  const levels: (Level | undefined)[] = [];
  const lanes = limitOnLanes(tag.text, deciding?.text || undefined, (value) => {
    const level = accessLevel(readAccessValue(value), within);
    levels.push(level);
    return level === undefined || level === 'care'
      ? 'free'
      : readAccessValue(value) === 'unknown'
        ? 'unreadable'
        : 'binds';
  });
  const common = { kind: 'lane' as const, tags: { [tag.key]: tag.text }, aspect: tag.key };
  const said = `"${tag.key}=${tag.text}"`;
  if (lanes.bound === 'none') return undefined;
  const closed = deciding !== undefined && accessLevel(deciding.meaning, within) === 'barred';
  if (lanes.bound === 'some')
    return {
      ...common,
      level: closed ? 'tight' : 'care',
      say: `Not all lanes are for us: ${lanes.boundLanes} ${isPlural(lanes.boundLanes) ? 'are' : 'is'} closed (${said}).`,
      advice: `Keep to ${isPlural(lanes.freeLanes) ? 'one of ' : ''}${lanes.freeLanes}.`,
      folded: !closed,
    };
  if (lanes.lanes.includes('unreadable'))
    return {
      ...common,
      level: 'unknown',
      say: `${said} is no access that is understood on every lane.`,
      advice: adviseAccess('unknown', within),
    };
  const barred = levels.every((level) => level === 'barred');
  return {
    ...common,
    level: barred ? 'barred' : 'unknown',
    say: `Closed to us on ${lanes.boundLanes} (${said}).`,
    advice: adviseAccess(barred ? 'barred' : 'unknown', within),
  };
}

function isPlural(lanes: string): boolean {
  return lanes.startsWith('lanes ') || lanes.startsWith('all ');
}
