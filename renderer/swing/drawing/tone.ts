import type { Level } from '../../../geo/report/level.ts';

/** How the strip that the swing covers is tinted: free, over a line or near to something, or touching. */
export type Tone = 'free' | 'close' | 'over';

/** The tint of a whole way. @param level undefined while it is steered by hand */
export function toneOf(level: Level | undefined): Tone {
  if (level === 'barred') return 'over';
  return level === 'tight' ? 'close' : 'free';
}
