import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readGpx } from '../../geo/drive/gpx/read-gpx.ts';
import { cumulativeM } from '../../geo/drive/gpx/route-length.ts';
import { readRouteFile } from '../../main/services/route/read-route-file.ts';

// Source: the sample file in the registry package gpxparser 3.0.8 (MIT), and what its own test expects of it.
const sample = join(dirname(createRequire(import.meta.url).resolve('gpxparser')), '..', 'test', 'test.xml');

describe('the sample of the package gpxparser', () => {
  it('has one track and one route named Track, each of 205 positions, and two waypoints', async () => {
    const read = await readRouteFile(sample);
    if (!read.ok) throw new Error(read.error.message);
    const { routes, waypoints, notes } = read.value;
    expect(waypoints).toBe(2);
    expect(notes).toEqual([]);
    expect(
      routes.map(({ kind, name, segments }) => [kind, name, segments.map(({ lat }) => lat.length)]),
    ).toEqual([
      ['track', 'Track', [205]],
      ['route', 'Track', [205]],
    ]);
  });

  it('is 6,955.702 m long on the package’s sphere of 6,371,000 m', () => {
    const read = readGpx(readFileSync(sample, 'utf8'));
    for (const route of read.ok ? read.value.routes : [])
      for (const segment of route.segments) {
        const lengthM = cumulativeM(segment).at(-1) ?? 0;
        expect((lengthM * 6_371_000) / 6_371_008.8).toBeCloseTo(6955.702190644043, 6);
      }
  });
});

// Source: the GPX 1.1 schema, http://www.topografix.com/GPX/1/1/gpx.xsd, from memory: latitudeType -90 to 90,
// longitudeType -180 to 180 (the upper end itself is not in the schema, but writers use it), both xsd:decimal;
// a track is trkseg*, a segment trkpt*; time is xsd:dateTime in UTC.
describe('the GPX 1.1 schema', () => {
  const file = (points: string) =>
    `<gpx xmlns="http://www.topografix.com/GPX/1/1" version="1.1" creator="c"><trk><trkseg>${points}</trkseg></trk></gpx>`;
  const point = (lat: string, lon: string) => `<trkpt lat="${lat}" lon="${lon}"/>`;

  it.each([
    ['90', '180'],
    ['-90', '-180'],
    ['-0.0', '+0'],
    ['.5', '5.'],
  ])('allows %s, %s', (lat, lon) => {
    expect(readGpx(file(point(lat, lon) + point(lat, lon))).ok).toBe(true);
  });

  it.each([
    ['90.0000001', '0'],
    ['0', '180.0000001'],
    ['0', '-180.0000001'],
    ['', '0'],
    ['INF', '0'],
    ['1 000', '0'],
  ])('forbids %s, %s', (lat, lon) => {
    expect(readGpx(file(point('0', '0') + point('0', '1') + point(lat, lon))).ok).toBe(false);
  });
});
