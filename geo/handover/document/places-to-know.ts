import { clockText } from '../../clock/print-times.ts';
import { decidingOf } from '../../report/deciding.ts';
import { driverAdvice } from '../../report/driver-advice.ts';
import type { Finding } from '../../report/finding.ts';
import { LEVEL_WORD } from '../../report/level.ts';
import { namePlace } from '../../report/name-place.ts';
import { numberedFindings } from '../../report/numbered.ts';
import type { DriveReport } from '../../report/report.ts';
import { sayExtra } from '../../report/ways/say-way.ts';
import { lengthIn } from '../../units/in-units.ts';
import { printKm, printMiles } from '../../units/print.ts';
import { clip, lowerFirst, plainLine } from '../../units/text.ts';
import type { TurnOff } from '../../wayround/turn-off.ts';
import type { PlaceToKnow } from './document.ts';
import { sayTurnOff } from './say-turn-off.ts';

/** The findings that are shown, in driving order, each with its number and its last place to turn off. */
export function placesToKnow(
  { findings, timetable, waysRound = [], noWayRound = [] }: DriveReport,
  turnOffs: ReadonlyMap<string, TurnOff | undefined>,
): PlaceToKnow[] {
  const stops: { readonly label: string; readonly fromM: number }[] = [];
  return numberedFindings(findings).map(({ number, label, finding }) => {
    const name = namePlace(finding, 'both');
    const turnOff = turnOffs.get(finding.id);
    const told = turnOffs.has(finding.id)
      ? { say: sayTurnOff(turnOff, { label, fromM: finding.fromM }, stops), place: turnOff }
      : undefined;
    if (told !== undefined) stops.push({ label, fromM: finding.fromM });
    return {
      number,
      label,
      finding,
      title: `${LEVEL_WORD[finding.level]}: ${name.subject}`,
      km: printKm(finding.fromM),
      miles: printMiles(finding.fromM),
      clock: finding.passesAt && clockText(finding.passesAt, timetable?.leaveAt),
      road: finding.road === undefined ? undefined : clip(finding.road),
      sum: sayDeciding(finding),
      say: plainLine(finding.say),
      advice: plainLine(driverAdvice(finding)),
      wayRound: sayWayRound(finding.id, waysRound, noWayRound),
      turnOff: told,
    };
  });
}

function sayWayRound(
  id: string,
  ways: NonNullable<DriveReport['waysRound']>,
  none: NonNullable<DriveReport['noWayRound']>,
): string | undefined {
  const way = ways.find(({ findingIds }) => findingIds.includes(id));
  if (way !== undefined)
    return `Way round: ${sayExtra(way, 'both')}. It is chosen in the program, before setting off.`;
  const why = none.find(({ findingIds }) => findingIds.includes(id))?.why;
  return why === undefined ? undefined : `Way round: ${lowerFirst(why)}`;
}

/** limit − vehicle = spare, or what else decides; undefined where the place alone does. */
function sayDeciding(finding: Finding): string | undefined {
  const decides = decidingOf(finding, 'both');
  switch (decides.kind) {
    case 'sum': {
      const { limit, vehicle, spare, what } = decides.sum;
      return `limit ${limit} − ${vehicle} = ${spare} (${what})`;
    }
    case 'text':
      return `mapped: ${clip(decides.text, 60)}`;
    case 'reach':
      return `for ${lengthIn('both', decides.lengthM)}`;
    case 'no figure':
      return 'no figure mapped';
    case 'place':
      return undefined;
  }
}
