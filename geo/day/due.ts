import { clockText } from '../clock/print-times.ts';
import { given } from '../given.ts';
import type { Day, DueItem } from '../report/day.ts';
import { DO_SERVICE, type ServiceKind } from '../services/kinds.ts';
import { clip } from '../units/text.ts';
import type { DayPlan } from './plan.ts';

/** What falls due on a day, with the minute by which it is to be done so that the yard, or wherever the drive ends, is reached in time. */
export function dueItems(
  { start, stops, end }: Pick<Day, 'start' | 'stops' | 'end'>,
  {
    before = [],
    elsewhere,
  }: Pick<DayPlan, 'before'> & { /** the drive does not end where it starts */ readonly elsewhere: boolean },
): DueItem[] {
  const goal = elsewhere ? 'the drive’s end' : 'the yard';
  const toDo = (kind: ServiceKind) => (kind === 'fuel' ? `Fuel before ${goal}` : DO_SERVICE[kind]);
  const date = (start.leaveAt ?? start.latestLeaveAt)?.slice(0, 10);
  const by = (iso: string | undefined) => (iso === undefined ? '' : ` by ${clockText(iso, date)}`);
  const items: DueItem[] = [];
  if (start.latestLeaveAt !== undefined)
    items.push({ kind: 'leave', by: start.latestLeaveAt, say: `Set off${by(start.latestLeaveAt)}` });
  for (const [stop, { name, services, latestLeaveAt }] of stops.entries()) {
    const at = { stop, ...given({ by: latestLeaveAt }) };
    for (const kind of services)
      items.push({
        kind: 'service',
        services: [kind],
        ...at,
        say: `${toDo(kind)}${by(latestLeaveAt)}, at ${clip(name, 60)}`,
      });
    if (services.length === 0 && latestLeaveAt !== undefined)
      items.push({ kind: 'leave stop', ...at, say: `Leave ${clip(name, 60)}${by(latestLeaveAt)}` });
  }
  const done = new Set(stops.flatMap(({ services }) => services));
  for (const kind of new Set(before))
    if (!done.has(kind))
      items.push({ kind: 'service', services: [kind], say: `${toDo(kind)}: no stop is planned for it yet` });
  if (end.homeBy !== undefined)
    items.push({
      kind: 'home',
      by: end.homeBy,
      say: `${elsewhere ? 'At' : 'Back at'} ${goal}${by(end.homeBy)}`,
    });
  return items;
}
