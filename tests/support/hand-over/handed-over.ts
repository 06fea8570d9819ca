import { type CheckInput, checkDrive } from '../../../geo/check.ts';
import type { Route } from '../../../geo/drive/gpx/route.ts';
import { lineBetween } from '../../../geo/drive/line-between.ts';
import { stripOf } from '../../../geo/drive/strip/strip-of.ts';
import { BEFORE_SETTING_OFF } from '../../../geo/handover/document/before-setting-off.ts';
import type { HandOverDocument } from '../../../geo/handover/document/document.ts';
import { makeDocument } from '../../../geo/handover/document/make-document.ts';
import type { DrawnDrive } from '../../../geo/handover/draw/drive-map.ts';
import type { HandedFacts } from '../../../geo/library/body/handed.ts';
import type { DriveReport } from '../../../geo/report/report.ts';
import { lastTurnOffs, type TurnOff } from '../../../geo/wayround/turn-off.ts';
import { handedFacts } from '../../../geo/yard/handed/facts.ts';
import { sha256Of } from '../../../main/services/files/sha256.ts';
import { COACH_BUILT } from '../coach-built.ts';
import { driveOn, type Step, type TestWay, testMap } from '../drive-on.ts';

/** A drive along whole ways of a hand-made map, checked and made ready to be handed over. */
export interface Handed {
  readonly report: DriveReport;
  readonly route: Route;
  readonly drawn: DrawnDrive;
  readonly turnOffs: ReadonlyMap<string, TurnOff | undefined>;
  readonly document: HandOverDocument;
  readonly facts: HandedFacts;
}

export function handedOver(
  ways: readonly TestWay[],
  steps: readonly Step[],
  {
    name = 'North',
    telephone = '',
    ...more
  }: { readonly name?: string; readonly telephone?: string } & Partial<CheckInput> = {},
): Handed {
  const { roads, wayIndex } = testMap(ways);
  const drive = driveOn({ roads, wayIndex }, steps);
  const line = lineBetween(drive, roads, 0, drive.lengthM);
  const route: Route = {
    kind: 'track',
    name,
    number: 1,
    segments: [
      {
        lat: Float64Array.from(line, ([, lat]) => lat),
        lon: Float64Array.from(line, ([lon]) => lon),
        timeMs: new Float64Array(line.length).fill(Number.NaN),
      },
    ],
  };
  const check: CheckInput = {
    route,
    file: 'drive.gpx',
    drive,
    roads,
    card: COACH_BUILT,
    program: 'Lanegauge test',
    made: '2027-01-01T00:00:00Z',
    ...more,
  };
  const report = checkDrive(check);
  const turnOffs = lastTurnOffs({ check, report });
  const document = makeDocument({
    report,
    route,
    turnOffs,
    sheet: { number: 'K7QM-4XPD' },
    firm: { heading: '', telephone },
    before: BEFORE_SETTING_OFF,
  });
  const facts = handedFacts({ report, route }, { gpx: 'a'.repeat(64), track: 1 }, sha256Of);
  return { report, route, drawn: { drive, roads, strip: stripOf(drive, roads) }, turnOffs, document, facts };
}
