import { stripOf } from '../../../geo/drive/strip/strip-of.ts';
import { type DueEvent, dayIcs } from '../../../geo/export/day-ics.ts';
import { driveGpx, type TurnOffTold } from '../../../geo/export/drive-gpx.ts';
import { findingsCsv } from '../../../geo/export/findings-csv.ts';
import { findingsGeoJson } from '../../../geo/export/findings-geojson.ts';
import { given } from '../../../geo/given.ts';
import { visorCards } from '../../../geo/handover/card/visor-cards.ts';
import { BEFORE_SETTING_OFF } from '../../../geo/handover/document/before-setting-off.ts';
import { calendarNote } from '../../../geo/handover/document/calendar-note.ts';
import type { HandOverDocument } from '../../../geo/handover/document/document.ts';
import { type HandOverInput, makeDocument } from '../../../geo/handover/document/make-document.ts';
import { phonePage } from '../../../geo/handover/phone/phone-page.ts';
import { sheetPage } from '../../../geo/handover/sheet/sheet-page.ts';
import { sheetNumberOf } from '../../../geo/handover/sheet-number.ts';
import type { HandedFacts } from '../../../geo/library/body/handed.ts';
import type { DriveReport } from '../../../geo/report/report.ts';
import { sayKeepsPoints } from '../../../geo/report/say-guessed.ts';
import { ok, type Result } from '../../../geo/result.ts';
import type { TurnOff } from '../../../geo/wayround/turn-off.ts';
import { hashOf } from '../../../geo/yard/fingerprints.ts';
import { reportText } from '../../../geo/yard/handed/facts.ts';
import { NO_FIRM } from '../../contract/hand-over/no-firm.ts';
import type { CheckOutcome } from '../check-drive.ts';
import { sha256Of } from '../files/sha256.ts';
import { readFaces } from './faces.ts';

/** What a handing-over is made from; what is left out is the program's own, or empty. */
export interface ToHandOver extends Pick<CheckOutcome, 'report' | 'route' | 'drive' | 'roads'> {
  /** by finding id, as `lastTurnOffs` tells them */
  readonly turnOffs: ReadonlyMap<string, TurnOff | undefined>;
  readonly firm?: HandOverInput['firm'];
  /** null: the program's own list */
  readonly before?: readonly string[] | null;
  /** what is kept of it: the sheet's number is made of that */
  readonly facts: HandedFacts;
}

export interface HandedOver {
  /** the sheet's number */
  readonly number: string;
  readonly facts: HandedFacts;
  /** text by file name */
  readonly files: Readonly<Record<string, string>>;
  /** the drive sheet for the paper of the drive's country, as a printer is to be given it */
  readonly toPrint: string;
  /** what whoever hands it over should know: a sentence each */
  readonly say: readonly string[];
}

/** Where printers hold Letter. */
const LETTER_COUNTRIES: ReadonlySet<string> = new Set(['US', 'CA', 'MX']);

/** Everything the driver takes along from one check, as texts. Writes nothing. */
export async function handOver(asked: ToHandOver): Promise<Result<HandedOver>> {
  const { report, route, drive, roads, turnOffs, facts } = asked;
  const number = sheetNumberOf(hashOf(facts, sha256Of));
  const document = makeDocument({
    report,
    route,
    turnOffs,
    sheet: { number, ...given({ replaces: facts.replaces }) },
    firm: asked.firm ?? NO_FIRM,
    before: asked.before ?? BEFORE_SETTING_OFF,
  });
  const told = turnOffsTold(document);
  const gpx = driveGpx(report, route, told);
  if (!gpx.ok) return gpx;
  const faces = await readFaces();
  const drawn = { drive, roads, strip: stripOf(drive, roads, report.country[0]) };
  const letter = report.country.some((code) => LETTER_COUNTRIES.has(code));
  const ics = dayIcs({
    // a reminder shows little more than this
    drive:
      report.verdict === 'barred' ? `${document.drive.name} (do not drive as planned)` : document.drive.name,
    due: dueOf(report),
    made: report.made,
    uid: number,
    program: report.program,
    note: calendarNote(document, number),
  });
  const sheet = sheetPage(document, drawn, { faces, paper: letter ? 'letter' : 'A4' });
  return ok({
    number,
    facts,
    files: {
      'sheet.html': sheet.page,
      'phone.html': phonePage(document, drawn, faces),
      'visor-card.html': visorCards([report.vehicle], { faces, made: report.made, sheet: number }),
      'drive.gpx': gpx.value,
      'findings.geojson': `${JSON.stringify(findingsGeoJson(report, drive, roads), null, 2)}\n`,
      'findings.csv': findingsCsv(report, told),
      'report.json': reportText(report),
      ...given({ 'day.ics': ics }),
    },
    toPrint: sheet.toPrint,
    say: [sayKeepsPoints(report)].filter((say) => say !== undefined),
  });
}

function turnOffsTold({ places }: HandOverDocument): Map<string, TurnOffTold> {
  return new Map(places.flatMap(({ finding, turnOff }) => (turnOff ? [[finding.id, turnOff]] : [])));
}

/** The drive was judged at its leave time: leaving is due then, and what the day asks after that. */
function dueOf({ timetable, day }: DriveReport): DueEvent[] {
  const leaveAt = timetable?.leaveAt;
  const later = (day?.due ?? []).flatMap(({ by, say }) => (by === undefined ? [] : [{ what: say, at: by }]));
  return [...(leaveAt === undefined ? [] : [{ what: 'Leave', at: leaveAt }]), ...later];
}
