import { given } from '../../../../geo/given.ts';
import { compareReports, isSetBack } from '../../../../geo/library/differences/compare-reports.ts';
import type { Difference } from '../../../../geo/library/differences/difference.ts';
import { mapDay } from '../../../../geo/report/map-age.ts';
import type { DriveReport } from '../../../../geo/report/report.ts';
import type { Units } from '../../../../geo/units/in-units.ts';
import { messageOf } from '../../files/system-error.ts';
import { keepReport, keptReport } from './kept-report.ts';
import type { JudgedCell, JudgeSetup, KeptAt } from './messages.ts';

/**
 * What is otherwise than what was seen, where something was that can be compared with; why it was not kept. Where an
 * older map took a newer one's place, what the newer one told is not lost, seen or not.
 */
export async function compareAndKeep(
  { seen, newest }: KeptAt,
  now: DriveReport,
  { units }: Pick<JudgeSetup, 'units'>,
): Promise<Pick<JudgedCell, 'differences' | 'unkept'>> {
  const was = await keptReport(seen);
  const since = was && differencesOf(was, now, units);
  const differences = since && [...since, ...lostSince(since, await keptReport(newest), now, units)];
  const told = given({ differences });
  try {
    await keepReport(differences === undefined ? seen : newest, now);
    return told;
  } catch (error) {
    // a full disk takes no answer away
    return { ...told, unkept: messageOf(error) };
  }
}

function differencesOf(was: DriveReport, now: DriveReport, units: Units): readonly Difference[] | undefined {
  const compared = compareReports({ was, now, units, otherCard: true, otherLeave: true });
  return compared.ok ? compared.value.differences : undefined;
}

/** What the last check told that an older map does not have, and `told` does not say. */
function lostSince(
  told: readonly Difference[],
  last: DriveReport | undefined,
  now: DriveReport,
  units: Units,
): readonly Difference[] {
  const [lastDay, nowDay] = [last && mapDay(last.map.sources), mapDay(now.map.sources)];
  // data of no known date may be older too
  const isNewer = lastDay !== undefined && nowDay !== undefined && !isSetBack(lastDay, nowDay);
  if (!last || isNewer) return [];
  const gone =
    differencesOf(last, now, units)?.filter(({ kind }) => kind === 'gone' || kind === 'changed') ?? [];
  return gone.filter(
    ({ kind, finding }) => !told.some((each) => each.kind === kind && each.finding === finding),
  );
}
