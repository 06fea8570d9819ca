import { printBytes } from '../../../geo/units/print.ts';
import { clip, counted, listed } from '../../../geo/units/text.ts';
import type { FetchPlan } from '../../../main/contract/fetch.ts';
import { sayTime } from '../../look/say-left.ts';
import type { FetchBy, Planned } from '../../state/fetching.ts';

/** Of a longer drive whole regions are hardly more, and ask less of a shared server. */
const LONG_M = 150_000;

/**
 * In which order the ways to fetch are offered: along the line first, but for a long drive, and where that server was
 * asked for another drive today already.
 */
export function waysInOrder(lengthM: number, line: Planned): readonly [FetchBy, FetchBy] {
  const askedToday = line !== undefined && 'by' in line && line.by === 'line' && line.today.queries > 0;
  return lengthM > LONG_M || askedToday ? ['region', 'line'] : ['line', 'region'];
}

/** Regions that one line can name. */
const NAMED = 3;

/** What a way of fetching takes: how much, how long, from whom; one short text each. */
export function sayPlan(plan: FetchPlan): readonly string[] {
  const figures = [sayBytes(plan), ...(plan.seconds === undefined ? [] : [sayTime(plan.seconds)])];
  const from = `from ${plan.host}`;
  if (plan.by === 'line') return [figures.join(', '), from];
  const names = plan.regions.map(({ name }) => clip(name, 40));
  const more = names.length - NAMED;
  const named = listed(more > 0 ? [...names.slice(0, NAMED), `${more} more`] : names);
  switch (plan.step) {
    case 'index':
      return [`first the list of regions: ${figures.join(', ')}`, from];
    case 'sizes':
      return [named, 'their sizes are asked for first', from];
    case 'maps':
      return [named, figures.join(', '), from];
    case 'none':
      return plan.say;
  }
}

function sayBytes({ bytes }: FetchPlan): string {
  return bytes === undefined ? 'size not known' : `about ${printBytes(bytes)}`;
}

/** How much was asked of a server today. */
export function sayToday({ queries, bytes }: { queries: number; bytes: number }): string {
  return queries === 0 ? 'nothing so far' : `${counted(queries, 'question')}, ${printBytes(bytes)}`;
}
