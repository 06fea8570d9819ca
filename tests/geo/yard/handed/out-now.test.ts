import { describe, expect, it } from 'vitest';
import type { HandedBody } from '../../../../geo/library/body/handed.ts';
import type { DriveReport } from '../../../../geo/report/report.ts';
import { changedSince } from '../../../../geo/yard/handed/changed-since.ts';
import { handedFacts } from '../../../../geo/yard/handed/facts.ts';
import { newOrWorse } from '../../../../geo/yard/handed/new-or-worse.ts';
import { numberReplaced, type OutSheet, outNow } from '../../../../geo/yard/handed/out-now.ts';
import { overlapping, sayOverlap } from '../../../../geo/yard/handed/overlaps.ts';
import { gravestOutFirst, sayStanding, standingOf } from '../../../../geo/yard/handed/standing.ts';
import { sha256Of } from '../../../../main/services/files/sha256.ts';
import { handedOver } from '../../../support/hand-over/handed-over.ts';
import { road } from '../../../support/way-round/ask-ways.ts';
import { FAMILY, COACH_BUILT as FAMILYS } from '../../load/family.ts';
import { weighed } from '../../load/load-card.ts';

const NORTH = handedOver([road(1, ['0,0', '5,0'])], [1]);
const LOW = handedOver([road(1, ['0,0', '5,0'], { maxheight: '2.5' })], [1]);
const TODAY = '2027-06-10';

function sheet(number: string, part: Partial<HandedBody> = {}): OutSheet {
  const body: HandedBody = { ...NORTH.facts, number, files: [], ...part };
  return { id: `handed-${number}`, made: `2027-01-0${number.at(-1)}`, body };
}
const numbers = (sheets: readonly OutSheet[]) => sheets.map(({ body }) => body.number);

describe('sheets that are out', () => {
  it('come by their leave day, the coming ones first, those without a day next, those that left last', () => {
    const sheets = [
      sheet('A1', { leaveAt: '2027-06-01T09:00' }),
      sheet('A2'),
      sheet('A3', { leaveAt: '2027-07-01T09:00' }),
      sheet('A4', { leaveAt: '2027-06-10T08:00' }),
      sheet('A5', { leaveAt: '2027-06-05T09:00' }),
    ];
    expect(numbers(outNow(sheets, TODAY))).toEqual(['A4', 'A3', 'A2', 'A5', 'A1']);
  });

  it('end when a newer one takes their place, but for one whose own day is still to come', () => {
    const on = (leaveAt: string, replaces?: string) => ({ leaveAt, ...(replaces && { replaces }) });
    const same = [sheet('A1', on('2027-06-12T09:00')), sheet('A2', on('2027-06-12T10:00', 'A1'))];
    expect(numbers(outNow(same, TODAY))).toEqual(['A2']);
    const other = [sheet('A1', on('2027-06-12T09:00')), sheet('A2', on('2027-06-19T09:00', 'A1'))];
    expect(numbers(outNow(other, TODAY))).toEqual(['A1', 'A2']);
  });

  it('are replaced by a handing-over of the same drive and vehicle alone', () => {
    const sheets = [sheet('A1'), sheet('A2', { replaces: 'A1' }), sheet('A3', { track: 2 })];
    expect(numberReplaced(sheets, NORTH.facts)).toBe('A2');
    expect(numberReplaced(sheets, { ...NORTH.facts, vehicleName: 'Another' })).toBeUndefined();
    expect(numberReplaced(sheets, { ...NORTH.facts, vehicle: 'vehicle-one' })).toBeUndefined();
  });
});

describe('a vehicle', () => {
  const day = (leaveAt: string, homeBy?: string) => ({ leaveAt, ...(homeBy && { plan: { homeBy } }) });
  const out = sheet('A1', day('2027-06-12T09:00', '2027-06-12T17:00'));

  it('that is out on two drives at overlapping hours is told with the other sheet', () => {
    const noon = sheet('A2', { ...day('2027-06-12T12:00'), driveName: 'South' }).body;
    expect(overlapping(noon, [out])).toEqual([out]);
    expect(sayOverlap(noon, [out])).toMatch(
      /is out at the same hours on "North" \(sheet A1, leaves Saturday 12 June 2027, 09:00, due .*17:00\): one vehicle/u,
    );
    expect(
      overlapping({ ...noon, vehicle: 'vehicle-b' }, [sheet('A1', { ...out.body, vehicle: 'vehicle-a' })]),
    ).toEqual([]);
    expect(overlapping({ ...noon, leaveAt: '2027-06-12T18:00' }, [out])).toEqual([]);
    // without a return hour to the end of the drive by its driving times
    const early = { ...noon, leaveAt: '2027-06-12T07:00' };
    expect(overlapping(early, [out])).toEqual([]);
    expect(overlapping({ ...early, arriveAt: '2027-06-12T09:10' }, [out])).toEqual([out]);
    expect(sayOverlap(noon, [])).toBe('');
  });

  it('is due and not back past its return hour, until somebody has told that it is back', () => {
    expect(standingOf(out.body, undefined, '2027-06-12T16:00').kind).toBe('out');
    expect(sayStanding(standingOf(out.body, undefined, '2027-06-12T17:01'))).toBe('due, not back');
    expect(sayStanding(standingOf(out.body, '2027-06-12', '2027-06-12T17:01'))).toBe('back 12 June 2027');
    expect(standingOf(sheet('A2').body, undefined, '2030-01-01T00:00').kind).toBe('out');
  });

  it('that is barred comes first, then one that is due, then as they came', () => {
    const one = (number: string, verdict: 'barred' | 'clear', kind: 'out' | 'due') => ({
      number,
      verdict,
      standing: { kind },
    });
    const listed = [
      one('a', 'clear', 'out'),
      one('b', 'clear', 'due'),
      one('c', 'barred', 'out'),
      one('d', 'clear', 'out'),
    ];
    expect(gravestOutFirst(listed).map(({ number }) => number)).toEqual(['c', 'b', 'a', 'd']);
  });
});

describe('what changed since a check was handed out', () => {
  const { report, route } = NORTH;
  const at = { lat: route.segments[0]!.lat[0]!, lon: route.segments[0]!.lon[0]! };
  const note = { id: 'note-00000001', at, say: 'low' };
  const maps = [
    { source: { sha256: 'b'.repeat(64) }, box: { south: -90, north: 90, west: -180, east: 180 } },
  ];
  const facts = handedFacts(
    { report, route, localNotes: [note], maps },
    { gpx: 'a'.repeat(64), track: 1 },
    sha256Of,
  );
  const standing = {
    card: report.vehicle,
    load: undefined,
    gone: { vehicle: false, drive: false },
    day: undefined as { leaveAt?: string; plan?: Record<string, unknown> } | undefined,
    notes: [note],
    maps,
    program: report.program,
    moment: report.made,
  };

  it('is nothing while all is as it was, in whatever order it is kept', () => {
    expect(changedSince(facts, standing, sha256Of)).toEqual([]);
    const turned = Object.fromEntries(Object.entries(report.vehicle).reverse()) as typeof report.vehicle;
    expect(changedSince(facts, { ...standing, card: turned }, sha256Of)).toEqual([]);
    const { mapKey: _, ...ofNamedFiles } = facts;
    expect(changedSince(ofNamedFiles, { ...standing, maps: [] }, sha256Of)).toEqual([]);
  });

  it('names the map, the card, the notes about the drive, and the program', () => {
    const since = (part: Partial<typeof standing>) => changedSince(facts, { ...standing, ...part }, sha256Of);
    const map = [{ ...maps[0]!, source: { sha256: 'c'.repeat(64) } }];
    expect(since({ maps: map })).toEqual(['map']);
    expect(since({ card: { ...report.vehicle, heightM: 3.5 } })).toEqual(['card']);
    expect(since({ notes: [] })).toEqual(['note']);
    expect(since({ notes: [{ ...note, say: 'lower' }] })).toEqual(['note']);
    expect(since({ notes: [note, { ...note, id: 'note-00000002', at: { lat: 60, lon: 60 } }] })).toEqual([]);
    expect(since({ day: {} })).toEqual([]);
    const timed = { ...facts, leaveAt: '2027-06-12T09:30' };
    expect(changedSince(timed, { ...standing, day: {} }, sha256Of)).toEqual(['day']);
    expect(since({ day: { leaveAt: '2027-06-12T06:00' } })).toEqual(['day']);
    expect(since({ day: { plan: { stops: [], homeBy: '2027-06-12T07:00' } } })).toEqual(['day']);
    expect(since({ program: 'Lanegauge 99' })).toEqual(['program']);
    expect(since({ maps: [] })).toEqual(['map gone']);
    expect(since({ gone: { vehicle: true, drive: true } })).toEqual(['vehicle gone', 'drive gone']);
  });

  it('tells what is new or worse, and nothing that is better', () => {
    const worse = newOrWorse(NORTH.report, LOW.report, 'metric');
    expect(worse).toMatchObject({ ok: true, value: [expect.stringMatching(/Barred height: 0.55 m over/)] });
    expect(newOrWorse(LOW.report, NORTH.report, 'metric')).toEqual({ ok: true, value: [] });
    const { report } = NORTH;
    const taller = { ...report, vehicle: { ...report.vehicle, heightM: 3.25, grossKg: 3300 } };
    expect(newOrWorse(report, taller, 'metric')).toEqual({
      ok: true,
      value: [
        expect.stringMatching(/^The papers handed out say height .* m; the card says 3.25 m now\./),
        expect.stringMatching(/plated weight .* kg; the card says 3300 kg now/),
      ],
    });
    const lower = handedOver([road(1, ['0,0', '5,0'], { maxheight: '2.2' })], [1]);
    expect(newOrWorse(LOW.report, lower.report, 'metric')).toMatchObject({ ok: true, value: { length: 1 } });
  });
});

describe('what is told of a sheet that is out', () => {
  it('is a weight that is over since, a spare that shrank and a level that rose, and not what got better', () => {
    const bridge = (maxheight: string) => handedOver([road(1, ['0,0', '5,0'], { maxheight })], [1]).report;
    const news = (was: DriveReport, now: DriveReport) => {
      const said = newOrWorse(was, now, 'metric');
      return said.ok ? said.value : [said.error.message];
    };
    // the vehicle needs 3.05 m, and 0.15 to spare not to be tight
    const [tight, tighter, barred] = [bridge('3.15'), bridge('3.1'), bridge('2.5')];
    expect(news(tight, tight)).toEqual([]);
    expect(news(tight, barred).join()).toContain('Changed.');
    expect(news(barred, tight)).toEqual([]);
    expect(news(tighter, tight)).toEqual([]);
    expect(news(tight, tighter)).toHaveLength(1);
    const loaded = { ...tight, load: weighed(FAMILY, FAMILYS) };
    expect(news(tight, loaded)[0]).toMatch(/^As loaded: OVER: gross by 26 kg/);
    expect(news(loaded, loaded)).toEqual([]);
    expect(news(tight, { ...tight, load: weighed([], FAMILYS) })).toEqual([]);
  });

  it('comes by the day, and by its own name where two leave at the same time', () => {
    const at = { leaveAt: '2027-06-12T09:00' };
    expect(numbers(outNow([sheet('A2', at), sheet('A1', at)], TODAY))).toEqual(['A1', 'A2']);
    expect(numbers(outNow([sheet('A2'), sheet('A1')], TODAY))).toEqual(['A1', 'A2']);
  });

  it('replaces the one of the first track where none is named', () => {
    const { track: _, ...first } = NORTH.facts;
    expect(numberReplaced([sheet('A1', { track: 1 })], first)).toBe('A1');
    expect(numberReplaced([{ ...sheet('A2'), made: '2027-02-01' }, sheet('A1')], NORTH.facts)).toBe('A2');
  });
});

describe('a vehicle whose sheets say less', () => {
  it('is out twice by its name where a sheet names no card of the library, and never without a leave time', () => {
    const one = sheet('A1', { leaveAt: '2027-06-12T09:00' });
    const { vehicle: _v, leaveAt: _l, ...bare } = one.body;
    const same = { ...bare, number: 'A2', leaveAt: '2027-06-12T09:00' } as HandedBody;
    expect(overlapping(same, [one])).toEqual([one]);
    expect(overlapping({ ...same, vehicleName: 'Another' }, [one])).toEqual([]);
    expect(overlapping(bare as HandedBody, [one])).toEqual([]);
    expect(overlapping(same, [sheet('A3', { leaveAt: undefined } as never)])).toEqual([]);
    expect(sayOverlap(same, [one])).toContain('(sheet A1, leaves Saturday 12 June 2027, 09:00)');
  });

  it('longer by a rack than its papers say is told, and so is a load that is another since', () => {
    const rack = { lengthM: 0.8, widthM: 2, fitted: true };
    const { report } = NORTH;
    expect(newOrWorse(report, { ...report, vehicle: { ...report.vehicle, rack } }, 'metric')).toMatchObject({
      ok: true,
      value: [expect.stringMatching(/^The papers handed out say length /u)],
    });
    const { route } = NORTH;
    const items = [{ name: 'Tent', massKg: 20, xM: 2 }];
    const kept = handedFacts(
      { report, route, load: items },
      { gpx: 'a'.repeat(64), track: 1, loadKept: true } as never,
      sha256Of,
    );
    const now = (load: typeof items | undefined) =>
      changedSince(
        kept,
        {
          card: report.vehicle,
          load,
          gone: { vehicle: false, drive: false },
          day: undefined,
          notes: [],
          maps: [],
          program: report.program,
          moment: report.made,
        },
        sha256Of,
      );
    expect(now(items)).toEqual([]);
    expect(now(undefined)).toEqual(['load']);
    expect(now([{ name: 'Tent', massKg: 25, xM: 2 }])).toEqual(['load']);
  });
});
