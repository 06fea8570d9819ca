import { CLEAR_SHAPE, LEVEL_SHAPES } from '../../geo/report/level-shapes.ts';
import type { Level, Verdict } from '../../geo/report/report.ts';

export function LevelMark({ level, size = 20 }: { level: Level; size?: number }) {
  return (
    <svg width={size} height={size} viewBox="0 0 24 24" aria-hidden="true" class="level-mark">
      <LevelShape level={level} />
    </svg>
  );
}

/** The mark of a verdict: its level's, or for a drive that nothing stops one in plain ink. */
export function VerdictMark({ verdict, size }: { verdict: Verdict; size: number }) {
  if (verdict !== 'clear') return <LevelMark level={verdict} size={size} />;
  return (
    <svg width={size} height={size} viewBox="0 0 24 24" aria-hidden="true" class="level-mark">
      <path d={CLEAR_SHAPE} fill="none" stroke="currentColor" stroke-width={2.4} />
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
