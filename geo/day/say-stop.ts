import { clockText } from '../clock/print-times.ts';
import type { Day, StopTimes } from '../report/day.ts';
import { DO_SERVICE } from '../services/kinds.ts';
import { distanceIn } from '../units/in-units.ts';
import { clip, listed, lowerFirst, plainLine } from '../units/text.ts';
import { sayOpen } from './say-open.ts';

/** A stop of the day in finished words. */
interface StopSaid {
  readonly name: string;
  /** `12.3 km (7.6 mi)` */
  readonly at: string;
  /** `there 10:20, leave 10:50` */
  readonly times: string;
  readonly note: string;
}

/** The date that clocks of a day need not tell; undefined where neither leaving nor a return hour gives one. */
export function dateOf({ start }: Pick<Day, 'start'>): string | undefined {
  return (start.leaveAt ?? start.latestLeaveAt)?.slice(0, 10);
}

/** A stop as the driver is told of it. @param date see `dateOf` */
export function sayStop(stop: StopTimes, date: string | undefined): StopSaid {
  const { name, atM, arriveAt, leaveAt, latestLeaveAt } = stop;
  const open = sayOpen(stop);
  const times = [
    ...(arriveAt === undefined ? [] : [`there ${clockText(arriveAt, date)}`]),
    ...(leaveAt === undefined ? [] : [`leave ${clockText(leaveAt, date)}`]),
    ...(latestLeaveAt === undefined ? [] : [`at the latest ${clockText(latestLeaveAt, date)}`]),
  ];
  const todo = sayServices(stop);
  return {
    name: clip(name),
    at: distanceIn('both', atM),
    times: times.join(', '),
    note: [...(todo === '' ? [] : [`${todo}.`]), ...(open === undefined ? [] : [plainLine(open)])].join(' '),
  };
}

/** What is done there with tanks: `Empty the cassette and fuel`; '' where nothing is. */
export function sayServices({ services }: Pick<StopTimes, 'services'>): string {
  return listed(services.map((kind, i) => (i === 0 ? DO_SERVICE[kind] : lowerFirst(DO_SERVICE[kind]))));
}
