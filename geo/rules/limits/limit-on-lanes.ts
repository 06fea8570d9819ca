import type { About } from '../../report/kinds.ts';
import { limitOnLanes } from '../../tags/lanes.ts';
import { leavesByLanes } from '../leaves-by-lanes.ts';
import { type Asked, FREE, type LimitSubject, type Outcome, type Valued } from './limit-rule.ts';
import { sayAllLanes, sayLeavesByLane, saySomeLanes, whyLanesUnreadable } from './say-limits.ts';

type Held = Extract<Outcome, { kind: 'held' }>;

/**
 * A limit given lane by lane. Where some lanes let the vehicle by it keeps to those: care, unless the drive turns off
 * by the others. Where none does, the lane that leaves most decides; a lane nobody can read is none to keep to.
 */
export function outcomeOnLanes(
  asked: Asked,
  { claim, text, base }: Valued,
  judgeLane: (value: string) => Outcome,
): Outcome {
  const held: Held[] = [];
  const lanes = limitOnLanes(text, base, (value) => {
    const outcome = judgeLane(value);
    if (outcome.kind === 'held') held.push(outcome);
    return outcome.kind === 'free' ? 'free' : outcome.kind === 'held' ? 'binds' : 'unreadable';
  });
  if (lanes.bound === 'none') return FREE;
  const unreadable = lanes.lanes.includes('unreadable');
  const worst = extreme(held, (a, b) => a.judged.spare < b.judged.spare);
  const best = extreme(held, (a, b) => a.judged.spare > b.judged.spare);
  if (worst === undefined || best === undefined || (unreadable && lanes.bound === 'all'))
    return {
      kind: 'doubt',
      doubt: { of: 'unreadable', why: whyLanesUnreadable(lanes), wants: 'sign' },
    };
  if (lanes.bound === 'all') {
    const differ = worst.judged.level !== best.judged.level;
    return {
      ...best,
      judged: { ...best.judged, say: sayAllLanes(lanes, best.judged.say, differ ? 'tighter' : 'alike') },
    };
  }
  const { wants: _, ...judged } = worst.judged;
  const about: About<LimitSubject> = { subject: judged.about.subject, kind: 'lane' };
  return {
    ...worst,
    judged: leavesByLanes(asked.input, asked.place, claim, lanes)
      ? { ...judged, about, level: 'unknown', wants: 'sign', ...sayLeavesByLane(lanes, judged.say) }
      : { ...judged, about, level: 'care', ...saySomeLanes(lanes, judged.say) },
  };
}

function extreme(all: readonly Held[], before: (a: Held, b: Held) => boolean): Held | undefined {
  return all.reduce<Held | undefined>(
    (found, each) => (found === undefined || before(each, found) ? each : found),
    undefined,
  );
}
