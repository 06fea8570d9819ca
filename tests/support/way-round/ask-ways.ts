import { type CheckInput, checkDrive } from '../../../geo/check.ts';
import { driveReportSchema } from '../../../geo/report/report.ts';
import type { Tags } from '../../../geo/roads/roads.ts';
import { findWaysRound, type WaysRound } from '../../../geo/wayround/past-bar.ts';
import { COACH_BUILT } from '../coach-built.ts';
import { driveOn, type Step, type TestWay, testMap } from '../drive-on.ts';

/** The ways round of a drive along whole ways of a hand-made map; the report with them keeps its schema. */
export function waysRoundOn(
  ways: readonly TestWay[],
  steps: readonly Step[],
  nodeTags: Readonly<Record<string, Tags>> = {},
  more: Partial<CheckInput> = {},
): WaysRound {
  const map = testMap(ways, nodeTags);
  const check: CheckInput = {
    route: { kind: 'track', name: 'Round', number: 1, segments: [] },
    file: 'round.gpx',
    drive: driveOn(map, steps),
    roads: map.roads,
    card: COACH_BUILT,
    program: 'test',
    made: '2027-01-01T00:00:00Z',
    ...more,
  };
  const report = checkDrive(check);
  const found = findWaysRound({ check, report });
  driveReportSchema.parse({ ...report, ...found });
  return found;
}

/** A road of a hand-made map. */
export function road(id: number, nodes: readonly string[], tags: Tags = {}): TestWay {
  return { id, nodes, tags: { highway: 'residential', surface: 'asphalt', ...tags } };
}
