import { describe, expect, it } from 'vitest';
import { readGpx } from '../../../geo/drive/gpx/read-gpx.ts';
import { driveGpx } from '../../../geo/export/drive-gpx.ts';
import { findingsGeoJson } from '../../../geo/export/findings-geojson.ts';
import { handedOver } from '../../support/hand-over/handed-over.ts';
import { road } from '../../support/way-round/ask-ways.ts';

const { report, route, document, drawn } = handedOver(
  [
    road(1, ['0,0', '5,0']),
    road(2, ['5,0', '10,0'], { maxheight: '2.95', name: 'A & <B>' }),
    road(3, ['5,0', '5,4', '20,4', '20,0'], { name: 'Long Lane' }),
    road(4, ['10,0', '20,0'], { maxweight: '3' }),
  ],
  [1, 2, 4],
);
const places = new Map(
  document.places.flatMap(({ finding, turnOff }) =>
    turnOff === undefined ? [] : [[finding.id, turnOff] as const],
  ),
);

function written(): string {
  const gpx = driveGpx(report, route, places);
  if (!gpx.ok) throw new Error(gpx.error.message);
  return gpx.value;
}

/** Order of wptType and gpxType by the GPX 1.1 schema (topografix.com/GPX/1/1/gpx.xsd); from a copy of it. */
const WPT_ORDER = [
  'ele',
  'time',
  'magvar',
  'geoidheight',
  'name',
  'cmt',
  'desc',
  'src',
  'link',
  'sym',
  'type',
  'fix',
];

describe('the drive as GPX with its waypoints', () => {
  it('names each place in ten characters, and the last place to turn off before it', () => {
    const names = [...written().matchAll(/<wpt [^>]*><name>([^<]*)</g)].map(([, name]) => name);
    expect(names).toContain('01 LOW 2.9');
    expect(names).toContain('01 OFF NOW');
    expect(names.indexOf('01 OFF NOW')).toBeLessThan(names.indexOf('01 LOW 2.9'));
    expect(names.some((name) => /^\d\d WT 3t$/.test(name ?? ''))).toBe(true);
    for (const name of names) expect(name?.length).toBeLessThanOrEqual(10);
  });

  it('holds every stop of the day that the drive meets, its tanks told, its name no longer than the others', () => {
    const stop = (name: string, lon: number) => ({ name, lat: 50, lon, stayMin: 20 });
    const planned = handedOver([road(1, ['0,0', '20,0'])], [1], {
      day: {
        stops: [
          { ...stop('Emptying place <north>', 7.01), services: ['cassette', 'LPG'] },
          stop('Mill', 7.005),
          { ...stop('Elsewhere', 9), lat: 52 },
        ],
      },
    });
    const gpx = driveGpx(planned.report, planned.route);
    if (!gpx.ok) throw new Error(gpx.error.message);
    const stops = [
      ...gpx.value.matchAll(/<wpt lat="([^"]*)" lon="([^"]*)"><name>(S\d[^<]*)<\/name>(.*?)<\/wpt>/g),
    ];
    expect(stops.map(([, lat, lon, name]) => [lat, lon, name])).toEqual([
      ['50.0000000', '7.0050000', 'S1 Mill'],
      ['50.0000000', '7.0100000', 'S2 Emptyin'],
    ]);
    expect(stops[0]?.[4]).toContain('<type>Stop</type>');
    expect(stops[1]?.[4]).toContain('<type>Stop: Empty the cassette and fill LPG</type>');
    expect(stops[1]?.[4]).toContain('Emptying place &lt;north&gt;');
    expect(gpx.value.lastIndexOf('<wpt')).toBeLessThan(gpx.value.indexOf('<trk>'));
  });

  it('keeps to the order of the schema: way points before the track, their children in turn', () => {
    const text = written();
    expect(text.lastIndexOf('<wpt')).toBeLessThan(text.indexOf('<trk>'));
    for (const [, inner = ''] of text.matchAll(/<wpt [^>]*>(.*?)<\/wpt>/g)) {
      const order = [...inner.matchAll(/<([a-z]+)>/g)].map(([, tag]) => WPT_ORDER.indexOf(tag ?? ''));
      expect(order).not.toContain(-1);
      expect(order).toEqual([...order].sort((a, b) => a - b));
    }
    for (const [, lat, lon] of text.matchAll(/lat="([^"]*)" lon="([^"]*)"/g)) {
      expect(lat).toMatch(/^-?\d{1,2}\.\d{7}$/);
      expect(lon).toMatch(/^-?\d{1,3}\.\d{7}$/);
    }
  });

  it('read again is the same drive, its waypoints no part of it', () => {
    const read = readGpx(written());
    if (!read.ok) throw new Error(read.error.message);
    expect(read.value.routes).toHaveLength(1);
    const [back] = read.value.routes;
    expect(back?.name).toBe(route.name);
    for (const axis of ['lat', 'lon'] as const)
      for (const [i, degrees] of (route.segments[0]?.[axis] ?? []).entries())
        expect(back?.segments[0]?.[axis][i]).toBeCloseTo(degrees, 7);
  });

  it('bears the numbers that the GeoJSON bears, longitude first and seven decimals at most', () => {
    const { features } = findingsGeoJson(report, drawn.drive, drawn.roads);
    const numbered = features.filter(({ properties }) => properties?.['number'] !== undefined);
    expect(numbered.map(({ properties }) => properties?.['number'])).toEqual(
      document.places.map(({ number }) => number),
    );
    const flat = JSON.stringify(features.map(({ geometry }) => geometry));
    expect(flat).toMatch(/\[7\.\d{1,7},50(\.\d{1,7})?\]/);
    expect(flat).not.toMatch(/\.\d{8}/);
  });
});
