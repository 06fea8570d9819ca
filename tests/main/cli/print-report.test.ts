import { describe, expect, it } from 'vitest';
import { checkDrive } from '../../../geo/check.ts';
import type { DriveReport } from '../../../geo/report/report.ts';
import type { Tags } from '../../../geo/roads/roads.ts';
import { paintFor } from '../../../main/cli/paint.ts';
import { printReport } from '../../../main/cli/print-report.ts';
import { COACHBUILT } from '../../support/ask.ts';
import { across, mapWithSurroundings, road } from '../../support/ask-around.ts';
import { driveOn, type TestWay } from '../../support/drive-on.ts';

const BRIDGE = { highway: 'unclassified', bridge: 'yes', layer: '1' };

function report(tags: Tags, others: readonly TestWay[] = []): DriveReport {
  const map = mapWithSurroundings([road({ highway: 'primary', ...tags }), ...others]);
  return checkDrive({
    route: { name: 'East', kind: 'track', number: 1, segments: [] },
    file: 'east.gpx',
    drive: driveOn(map, [1]),
    roads: map.roads,
    card: COACHBUILT,
    program: 'test',
    made: '2027-01-01T00:00:00Z',
  });
}

const headline = (of: DriveReport) => printReport(of, 400, paintFor(false)).split('\n')[0];

describe('the first line of a report on the terminal', () => {
  it('says plainly when nothing but bridges over a main road decides', () => {
    expect(headline(report({}, [across(7, 2, BRIDGE), across(8, 3, BRIDGE)]))).toBe(
      'UNKNOWN: nothing mapped bars it; what the map cannot prove is slight, nothing but 2 bridges over the road without a mapped height: mind the signs there. 2 unknown.',
    );
  });

  it('does not where a doubt is shown, or a limit bars', () => {
    expect(headline(report({ maxheight: 'low' }, [across(7, 2, BRIDGE)]))).toMatch(
      /^UNKNOWN: nothing mapped bars it, but the map cannot prove it: look before you drive it\./,
    );
    expect(headline(report({ maxheight: '2.5' }))).toMatch(/^BARRED: do not drive this as planned\./);
  });
});
