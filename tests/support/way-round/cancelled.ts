import { expect } from 'vitest';

/**
 * Holds that work ends at whichever of its looks it is told to, and that the same work done again is not the worse for it.
 * @param work given what it is to call now and then; each run starts from nothing
 */
export function endsWhereverCancelled(work: (lookUp: () => void) => unknown): void {
  let looks = 0;
  const whole = work(() => {
    looks++;
  });
  expect(looks).toBeGreaterThan(5);
  // early looks are each of a phase of its own; of the many later ones some are tried
  const tried = new Set([
    ...Array(8).keys(),
    ...Array.from({ length: 8 }, (_, i) => Math.floor((i * looks) / 8)),
  ]);
  for (const at of tried) {
    let left = at;
    const stop = () => {
      if (left-- === 0) throw new Error('cancelled');
    };
    if (at < looks) expect(() => work(stop), `look ${at} of ${looks}`).toThrow('cancelled');
  }
  expect(work(() => {})).toEqual(whole);
}
