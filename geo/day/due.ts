import { clockText } from '../clock/print-times.ts';
import { given } from '../given.ts';
import type { Day, DueItem } from '../report/day.ts';
import { DO_SERVICE, type ServiceKind } from '../services/kinds.ts';
import { clip } from '../units/text.ts';
import type { DayPlan } from './plan.ts';

/** What falls due on a day, with the minute by which it is to be done so that the yard is reached in time. */
export function dueItems(
  { start, stops, end }: Pick<Day, 'start' | 'stops' | 'end'>,
  plan: DayPlan,
): DueItem[] {
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
  for (const kind of new Set(plan.before ?? []))
    if (!done.has(kind))
      items.push({ kind: 'service', services: [kind], say: `${toDo(kind)}: no stop is planned for it yet` });
  if (end.homeBy !== undefined)
    items.push({ kind: 'home', by: end.homeBy, say: `Back at the yard${by(end.homeBy)}` });
  return items;
}

function toDo(kind: ServiceKind): string {
  return kind === 'fuel' ? 'Fuel before the yard' : DO_SERVICE[kind];
}
