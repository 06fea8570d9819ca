import type { Kind, Subject } from '../../report/kinds.ts';
import type { Finding } from '../../report/report.ts';

/** Figures closer than this are one figure in two units or with one decimal more: half of what a sign tells apart. */
const SAME_FIGURE = { m: 0.005, kg: 0.5, deg: 0.05, '%': 0.05 } as const;

/** Kinds that stand in place of a figure: what is mapped there is all there is to compare. */
const MAPPED_TEXT: ReadonlySet<Kind> = new Set([
  'unreadable',
  'not understood',
  'no figure',
  'not believed',
  'sign',
]);

/** Nothing says how it is: no figure, no road, nothing mapped of the ground. */
const LACKS: Partial<Readonly<Record<Subject, readonly Kind[]>>> = {
  height: ['no figure', 'sign', 'bridge above', 'building above', 'gateway', 'roof'],
  width: ['no figure', 'sign'],
  length: ['no figure', 'sign'],
  mass: ['no figure', 'sign'],
  axle: ['no figure', 'sign'],
  ground: ['not mapped', 'may be soft'],
  slope: ['no figure'],
  map: ['incomplete', 'off the map', 'nothing on the map'],
};

/** Whether a finding is open because the map says too little. */
export function lacksData({ level, subject, kind }: Finding): boolean {
  return level === 'unknown' && (LACKS[subject]?.includes(kind) ?? false);
}

/** Whether two findings about one place say the same: how grave it is, by which figure, at which hours. */
export function sameMeaning(a: Finding, b: Finding): boolean {
  return (
    a.subject === b.subject &&
    a.kind === b.kind &&
    a.level === b.level &&
    a.folded === b.folded &&
    sameFigure(a, b)
  );
}

/** The same limit, whatever unit it is mapped in, at the same hours. */
export function sameFigure(a: Finding, b: Finding): boolean {
  return sameLimit(a.limit, b.limit) && textOf(a) === textOf(b);
}

function sameLimit(a: Finding['limit'], b: Finding['limit']): boolean {
  if (a === undefined || b === undefined) return a === b;
  return a.unit === b.unit && Math.abs(a.value - b.value) < SAME_FIGURE[a.unit];
}

/** What of the tags is compared as it is written: hours and conditions, and what stands in place of a figure. */
function textOf({ kind, limit, tags }: Finding): string {
  const whole = limit === undefined && MAPPED_TEXT.has(kind);
  return Object.entries(tags)
    .filter(([key]) => whole || key === 'opening_hours' || key.split(':').includes('conditional'))
    .map(([key, value]) => `${key}=${value.replace(/\s+/g, '')}`)
    .sort()
    .join('\n');
}
