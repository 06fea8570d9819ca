/** What a barrier on the drive does when nothing is tagged on it. */
export type BarrierEffect = 'shut' | 'open' | 'unknown';

const EFFECTS: ReadonlyMap<string, BarrierEffect> = new Map([
  ['bollard', 'shut'],
  ['block', 'shut'],
  ['jersey_barrier', 'shut'],
  ['cycle_barrier', 'shut'],
  ['cattle_grid', 'open'],
  ['entrance', 'open'],
  ['toll_booth', 'open'],
  ['border_control', 'open'],
  ['kerb', 'open'],
  ['no', 'open'],
]);

/** What is made to be opened; walls, logs and all else are not. */
const OPENS = /gate$|^(gate|chain|rope|cable|sally_port|sliding_beam|swing_bar|lift_bar|rising_bollard|yes)$/;

/** Whether a `barrier=` of this kind is made to be opened. */
export function canOpen(kind: string): boolean {
  return OPENS.test(kind);
}

/** Gates, chains and every kind not listed may be shut on the day: unknown. */
export function barrierEffect(kind: string): BarrierEffect {
  return EFFECTS.get(kind) ?? 'unknown';
}
