/**
 * How much a finding matters; what each one means stands in `LEVEL_MEANS`. `barred` must be true: practically no false
 * alarm. `tight` may turn out harmless. Silence in place of `unknown` would be the worst fault.
 */
export const LEVELS = ['barred', 'tight', 'unknown', 'care'] as const;
export type Level = (typeof LEVELS)[number];

/** What a whole drive comes to: the worst level among findings that are not folded, or `clear`. */
export const VERDICTS = [...LEVELS, 'clear'] as const;
export type Verdict = (typeof VERDICTS)[number];

/** The levels as they are shown. */
export const LEVEL_WORD: Readonly<Record<Verdict, string>> = {
  barred: 'Barred',
  tight: 'Tight',
  unknown: 'Unknown',
  care: 'Take care',
  clear: 'Nothing mapped stops it',
};

/** The one definition of the levels in prose, in the reader's words. */
export const LEVEL_MEANS: Readonly<Record<Verdict, string>> = {
  barred:
    'The vehicle is over a mapped limit that holds for it there and then, or it is not allowed to go there. Drive another way.',
  tight:
    'It may stop this vehicle, or it fits only by measuring or manoeuvring: within the limit by less than the room to spare asked for, soft ground, a ford too deep to wade, a corner where it has to back up.',
  unknown:
    'Something there could stop the vehicle, and nothing says whether it does: the map gives no figure, gives one that cannot be read, or has no road there; or it hangs on a leave time or a permission not given.',
  care: 'The vehicle gets through. Drive it with care: steep, narrow, a hump, trees over the road, the tail swinging out.',
  clear: 'Nothing mapped stops this vehicle on this drive. That is not a promise: read the signs.',
};

/** 0 for the gravest. */
export function rankOf(level: Level): number {
  return LEVELS.indexOf(level);
}

/** The gravest first; equals stay in the order given. */
export function gravestFirst<T extends { readonly level: Level }>(findings: readonly T[]): T[] {
  return [...findings].sort((a, b) => rankOf(a.level) - rankOf(b.level));
}

/** How many findings each level has; folded ones are counted in their own line. */
export function countByLevel(
  findings: readonly { readonly level: Level; readonly folded?: boolean | undefined }[],
): Readonly<Record<Level, number>> {
  const counts = { barred: 0, tight: 0, unknown: 0, care: 0 };
  for (const { level, folded } of findings) if (folded !== true) counts[level]++;
  return counts;
}

/** How many a level's chip says: `3`, with folded ones `3, 1 minor` or, where there are no others, `1 minor`. */
export function sayCount(
  findings: readonly { readonly level: Level; readonly folded?: boolean | undefined }[],
  level: Level,
): string {
  const of = findings.filter((finding) => finding.level === level);
  const minor = of.filter(({ folded }) => folded === true).length;
  const plain = of.length - minor;
  return minor === 0 ? `${plain}` : `${plain === 0 ? '' : `${plain}, `}${minor} minor`;
}
