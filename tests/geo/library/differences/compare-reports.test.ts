import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareReports } from '../../../../geo/library/differences/compare-reports.ts';
import type { Comparison } from '../../../../geo/library/differences/difference.ts';
import { uncovered } from '../../../../geo/library/differences/item.ts';
import {
  sayChanged,
  sayClosed,
  sayDays,
  sayOffTheMap,
  sayRoadChanged,
} from '../../../../geo/library/differences/say-difference.ts';
import type { Finding } from '../../../../geo/report/report.ts';
import type { Roads } from '../../../../geo/roads/roads.ts';
import { checkNoted, millLane, note, railwayOver } from '../../../support/notes/noted-drive.ts';
import { checkOn, type District, district, roadsOf } from './district.ts';
import { dropTag, EDITS, setTags } from './edits.ts';

const OLD = checkOn(roadsOf(district()));

function isOn(roads: Roads) {
  const ids = { way: new Set(roads.ways.id), node: new Set(roads.nodes.id), relation: new Set<number>() };
  return ({ type, id }: { type: 'way' | 'node' | 'relation'; id: number }) => ids[type].has(id);
}

/** What the comparison says after the map was changed so. */
function whenChanged(edit: (map: District) => void): Comparison {
  const map = district();
  edit(map);
  const roads = roadsOf(map);
  const compared = compareReports({
    was: OLD,
    now: checkOn(roads, '2027-08-01'),
    units: 'metric',
    isMapped: isOn(roads),
  });
  if (!compared.ok) throw new Error(compared.error.message);
  return compared.value;
}

const named = ({ differences }: Comparison) =>
  differences.map(({ kind, was, now }) => `${kind}: ${(now ?? was)?.subject ?? 'road'}`);

it('the first map has something to say on six of its seven roads', () => {
  expect(OLD.findings.map(({ subject, kind, level }) => `${level} ${subject}, ${kind}`)).toEqual([
    'tight height, limit',
    'barred mass, limit',
    'unknown barrier, gate',
    'unknown height, bridge above',
    'unknown access, closed',
    'unknown access, private',
  ]);
});

describe('a map changed in one small way', () => {
  it.each(EDITS)('%s', (_, edit, expected) => {
    expect(named(whenChanged(edit)).sort()).toEqual([...expected].sort());
  });
});

describe('comparing two checks', () => {
  it('of one map finds nothing, and names both days', () => {
    expect(whenChanged(() => {})).toEqual({
      differences: [],
      wasDay: '2027-05-01',
      nowDay: '2027-08-01',
      say: 'Map data of 1 August 2027, held against that of 1 May 2027.',
    });
  });

  it('says so where the data called newer is the older, or has no date', () => {
    const compare = (dataDate: string) => {
      const compared = compareReports({
        was: OLD,
        now: checkOn(roadsOf(district()), dataDate),
        units: 'metric',
      });
      return compared.ok && compared.value;
    };
    expect(compare('2026-01-01')).toMatchObject({ say: expect.stringContaining('holds the older data') });
    expect(compare('soon')).not.toHaveProperty('nowDay');
    expect(compare('soon')).toMatchObject({ say: expect.stringContaining('an unknown day') });
  });

  it('says in plain words what was and what is, and where', () => {
    const say = (edit: (map: District) => void) => whenChanged(edit).differences.map((one) => one.say);
    expect(say(setTags(2, { maxheight: '2.9' }))).toEqual([
      'Changed. Barred height: 0.20 m over, Mill Lane, 1.0 km. Before: tight, mapped as 3.2; now: barred, mapped as 2.9.',
    ]);
    expect(say(dropTag(2, 'maxheight'))).toEqual([
      'No longer on the map. Tight height: 0.10 m spare, Mill Lane, 1.0 km.',
    ]);
    expect(say(setTags(4, { highway: 'unclassified' }))).toEqual([
      'From 3.0 km for 1.0 km the drive runs on Cooper Road (a minor road); before on Cooper Road (a local road).',
    ]);
    expect(
      say((map) => {
        map.ways = map.ways.filter(({ id }) => id !== 3);
      }),
    ).toEqual([
      'From 2.0 km for 1.0 km the map has no road now; before it had, with 1 finding there that may still hold.',
    ]);
  });

  it('calls what the firm measured its own note, not mapped, and what goes with the note no change of the map', () => {
    const road = millLane({}, railwayOver(250));
    const [open, settled] = [checkNoted(road, []), checkNoted(road, [note({ heightM: 3.4 })])];
    const compare = (was: typeof open, now: typeof open) => {
      const compared = compareReports({ was, now, units: 'metric' });
      return compared.ok ? compared.value.differences : [];
    };
    expect(compare(open, settled)).toMatchObject([
      { kind: 'changed', say: expect.stringMatching(/^Settled by the firm’s own note, open before\. /) },
    ]);
    const low = checkNoted(millLane(), [note({ heightM: 2.9 })]);
    const none = checkNoted(millLane(), []);
    expect(compare(none, low)).toMatchObject([
      { kind: 'new', say: expect.stringMatching(/^By the firm’s own note, not there before\. /) },
    ]);
    expect(compare(low, none)).toMatchObject([
      { kind: 'gone', say: expect.stringMatching(/^The firm’s own note no longer says so/) },
    ]);
  });

  it('tells what lies on a road that the older map did not have', () => {
    const narrow = district();
    narrow.ways = narrow.ways.filter(({ id }) => ![5, 6, 7, 24, 25, 26, 40].includes(id));
    const compared = compareReports({ was: checkOn(roadsOf(narrow)), now: OLD, units: 'metric' });
    expect(compared.ok && named(compared.value)).toEqual([
      'now mapped: map',
      'now mapped: height',
      'now mapped: access',
      'now mapped: access',
    ]);
  });

  it('says that a limit which only a newer map has may stand all the same', () => {
    const older = district();
    dropTag(2, 'maxheight')(older);
    const compared = compareReports({
      was: OLD,
      now: checkOn(roadsOf(older), '2018-01-01'),
      units: 'metric',
    });
    expect(compared.ok && compared.value.differences.map(({ say }) => say)).toEqual([
      'The map on the shelf is older than before and does not have this; it may well be there. Tight height: 0.10 m spare, Mill Lane, 1.0 km.',
    ]);
  });

  it('leaves out what has little weight in both', () => {
    const folded = (report: typeof OLD): typeof OLD => ({
      ...report,
      findings: report.findings.map((finding) => ({ ...finding, folded: true as const })),
    });
    const empty = { ...OLD, findings: [] };
    const compare = (was: typeof OLD, now: typeof OLD) => {
      const compared = compareReports({ was, now, units: 'metric' });
      return compared.ok && named(compared.value);
    };
    expect(compare(folded(OLD), empty)).toEqual([]);
    expect(compare(empty, folded(OLD))).toEqual([]);
    expect(compare(folded(OLD), OLD)).toHaveLength(6);
  });

  it('is refused for two vehicles, two leave times or two drives', () => {
    const refused = (now: typeof OLD) => {
      const compared = compareReports({ was: OLD, now, units: 'metric' });
      return compared.ok ? undefined : compared.error.message;
    };
    expect(refused({ ...OLD, vehicle: { ...OLD.vehicle, heightM: 2.7 } })).toMatch(
      /different vehicle cards/u,
    );
    const later = { ...OLD, leaveAt: '2027-06-12T09:00' };
    expect(refused(later)).toMatch(/different leave times/u);
    expect(compareReports({ was: OLD, now: later, units: 'metric', otherLeave: true }).ok).toBe(true);
    expect(refused({ ...OLD, route: { ...OLD.route, positions: 3 } })).toMatch(/different drives/u);
  });

  it('any of the harmless edits together are harmless', () => {
    const harmless = EDITS.filter(([, , expected]) => expected.length === 0).map(([, edit]) => edit);
    expect(harmless.length).toBeGreaterThan(15);
    fc.assert(
      fc.property(fc.subarray(harmless, { minLength: 2, maxLength: 5 }), (edits) => {
        const told = whenChanged((map) => {
          // an edit may take a way for granted that one before it renumbered
          for (const edit of edits.toSorted((a, b) => harmless.indexOf(a) - harmless.indexOf(b)))
            try {
              edit(map);
            } catch {
              return;
            }
        });
        expect(told.differences.map(({ say }) => say)).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });
});

describe('a difference in words', () => {
  const finding: Finding = {
    id: 'x',
    level: 'tight',
    subject: 'height',
    kind: 'limit',
    fromM: 0,
    toM: 100,
    at: { lat: 0, lon: 0 },
    osm: [],
    tags: {},
    say: '',
    advice: '',
  };
  const road = (part: object) =>
    ({ way: 1, forward: true, class: 'primary', ...part }) as unknown as Parameters<typeof sayRoadChanged>[1];

  it('says what stood there and stands there, by the sign, the tags or the subject alone', () => {
    const limit = { value: 3.2, unit: 'm', asMapped: '3.2' } as const;
    expect(sayChanged(finding, { ...finding, limit }, 'metric')).toMatch(
      /Before: tight, .*; now: tight, mapped as 3\.2\.$/,
    );
    expect(
      sayChanged({ ...finding, tags: { maxheight: 'low' } }, { ...finding, note: 'n', limit }, 'metric'),
    ).toMatch(/Before: tight, mapped as maxheight=low; now: tight, by the firm’s own note 3\.2\.$/);
  });

  it('says how what was open was settled', () => {
    expect(sayClosed(finding, { ...finding, note: 'n' }, 'metric')).toMatch(
      /^Settled by the firm’s own note, open before\./,
    );
    expect(sayClosed(finding, finding, 'metric')).toMatch(/^Mapped now, open before\./);
    expect(sayClosed(finding, undefined, 'metric')).toMatch(
      /The map tells it now, and by itself it does not stop the vehicle\.$/,
    );
    expect(sayClosed({ ...finding, subject: 'map', kind: 'incomplete' }, undefined, 'metric')).toMatch(
      /The map is whole there now; what it has there is told by itself\.$/,
    );
  });

  it('names roads by their class where they have no name, slip roads and unknown kinds too', () => {
    const span = { fromM: 1000, toM: 1500 };
    expect(sayRoadChanged(span, road({ ref: 'A5' }), road({ class: 'trunk_link' }), 'metric')).toBe(
      'From 1.0 km for 500 m the drive runs on a trunk road, its slip road; before on A5 (a main road).',
    );
    expect(
      sayRoadChanged(span, road({ name: 'Mill Lane', class: 'boulevard' }), road({}), 'metric'),
    ).toContain('Mill Lane (a way mapped as boulevard)');
    expect(sayOffTheMap(span, 0, 'metric')).toBe(
      'From 1.0 km for 500 m the map has no road now; before it had.',
    );
    expect(sayOffTheMap(span, 2, 'metric')).toContain('with 2 findings there that may still hold.');
  });

  it('says when the map called newer is the older one, and which day is not known', () => {
    expect(sayDays('2026-05-01', '2026-04-01')).toContain('holds the older data');
    expect(sayDays(undefined, '2026-04-01')).toBe(
      'Map data of 1 April 2026, held against that of an unknown day.',
    );
  });

  it('leaves over what no other span holds', () => {
    const span = { fromM: 10, toM: 100 };
    expect(uncovered(span, [])).toEqual([span]);
    expect(
      uncovered(span, [
        { fromM: 60, toM: 70 },
        { fromM: 0, toM: 20 },
        { fromM: 15, toM: 30 },
        { fromM: 100, toM: 120 },
      ]),
    ).toEqual([
      { fromM: 30, toM: 60 },
      { fromM: 70, toM: 100 },
    ]);
    expect(uncovered(span, [{ fromM: 0, toM: 200 }])).toEqual([]);
  });
});
