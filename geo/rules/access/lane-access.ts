import { given } from '../../given.ts';
import type { Level } from '../../report/level.ts';
import { type AccessTag, accessConditions, accessLanes } from '../../tags/access.ts';
import { readAccessValue } from '../../tags/access-value.ts';
import { limitOnLanes } from '../../tags/lanes.ts';
import { resolveTag } from '../../tags/resolve.ts';
import { contextsAt } from '../conditions.ts';
import { wantsOf } from '../open-conditions.ts';
import type { AccessAsked, AccessSaid } from './access-asked.ts';
import { accessLevel, mayClose } from './access-level.ts';
import { adviseAccess, sayLanesUnreadable, sayNoLane, sayOpenAccess, saySomeLanes } from './say-access.ts';

/** Lanes of the motorhome's own keys, conditions among them judged. */
export function lanesSaid(asked: AccessAsked): AccessSaid[] {
  const { input, place, reach, deciding } = asked;
  const rank = deciding?.rank ?? 0;
  const plains = accessLanes(place, rank);
  const conditionals = accessConditions(place, rank).filter(({ lanes }) => lanes);
  const heads = plains.length > 0 ? plains : conditionals.length > 0 ? [undefined] : [];
  return heads.flatMap((plain): AccessSaid[] => {
    const { possible, open } = resolveTag(plain, conditionals, () => contextsAt(input, place, reach));
    const said = possible.flatMap(({ value, from }) =>
      value === undefined || from === undefined ? [] : (laneSaid(asked, { ...from, text: value }) ?? []),
    );
    const [first] = said;
    if (open.length === 0) return first === undefined ? [] : [first];
    const unreadable = open.some((each) => each.unreadable);
    if (first === undefined && !unreadable) return [];
    if (first !== undefined && !unreadable && said.every(({ level }) => level === 'care')) return [first];
    const about = open.map(sayOpenAccess).join(' ');
    return [
      {
        kind: 'lane',
        level: 'unknown',
        wants: wantsOf(open),
        tags: Object.fromEntries(open.map(({ tag }) => [tag.key, tag.text])),
        say: first === undefined ? about : `${first.say} ${about}`,
        advice: adviseAccess('unknown', reach),
        aspect: open[0]?.tag.key ?? '',
      },
    ];
  });
}

/** Whether a lane-by-lane value keeps out of every lane whom it speaks of. */
export function closesEveryLane(asked: Pick<AccessAsked, 'reach' | 'advisedReach'>, text: string): boolean {
  const { bound } = limitOnLanes(text, undefined, (value) =>
    mayClose(readAccessValue(value), asked) ? 'binds' : 'free',
  );
  return bound === 'all';
}

/**
 * Lanes closed to us beside open ones are everyday (bus lanes) and painted on the road: a folded care that names them;
 * on a road that is otherwise closed to us a care that is shown. All lanes closed is closed.
 */
export function laneSaid(
  asked: Pick<AccessAsked, 'reach' | 'advisedReach' | 'deciding'>,
  tag: AccessTag,
): AccessSaid | undefined {
  const { reach, deciding } = asked;
  const levels: (Level | undefined)[] = [];
  const lanes = limitOnLanes(tag.text, deciding?.text || undefined, (value) => {
    const meaning = readAccessValue(value);
    levels.push(accessLevel(meaning, asked));
    if (!mayClose(meaning, asked)) return 'free';
    return meaning === 'unknown' ? 'unreadable' : 'binds';
  });
  const common = { kind: 'lane' as const, tags: { [tag.key]: tag.text }, aspect: tag.key };
  if (lanes.bound === 'none') return undefined;
  if (lanes.bound === 'some') {
    const closed = deciding !== undefined && accessLevel(deciding.meaning, asked) === 'barred';
    return {
      ...common,
      level: 'care',
      ...saySomeLanes(tag, lanes),
      ...given({ folded: !closed || undefined }),
    };
  }
  const unknown = { level: 'unknown' as const, advice: adviseAccess('unknown', reach) };
  if (lanes.lanes.includes('unreadable'))
    return { ...common, ...unknown, wants: 'sign', say: sayLanesUnreadable(tag) };
  const say = sayNoLane(tag, lanes);
  return levels.every((level) => level === 'barred')
    ? { ...common, level: 'barred', say, advice: adviseAccess('barred', reach) }
    : { ...common, ...unknown, wants: 'permission', say };
}
