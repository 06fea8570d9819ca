import { given } from '../../../../geo/given.ts';
import { compareReports } from '../../../../geo/library/differences/compare-reports.ts';
import type { DriveReport } from '../../../../geo/report/report.ts';
import { messageOf } from '../../files/system-error.ts';
import { keepReport, keptReport } from './kept-report.ts';
import type { JudgedCell, JudgeSetup, KeptAt } from './messages.ts';

/** What is otherwise than what was seen, where something was that can be compared with; why it was not kept. */
export async function compareAndKeep(
  { seen, newest }: KeptAt,
  now: DriveReport,
  { units }: Pick<JudgeSetup, 'units'>,
): Promise<Pick<JudgedCell, 'differences' | 'unkept'>> {
  const was = await keptReport(seen);
  const compared = was && compareReports({ was, now, units, otherCard: true, otherLeave: true });
  const differences = compared?.ok ? compared.value.differences : undefined;
  const told = given({ differences });
  try {
    await keepReport(differences === undefined ? seen : newest, now);
    return told;
  } catch (error) {
    // a full disk takes no answer away
    return { ...told, unkept: messageOf(error) };
  }
}
