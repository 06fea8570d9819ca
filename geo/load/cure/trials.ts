/** How many sets may still be tried. */
export interface Trials {
  left: number;
}

/** Counts one. @returns false when no more may be made */
export function spend(trials: Trials): boolean {
  trials.left--;
  return trials.left > 0;
}
