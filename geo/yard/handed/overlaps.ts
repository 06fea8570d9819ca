import { sayMoment } from '../../clock/print-dates.ts';
import type { HandedBody } from '../../library/body/handed.ts';
import { clip, listed, quote } from '../../units/text.ts';
import type { OutSheet } from './out-now.ts';

/** As much of a sheet as tells when which vehicle is out. */
type Of = Pick<HandedBody, 'leaveAt' | 'arriveAt' | 'plan' | 'vehicle' | 'vehicleName'>;

interface Hours {
  /** local wall times, YYYY-MM-DDTHH:MM */
  readonly from: string;
  readonly to: string;
}

/** The hour a sheet's vehicle is due at the end, local wall time; undefined where none was given. */
export function homeByOf({ plan }: Pick<HandedBody, 'plan'>): string | undefined {
  const homeBy = plan?.['homeBy'];
  return typeof homeBy === 'string' ? homeBy : undefined;
}

/** From leaving to the return hour, or to the end of the drive where that is later; undefined without a leave time. */
function hoursOf(sheet: Of): Hours | undefined {
  const { leaveAt: from, arriveAt } = sheet;
  if (from === undefined) return undefined;
  const ends = [from, homeByOf(sheet), arriveAt].filter((end) => end !== undefined);
  return { from, to: ends.sort().at(-1) ?? from };
}

/** The sheets of the same vehicle whose hours share a minute with this one's. @param others those that are out */
export function overlapping(sheet: Of, others: readonly OutSheet[]): OutSheet[] {
  const hours = hoursOf(sheet);
  if (hours === undefined) return [];
  return others.filter(({ body }) => {
    const same =
      sheet.vehicle === undefined || body.vehicle === undefined
        ? sheet.vehicleName === body.vehicleName
        : sheet.vehicle === body.vehicle;
    const its = hoursOf(body);
    return same && its !== undefined && its.from <= hours.to && hours.from <= its.to;
  });
}

/** One sentence; '' where no hours overlap. @param others as `overlapping` gives them */
export function sayOverlap({ vehicleName }: Pick<Of, 'vehicleName'>, others: readonly OutSheet[]): string {
  if (others.length === 0) return '';
  const each = others.map(({ body: { number, driveName, leaveAt = '', ...more } }) => {
    const homeBy = homeByOf(more);
    const due = homeBy === undefined ? '' : `, due ${sayMoment(homeBy, leaveAt)}`;
    return `${quote(driveName, 80)} (sheet ${number}, leaves ${sayMoment(leaveAt)}${due})`;
  });
  return `${clip(vehicleName, 60)} is out at the same hours on ${listed(each)}: one vehicle cannot drive both.`;
}
