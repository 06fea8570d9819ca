import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { type CheckInput, checkDrive } from '../../geo/check.ts';
import { readGpx } from '../../geo/drive/gpx/read-gpx.ts';
import type { Route } from '../../geo/drive/gpx/route.ts';
import { followRoads } from '../../geo/drive/match/follow-roads.ts';
import type { DriveReport } from '../../geo/report/report.ts';
import type { Roads } from '../../geo/roads/roads.ts';
import { readVehicle } from '../../geo/vehicle/read-vehicle.ts';
import { findWaysRound } from '../../geo/wayround/past-bar.ts';
import { openMap } from '../../main/services/map/open-map.ts';
import { shownInSwing } from '../support/shown-in-swing.ts';
import { SAMPLES } from './read-district.ts';

let roads: Roads;
beforeAll(async () => {
  const read = await openMap([resolve(SAMPLES, 'district.osm.pbf')], undefined);
  if (!read.ok) throw new Error(read.error.message);
  roads = read.value;
});

function drive(id: string): Route {
  const read = readGpx(readFileSync(resolve(SAMPLES, 'drives', `${id}.gpx`), 'utf8'));
  if (!read.ok) throw new Error(read.error.message);
  const [route, ...others] = read.value.routes;
  if (route === undefined || others.length > 0)
    throw new Error(`${id}.gpx holds ${read.value.routes.length} drives`);
  return route;
}

function check(id: string, vehicle: string): DriveReport {
  return checkDrive(inputOf(id, vehicle));
}

function inputOf(id: string, vehicle: string): CheckInput {
  const file = `${vehicle}.json`;
  const card = readVehicle(readFileSync(resolve(SAMPLES, 'vehicles', file), 'utf8'), file);
  if (!card.ok) throw new Error(card.error.message);
  const route = drive(id);
  return {
    route,
    file: `${id}.gpx`,
    drive: followRoads(route, roads),
    roads,
    card: card.value,
    country: 'GB',
    program: 'test',
    made: '2027-06-12T09:30:00Z',
  };
}

/** Metres from each position to the nearest road. */
function farness(id: string): number[] {
  return drive(id).segments.flatMap(({ lat, lon }) =>
    Array.from(lat, (_, i) =>
      Math.min(100, ...roads.index.near(lat[i]!, lon[i]!, 60).map((near) => near.distanceM)),
    ),
  );
}

const ALL = ['clear', 'barred', 'everything', 'sparse', 'recorded'];

describe('The sample drives', () => {
  it.each(ALL)('%s keeps to the roads of the district', (id) => {
    // a receiver's noise reaches farther than a planner's
    expect(Math.max(...farness(id))).toBeLessThan(id === 'recorded' ? 25 : 12);
  });

  it.each(ALL)('%s is followed along mapped roads all the way', (id) => {
    const { match } = check(id, 'panel-van-6.0');
    expect(match.offMapM).toBe(0);
    expect(match.drivenM).toBeGreaterThan(5000);
  });

  it('a turn opened in Swing has there every figure of its row', () => {
    const report = check('everything', 'coach-built-7.4');
    const turns = report.findings.filter(({ turn }) => turn !== undefined);
    expect(turns.length).toBeGreaterThan(10);
    for (const finding of turns) {
      const shown = shownInSwing(finding, report.vehicle);
      expect(shown.turn).toBe(finding.turn);
      expect(shown.missing, `${finding.say} | ${shown.told}`).toEqual([]);
    }
  });

  it('the clear drive lets the panel van through without a doubt', () => {
    const report = check('clear', 'panel-van-6.0');
    expect(report.findings.filter(({ level }) => level !== 'care')).toEqual([]);
    expect(report.verdict).toBe('clear');
  });

  it('its corners are wide enough for the 7.4 m coach-built too', () => {
    expect(check('clear', 'coach-built-7.4').findings.filter(({ turn }) => turn !== undefined)).toEqual([]);
  });

  it('the barred drive stops the 7.4 m coach-built at a low arch, at a weak bridge and between posts', () => {
    const report = check('barred', 'coach-built-7.4');
    const barred = report.findings.filter(({ level }) => level === 'barred');
    expect(barred.map(({ subject }) => subject).sort()).toEqual(['height', 'mass', 'width']);
    expect(barred.every(({ spare }) => (spare ?? 0) < 0)).toBe(true);
  });

  it('the sparse drive is a route of far-apart points, with parts that are guessed', () => {
    expect(drive('sparse').kind).toBe('route');
    expect(check('sparse', 'panel-van-6.0').match.guessedM).toBeGreaterThan(1000);
  });

  it('the recorded drive has a time at every fix, a receiver’s noise and one break', () => {
    const { kind, segments } = drive('recorded');
    expect(kind).toBe('track');
    expect(segments.length).toBe(2);
    for (const { timeMs } of segments) {
      expect(timeMs.every((time) => Number.isFinite(time))).toBe(true);
      expect(timeMs.every((time, i) => i === 0 || time > timeMs[i - 1]!)).toBe(true);
    }
    const off = farness('recorded').sort((a, b) => a - b);
    expect(off[Math.floor(off.length / 2)]).toBeGreaterThan(1);
    expect(off[Math.floor(off.length / 2)]).toBeLessThan(6);
  });

  it('the drive with everything meets most subjects', () => {
    const report = check('everything', 'coach-built-7.4');
    const subjects = new Set(report.findings.map(({ subject }) => subject));
    for (const subject of ['height', 'width', 'mass', 'access', 'barrier', 'turn', 'swing'] as const)
      expect(subjects, subject).toContain(subject);
  });

  it('and on it, its five worst corners are shown: the mini-roundabout’s tail swing among them', () => {
    const report = check('everything', 'coach-built-7.4');
    const corners = report.findings.filter(({ turn }) => turn !== undefined);
    const shown = corners.filter(({ folded }) => !folded);
    expect(shown.length).toBe(5);
    expect(corners.length).toBeGreaterThan(10);
    expect(shown.filter(({ subject }) => subject === 'swing').map(({ turn }) => turn?.kind)).toEqual([
      'mini-roundabout',
    ]);
    const about = (report.rules ?? []).map((rule) => rule.about);
    expect(about).toEqual(expect.arrayContaining(['widths of roads at corners', 'kerbs at corners']));
  });
});

describe('Ways round the drive that is barred three ways', () => {
  it('pass each bar near by, so that the drive is kept, and all of them at once by the quickest road', () => {
    const input = inputOf('barred', 'coach-built-7.4');
    const report = checkDrive(input);
    const barred = report.findings.filter(({ level }) => level === 'barred');
    const { waysRound, noWayRound } = findWaysRound({ check: input, report });
    expect(noWayRound).toEqual([]);
    for (const { id } of barred) {
      const ways = waysRound.filter(({ findingIds }) => findingIds.includes(id));
      expect(ways.length, id).toBeGreaterThan(1);
      expect(ways.length, id).toBeLessThan(4);
      // of a drive of 17 km
      expect(Math.min(...ways.map(({ fromM, toM }) => toM - fromM)), id).toBeLessThan(3500);
    }
    const atOnce = waysRound.find(({ findingIds }) => findingIds.length === barred.length);
    expect(atOnce?.extraS).toBe(Math.min(...waysRound.map(({ extraS }) => extraS)));
  });
});
