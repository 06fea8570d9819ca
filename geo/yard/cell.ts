import { z } from 'zod';
import { given } from '../given.ts';
import { findingSchema } from '../report/finding.ts';
import { isSettled } from '../report/is-settled.ts';
import { countByLevel, gravestFirst, VERDICTS } from '../report/level.ts';
import type { DriveReport } from '../report/report.ts';
import { spareUnit, tightestOf } from '../report/tightest.ts';
import { placeOfFinding, type StoppingPlace, stoppingPlaceSchema } from './stopping-place.ts';

const count = z.int().min(0);

/** One drive with one vehicle, as the grid shows it. */
export const cellSchema = z.strictObject({
  verdict: z.enum(VERDICTS),
  /** metres along the roads followed, which sparse points are far from; a cell kept by an earlier program has none */
  lengthM: z.number().optional(),
  /** what is folded is left out */
  counts: z.strictObject({ barred: count, tight: count, unknown: count, care: count }),
  /** places that the firm's own figures settle: in none of the counts; absent where there is none */
  settled: count.optional(),
  /** of the worst level that has a spare, the smallest against its limit */
  tightest: z
    .strictObject({
      /** id of the finding */
      finding: z.string(),
      subject: findingSchema.shape.subject,
      spare: z.number(),
      unit: z.string(),
    })
    .optional(),
  /** what stops the vehicle there, in driving order */
  stops: z.array(stoppingPlaceSchema),
  /** where along the drive it is more than a care, the gravest first: for a drawing of a hand's width */
  trouble: z.array(
    z.strictObject({
      level: z.enum(['barred', 'tight', 'unknown']),
      /** metres along it */ fromM: z.number(),
    }),
  ),
});
export type Cell = z.infer<typeof cellSchema>;

/** More marks than these lie on each other on any such drawing. */
const TROUBLE_MOST = 40;

/** What the grid shows of a check. */
export function cellOf({
  verdict,
  findings,
  route,
}: Pick<DriveReport, 'verdict' | 'findings'> & {
  readonly route?: Pick<DriveReport['route'], 'lengthM'>;
}): Cell {
  const least = tightestOf(findings);
  const tightest = least && {
    finding: least.id,
    subject: least.subject,
    spare: least.spare,
    unit: spareUnit(least),
  };
  const stops: StoppingPlace[] = findings
    .filter(({ level, folded }) => level === 'barred' && folded !== true)
    .map(placeOfFinding);
  const trouble = gravestFirst(findings)
    .flatMap(({ level, fromM, folded }) => (level === 'care' || folded === true ? [] : [{ level, fromM }]))
    .slice(0, TROUBLE_MOST);
  return {
    verdict,
    ...given({ lengthM: route?.lengthM }),
    counts: { ...countByLevel(findings) },
    ...given({ settled: findings.filter(isSettled).length || undefined, tightest }),
    stops,
    trouble,
  };
}
