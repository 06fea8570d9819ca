import type { DayPlan } from '../../day/plan.ts';
import type { Route } from '../../drive/gpx/route.ts';
import { given } from '../../given.ts';
import type { HandedFacts } from '../../library/body/handed.ts';
import type { Sha256 } from '../../library/record-name.ts';
import type { LoadList } from '../../load/list/load-list.ts';
import type { LocalNote } from '../../notes/note.ts';
import type { DriveReport } from '../../report/report.ts';
import { boxOfDiscs } from '../../roads/box.ts';
import { discsAlong } from '../../roads/discs.ts';
import { cut } from '../../units/text.ts';
import { hashOf, notePrints, notesAbout } from '../fingerprints.ts';
import { mapKey } from '../map-key.ts';

/** Where drive, vehicle and load of a handing-over come from. */
export interface HandedOf {
  /** SHA-256 of the GPX file, and the 1-based place in it */
  readonly gpx: string;
  readonly track: number;
  /** ids of the library's, where they stand in it */
  readonly drive?: string;
  readonly vehicle?: string;
  readonly loadKept?: boolean;
  readonly replaces?: string;
}

/** A check that is handed out, and what it was asked with. */
export interface HandedCheck {
  readonly report: DriveReport;
  readonly route: Pick<Route, 'segments'>;
  readonly localNotes?: readonly LocalNote[] | undefined;
  readonly load?: LoadList['items'] | undefined;
  readonly leaveAt?: string | undefined;
  readonly margins?: { readonly heightM: number; readonly physicalWidthM: number } | undefined;
  readonly country?: string | undefined;
  readonly day?: DayPlan | undefined;
  /** the maps of the shelf, where it was checked on that */
  readonly maps?: Parameters<typeof mapKey>[0] | undefined;
}

const NAME_MOST = 200;

/** What is kept of a check that is handed out, besides its files: by what it is known when anything of it has changed. */
export function handedFacts(check: HandedCheck, of: HandedOf, sha256: Sha256): HandedFacts {
  const { report, leaveAt, margins, country, day } = check;
  const box = boxOfDiscs(discsAlong(check.route));
  const notes = box && notesAbout(check.localNotes ?? [], box, leaveAt ?? report.made);
  return {
    program: report.program,
    driveName: cut(report.route.name || report.route.file, NAME_MOST),
    vehicleName: cut(report.vehicle.name, NAME_MOST),
    verdict: report.verdict,
    card: hashOf(report.vehicle, sha256),
    notes: notePrints(notes ?? [], sha256),
    maps: report.map.sources.map((source) => given({ ...source })),
    report: sha256(reportText(report)),
    ...of,
    ...given({ leaveAt, margins, country, box, plan: day }),
    ...given({ arriveAt: report.timetable?.arriveAt?.slice(0, 16) }),
    ...given({ load: check.load && hashOf(check.load, sha256), items: check.load && [...check.load] }),
    ...given({ mapKey: check.maps && box && mapKey(check.maps, box) }),
  };
}

/** The report as its file has it. */
export function reportText(report: DriveReport): string {
  return `${JSON.stringify(report, null, 2)}\n`;
}
