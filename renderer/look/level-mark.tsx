import type { Level, Verdict } from '../../geo/report/report.ts';

/**
 * The four levels by shape: barred a filled bar across the road, tight two facing wedges, unknown a hollow
 * dashed ring, care a small flag. Drawn in a box of 24 by 24 about its middle, for rows, map and strip alike.
 */
export const LEVEL_SHAPES: Readonly<
  Record<Level, { readonly d: string; readonly filled: boolean; readonly dash?: string }>
> = {
  barred: { d: 'M1 8h22v8H1zM6.5 1.5v4M17.5 1.5v4M6.5 18.5v4M17.5 18.5v4', filled: true },
  tight: { d: 'M2 4v16l8-8zM22 4v16l-8-8z', filled: true },
  unknown: { d: 'M20 12a8 8 0 1 1-16 0 8 8 0 1 1 16 0z', filled: false, dash: '4.2 4.18' },
  care: { d: 'M6 3v18M6 4l13 4.5L6 13z', filled: true },
};

export function LevelMark({ level, size = 20 }: { level: Level; size?: number }) {
  return (
    <svg width={size} height={size} viewBox="0 0 24 24" aria-hidden="true" class="level-mark">
      <LevelShape level={level} />
    </svg>
  );
}

/** The road's two edges and nothing across them: the place where the bar of `barred` would lie is empty. */
const CLEAR = 'M6.5 1.5v21M17.5 1.5v21';

/** The mark of a verdict: its level's, or for a drive that nothing stops one in plain ink. */
export function VerdictMark({ verdict, size }: { verdict: Verdict; size: number }) {
  if (verdict !== 'clear') return <LevelMark level={verdict} size={size} />;
  return (
    <svg width={size} height={size} viewBox="0 0 24 24" aria-hidden="true" class="level-mark">
      <path d={CLEAR} fill="none" stroke="currentColor" stroke-width={2.4} />
    </svg>
  );
}

/** The shape alone, for drawings that hold more than one. */
export function LevelShape({ level }: { level: Level }) {
  const { d, filled, dash } = LEVEL_SHAPES[level];
  return (
    <path
      d={d}
      fill={filled ? `var(--${level})` : 'none'}
      stroke={`var(--${level})`}
      stroke-width={filled ? 1.5 : 3}
      stroke-dasharray={dash}
    />
  );
}
