import { describe, expect, it } from 'vitest';
import { checkDrive } from '../../../geo/check.ts';
import type { DriveReport } from '../../../geo/report/report.ts';
import type { Tags } from '../../../geo/roads/roads.ts';
import { PLAIN } from '../../../main/cli/paint.ts';
import { printReport } from '../../../main/cli/print-report.ts';
import { COACHBUILT } from '../../support/ask.ts';
import { across, mapWithSurroundings, road } from '../../support/ask-around.ts';
import { driveOn, type TestWay } from '../../support/drive-on.ts';
import { checkNoted, millLane, note, railwayOver } from '../../support/notes/noted-drive.ts';

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

const lines = (of: DriveReport) => printReport(of, 400, PLAIN).split('\n');

it('a place that a note of the firm’s own settles has a line with its place, its road and the figure', () => {
  const text = lines(checkNoted(millLane({}, railwayOver(250)), [note({ heightM: 3.4 })]));
  expect(text[0]).toMatch(/1 settled by the firm’s own note\.$/);
  const at = text.indexOf('1 settled by the firm’s own note:');
  expect(text[at + 1]).toBe(`  0.25 km / 0.16 mi, Mill Lane: height 3.40 m (11'1") (measured)`);
});

describe('the first lines of a report on the terminal', () => {
  it('say that nothing mapped stops it where there are but bridges over a main road, and count them', () => {
    const text = lines(report({}, [across(7, 2, BRIDGE), across(8, 3, BRIDGE)]));
    expect(text.slice(0, 2)).toEqual([
      'NOTHING MAPPED STOPS IT: 2 bridges without a height: read the signs.',
      '',
    ]);
    expect(text[text.indexOf('Bridges without a height (read the signs):') + 1]).toMatch(
      / at 0\.2 km .*, 0\.3 km /,
    );
  });

  it('say the worst that is shown, and count beside it what is shown', () => {
    expect(lines(report({ maxheight: 'low' }, [across(7, 2, BRIDGE)]))[0]).toMatch(
      /^UNKNOWN: Nothing mapped bars it, but at one place nothing says .* 1 unknown\.$/,
    );
    expect(lines(report({ maxheight: '2.5' }))[0]).toMatch(/^BARRED: Do not drive this as planned/);
  });

  it('say no time of a drive that is half off the map, and of little of it what it was counted as', () => {
    const with_ = (offMapM: number) => {
      const plain = report({});
      return lines({
        ...plain,
        route: { ...plain.route, lengthM: 20_000 },
        match: { ...plain.match, drivenM: 20_000 - offMapM, offMapM },
      }).join(' ');
    };
    expect(with_(10_000)).toMatch(/Time +time unknown: 10\.0 km .* of it is off the map; no leave time/);
    expect(with_(2_000)).toMatch(/Time +\d+ min driving, with 2\.0 km .* off the map taken at 20 km\/h/);
    expect(with_(500)).not.toContain('taken at');
  });

  it('say of a map of another place that nothing is checked, and no verdict on the drive', () => {
    const elsewhere = { ...report({}), match: { drivenM: 0, offMapM: 2000, guessedM: 0 } };
    const of: DriveReport = {
      ...elsewhere,
      verdict: 'unknown',
      route: { ...elsewhere.route, lengthM: 2000 },
      map: { ...elsewhere.map, sources: [{ name: 'other.osm.pbf', sha256: '' }] },
    };
    expect(lines(of)[0]).toMatch(
      /^UNKNOWN: The map has no roads under this drive, so nothing on it is checked\./,
    );
    const bare = lines({ ...of, map: { ...of.map, sources: [], roads: 0 } });
    expect(bare[0]).toMatch(/^UNKNOWN: Nothing on the shelf has roads under this drive/);
    expect(bare).toContain('Map none: nothing on the shelf lies near this drive');
  });
});
