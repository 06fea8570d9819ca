import type { Finding, Verdict } from './report.ts';

/** Kinds of folded doubts, with the words for one and for several. The first that fits counts. */
const DOUBTS: readonly {
  readonly fits: (finding: Finding) => boolean;
  readonly one: string;
  readonly several: string;
}[] = [
  {
    fits: ({ kind }) => kind === 'bridge above' || kind === 'gateway',
    one: 'bridge over the road without a mapped height',
    several: 'bridges over the road without a mapped height',
  },
  {
    fits: ({ kind }) => kind === 'roof',
    one: 'tunnel without a mapped height',
    several: 'tunnels without a mapped height',
  },
  {
    fits: ({ kind }) => kind === 'building above',
    one: 'building drawn over the road',
    several: 'buildings drawn over the road',
  },
  {
    fits: ({ kind }) => kind === 'off the map',
    one: 'short bit off the mapped roads',
    several: 'short bits off the mapped roads',
  },
  {
    fits: ({ kind }) => kind === 'gap in the route',
    one: 'short break in the route',
    several: 'short breaks in the route',
  },
  {
    fits: ({ subject }) => LIMITS.has(subject),
    one: 'limit whose figures leave the vehicle free',
    several: 'limits whose figures leave the vehicle free',
  },
  { fits: () => true, one: 'other doubt of little weight', several: 'other doubts of little weight' },
];
const LIMITS: ReadonlySet<string> = new Set(['height', 'width', 'length', 'mass', 'axle']);

/**
 * What a verdict rests on when every finding of its level is folded away: "7 bridges over the road without a mapped
 * height". The verdict itself stays the worst level present.
 * @returns undefined where a finding of that level is shown, or none is there
 */
export function saySlight(findings: readonly Finding[], verdict: Verdict): string | undefined {
  const deciding = findings.filter(({ level }) => level === verdict);
  if (deciding.length === 0 || deciding.some(({ folded }) => folded !== true)) return undefined;
  if (verdict !== 'unknown')
    return counted(deciding.length, 'place of little weight', 'places of little weight');
  const left = new Set(deciding);
  const parts = DOUBTS.flatMap(({ fits, one, several }) => {
    const found = [...left].filter(fits);
    for (const finding of found) left.delete(finding);
    return found.length === 0 ? [] : [counted(found.length, one, several)];
  });
  const last = parts.at(-1) ?? '';
  return parts.length < 2 ? last : `${parts.slice(0, -1).join(', ')} and ${last}`;
}

function counted(count: number, one: string, several: string): string {
  return count === 1 ? `one ${one}` : `${count} ${several}`;
}
