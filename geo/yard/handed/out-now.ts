import type { HandedBody } from '../../library/body/handed.ts';

/** A sheet that was handed out. */
export interface OutSheet {
  readonly id: string;
  /** ISO 8601, by the clock of the computer it was made on */
  readonly made: string;
  readonly body: HandedBody;
}

/** As much of one as tells which drive and vehicle it is of. */
type Of = Pick<HandedBody, 'gpx' | 'track' | 'vehicle' | 'vehicleName'>;

/** The number that a new handing-over takes the place of: the last one of the same drive and vehicle. */
export function numberReplaced(sheets: readonly OutSheet[], of: Of): string | undefined {
  const same = sheets.filter(({ body }) => isSame(body, of));
  const replaced = new Set(same.map(({ body }) => body.replaces));
  const standing = same.filter(({ body }) => !replaced.has(body.number));
  return standing.reduce<OutSheet | undefined>(
    (last, each) => (last === undefined || each.made >= last.made ? each : last),
    undefined,
  )?.body.number;
}

function isSame(a: Of, b: Of): boolean {
  if (a.gpx !== b.gpx || (a.track ?? 1) !== (b.track ?? 1)) return false;
  return a.vehicle === undefined && b.vehicle === undefined
    ? a.vehicleName === b.vehicleName
    : a.vehicle === b.vehicle;
}

/** Whether a sheet is still to be driven by. */
export type Leaves = 'coming' | 'any day' | 'left';

/** Coming: on that day or after it; `any day` where no leave time was given. @param today YYYY-MM-DD */
export function leaves({ leaveAt }: Pick<HandedBody, 'leaveAt'>, today: string): Leaves {
  if (leaveAt === undefined) return 'any day';
  return leaveAt.slice(0, 10) >= today ? 'coming' : 'left';
}

const ORDER: readonly Leaves[] = ['coming', 'any day', 'left'];

/**
 * The sheets that nothing newer took the place of, the coming leave days first, those that have left last. One whose own
 * leave day is still to come stays, where the newer one is for another day: both are out.
 * @param today YYYY-MM-DD
 */
export function outNow(sheets: readonly OutSheet[], today: string): OutSheet[] {
  const newer = new Map(sheets.map(({ body }) => [body.replaces, body]));
  const out = sheets.filter(({ body }) => {
    const next = newer.get(body.number);
    if (next === undefined) return true;
    return leaves(body, today) === 'coming' && body.leaveAt?.slice(0, 10) !== next.leaveAt?.slice(0, 10);
  });
  const rank = ({ body }: OutSheet) => ORDER.indexOf(leaves(body, today));
  return out.sort((a, b) => rank(a) - rank(b) || byDay(a, b, rank(a) === 2) || (a.id < b.id ? -1 : 1));
}

function byDay(a: OutSheet, b: OutSheet, newestFirst: boolean): number {
  const [one, other] = [a.body.leaveAt ?? '', b.body.leaveAt ?? ''];
  if (one === other) return 0;
  return one < other === newestFirst ? 1 : -1;
}
