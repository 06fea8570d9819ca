import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { type CheckInput, checkDrive } from '../../../geo/check.ts';
import { readGpx } from '../../../geo/drive/gpx/read-gpx.ts';
import type { Route } from '../../../geo/drive/gpx/route.ts';
import { followRoads } from '../../../geo/drive/match/follow-roads.ts';
import { stripOf } from '../../../geo/drive/strip/strip-of.ts';
import { readLeaving } from '../../../geo/drive/times/leaving.ts';
import type { HandOverDocument } from '../../../geo/handover/document/document.ts';
import { makeDocument } from '../../../geo/handover/document/make-document.ts';
import { clusterMarks } from '../../../geo/handover/draw/cluster-marks.ts';
import type { DrawnDrive } from '../../../geo/handover/draw/drive-map.ts';
import { phonePage } from '../../../geo/handover/phone/phone-page.ts';
import { sheetPage } from '../../../geo/handover/sheet/sheet-page.ts';
import type { DriveReport } from '../../../geo/report/report.ts';
import type { Roads } from '../../../geo/roads/roads.ts';
import { findWaysRound } from '../../../geo/wayround/past-bar.ts';
import { lastTurnOffs } from '../../../geo/wayround/turn-off.ts';
import { openMap } from '../../../main/services/map/open-map.ts';
import { SAMPLES } from '../../sample-routes/read-district.ts';
import { COACH_BUILT, FAMILY } from '../load/family.ts';
import { weighed } from '../load/load-card.ts';

let roads: Roads;
let route: Route;
let drawn: DrawnDrive;
let report: DriveReport;
let document: HandOverDocument;

const FIRM = { heading: 'Hill & Dale Motorhomes', telephone: '01632 960123' };

/** The sample's barred drive, on a Saturday morning, by a family that is 26 kg too heavy. */
beforeAll(async () => {
  const read = await openMap([resolve(SAMPLES, 'district.osm.pbf')], undefined);
  const gpx = readGpx(readFileSync(resolve(SAMPLES, 'drives/barred.gpx'), 'utf8'));
  if (!read.ok || !gpx.ok) throw new Error('the sample cannot be read');
  roads = read.value;
  const [first] = gpx.value.routes;
  if (first === undefined) throw new Error('the sample holds no drive');
  route = { ...first, name: '' };
  const drive = followRoads(route, roads);
  const leaving = readLeaving('2027-06-12T09:30', drive, roads, 'GB');
  if (!leaving.ok) throw new Error(leaving.error.message);
  const [lat, lon] = [route.segments[0]?.lat[400] ?? 0, route.segments[0]?.lon[400] ?? 0];
  const check: CheckInput = {
    route,
    file: 'barred.gpx',
    drive,
    roads,
    card: COACH_BUILT,
    load: weighed(FAMILY, COACH_BUILT),
    leaving: leaving.value,
    country: 'GB',
    day: {
      stops: [{ name: 'The mill', lat, lon, stayMin: 30, services: ['fuel', 'fresh water'] }],
      homeBy: '2027-06-12T18:00',
    },
    program: 'test',
    made: '2027-06-12T09:30:00Z',
  };
  const checked = checkDrive(check);
  const turnOffs = lastTurnOffs({ check, report: checked });
  const { waysRound, noWayRound } = findWaysRound({ check, report: checked });
  report = { ...checked, waysRound: [...waysRound], noWayRound: [...noWayRound] };
  drawn = { drive, roads, strip: stripOf(drive, roads) };
  const sheet = { number: 'K7QM-4XPD', replaces: 'A2BC-3DEF' };
  document = makeDocument({ report, route, turnOffs, sheet, firm: FIRM, before: ['Roof lights shut'] });
});

const pages = (of: HandOverDocument) => {
  const sheet = sheetPage(of, drawn, { faces: {}, paper: 'A4' });
  return { sheet: sheet.page, toPrint: sheet.toPrint, phone: phonePage(of, drawn, {}) };
};
/** What a reader sees: without marks, styles and escapes. */
const seen = (html: string) =>
  html
    .replace(/<style>[\s\S]*?<\/style>/g, '')
    .replace(/<[^>]*>/g, ' ')
    .replaceAll('&amp;', '&')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&gt;', '>')
    .replaceAll('&lt;', '<');

describe('a whole drive handed over', () => {
  it('is called by its file where it has no name, and without either says so', () => {
    expect(document.drive.name).toBe('barred.gpx');
    const nameless = { ...report, route: { ...report.route, file: '' } };
    const told = {
      report: nameless,
      route,
      turnOffs: new Map(),
      sheet: document.sheet,
      firm: FIRM,
      before: [],
    };
    expect(makeDocument(told).drive.name).toBe('Drive without a name');
  });

  it('half off the map tells no hour of arrival; with little of it off the map what that was counted as', () => {
    const timesWith = (offMapM: number) =>
      makeDocument({
        report: { ...report, match: { ...report.match, offMapM } },
        route,
        turnOffs: new Map(),
        sheet: document.sheet,
        firm: FIRM,
        before: [],
      }).drive.times;
    expect(timesWith(0)).toMatch(/arrive \d\d:\d\d; .*without breaks, and 30 min at stops/);
    expect(timesWith(0)).not.toContain('off the map');
    expect(timesWith(report.route.lengthM / 2)).toMatch(
      /^Leave [^;]+\. Time of arrival unknown: .* of it is off the map\.$/,
    );
    expect(timesWith(report.route.lengthM * 0.15)).toMatch(
      /arrive \d\d:\d\d; .*off the map taken at 20 km\/h/,
    );
  });

  it('says at its head that the vehicle is too heavy as loaded, and stops counting that as unchecked', () => {
    expect(document.overload).toMatch(/^OVER: gross by 26 kg/);
    for (const page of Object.values(pages(document)))
      expect(seen(page)).toContain('As loaded: OVER: gross by 26 kg');
    expect(document.notChecked.join(' ')).not.toContain('judged by the plates alone');
    expect(document.notChecked.join(' ')).not.toContain('no leave time is given');
  });

  it('of a barred drive says at the phone page’s head which way round there is, or who finds one', () => {
    const told = { route, turnOffs: new Map(), sheet: document.sheet, firm: FIRM, before: [] };
    expect(seen(pages(document).phone)).toMatch(
      /Do not drive this as planned: .*? Way round: off the drive at .*? by [A-Z].*? Nothing mapped bars the whole drive like that\./s,
    );
    const { waysRound: _, noWayRound: __, ...plain } = report;
    expect(makeDocument({ ...told, report: plain }).verdict.wayOut).toContain('No way round was looked for.');
    expect(makeDocument({ ...told, report: { ...report, waysRound: [] } }).verdict.wayOut).toContain(
      'says why',
    );
    expect(makeDocument({ ...told, report: { ...report, verdict: 'care' } }).verdict.wayOut).toBeUndefined();
  });

  it('says when it leaves and arrives, with its stay, and what is on the day', () => {
    expect(document.drive.times).toMatch(
      /^Leave Saturday 12 June 2027, 09:30, arrive \d\d:\d\d; .*, and 30 min at stops\./,
    );
    const [stop] = document.day?.stops ?? [];
    expect(stop?.times).toMatch(/^there \d\d:\d\d, leave \d\d:\d\d, at the latest \d\d:\d\d$/);
    expect(stop?.note).toMatch(/, .* and |, [a-z]|and [a-z]/);
    expect(document.day?.due.some(({ at }) => /^\d\d:\d\d$/.test(at))).toBe(true);
    for (const page of Object.values(pages(document))) expect(seen(page)).toContain('The mill');
  });

  it('tells the firm, the number of the sheet, the one it replaces and whom to ring', () => {
    const { sheet, phone } = pages(document);
    expect(seen(sheet)).toContain('Hill & Dale Motorhomes');
    expect(seen(sheet)).toContain('Sheet K7QM-4XPD, replaces A2BC-3DEF');
    expect(seen(phone)).toContain('Hill & Dale Motorhomes');
    expect(document.contradicts).toContain('ring 01632 960123');
    expect(sheet).toContain('"Sheet K7QM-4XPD · "');
  });

  it('goes without a number, a heading and a telephone where the firm set none', () => {
    const bare = { ...document, sheet: { ...document.sheet, number: '', heading: '', telephone: '' } };
    const { sheet, phone } = pages(bare);
    expect(seen(sheet)).toContain('Drive sheet');
    for (const page of [sheet, phone]) {
      expect(seen(page)).not.toContain('Ring');
      expect(seen(page)).not.toMatch(/Sheet [A-Z0-9]{4}-/);
    }
    expect(sheet).not.toContain('"Sheet ');
  });

  it('names each place with its clock and road, its figure or that none is mapped, and a way round where one was found', () => {
    expect(document.places.length).toBeGreaterThan(2);
    for (const { clock, finding } of document.places)
      expect(clock === undefined).toBe(finding.passesAt === undefined);
    const sums = document.places.map(({ sum }) => sum ?? 'the place alone');
    expect(sums.some((sum) => sum.startsWith('limit '))).toBe(true);
    expect(sums).toContain('the place alone');
    for (const { wayRound, finding } of document.places) {
      const found = report.waysRound?.some(({ findingIds }) => findingIds.includes(finding.id)) === true;
      expect(wayRound?.includes('It is chosen in the program') === true).toBe(found);
    }
    const texts = Object.values(pages(document)).map(seen);
    for (const { wayRound } of document.places)
      for (const text of texts) if (wayRound !== undefined) expect(text).toContain(wayRound);
  });

  it('has a reason where there is no way round, and no advice where there is none to give', () => {
    const [place] = document.places;
    const why = 'No way round was found.';
    const told = place && { ...place, advice: '', wayRound: undefined };
    const without = { ...document, places: told ? [told] : [] };
    expect(seen(pages(without).sheet)).not.toContain('Way round:');
    const id = place?.finding.id ?? '';
    const reasoned = makeDocument({
      report: { ...report, waysRound: [], noWayRound: [{ findingIds: [id], kind: 'cut off', why }] },
      route,
      turnOffs: new Map(),
      sheet: document.sheet,
      firm: FIRM,
      before: [],
    });
    expect(reasoned.places[0]?.wayRound).toBe('Way round: no way round was found.');
  });

  it('is drawn with the names of its towns, none on a finding’s dot, and with kilometres and miles', () => {
    const { sheet } = pages(document);
    const { towns } = drawn.strip;
    expect(towns.length).toBeGreaterThan(1);
    for (const { name } of towns.slice(0, 3)) expect(seen(sheet)).toContain(name);
    const column = sheet.match(/<text class="strip-km"[^>]*>[\d.]+ km/g) ?? [];
    expect(column.length).toBeGreaterThan(3);
    expect(sheet).toContain('class="map-road-');
  });

  it('shows its tightest turns, five at the most, each to scale', () => {
    expect(document.turns.length).toBeLessThanOrEqual(5);
    for (const { label, keep } of document.turns) {
      expect(keep).toMatch(/^Keep .* free to the (left|right)/);
      expect(seen(pages(document).sheet)).toContain(label);
    }
  });
});

describe('numbered labels on the map', () => {
  const box = { widthMm: 100, heightMm: 60 };
  const at = (number: number, x: number) => ({ number, level: 'care', x, y: 30 }) as const;
  const texts = (spots: Parameters<typeof clusterMarks>[0]) =>
    clusterMarks(spots, [], box).map(({ text }) => text);

  it('are one where places lie on one another: a run, a pair, or the first and how many more', () => {
    expect(texts([at(3, 20), at(7, 60)])).toEqual(['3', '7']);
    expect(texts([at(3, 20), at(4, 20.5), at(5, 21)])).toEqual(['3–5']);
    expect(texts([at(3, 20), at(5, 21)])).toEqual(['3, 5']);
    expect(texts([at(3, 20), at(5, 21), at(9, 20)])).toEqual(['3 +2']);
  });
});
