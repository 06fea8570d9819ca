import { describe, expect, it } from 'vitest';
import { chooseRoute } from '../../../../geo/drive/gpx/choose-route.ts';
import { readGpx } from '../../../../geo/drive/gpx/read-gpx.ts';
import { gpx, TWO_POINTS, track } from './gpx-text.ts';

function choose(content: string, wanted?: string) {
  const read = readGpx(gpx(content));
  if (!read.ok) throw new Error(read.error.message);
  return chooseRoute(read.value, wanted);
}

function chosen(content: string, wanted?: string): string {
  const result = choose(content, wanted);
  if (!result.ok) return result.error.message;
  const { route, note } = result.value;
  return `${route.kind} ${route.number} ${route.name} | ${note ?? ''}`;
}

const ROUTE = '<rte><name>Way</name><rtept lat="1" lon="2"/><rtept lat="1" lon="2.1"/></rte>';
const SHORT = track('<trkpt lat="1" lon="1"/>', 'Short');
const MANY = ROUTE + SHORT + track() + track(TWO_POINTS, 'Hill') + track(TWO_POINTS, '2');

describe('which drive of a file is taken', () => {
  it('is the only one, without a word', () => {
    expect(chosen(track())).toBe('track 1 Lake | ');
  });

  it('is the first track with two positions, before any route, and the user is told', () => {
    expect(chosen(MANY)).toBe(
      'track 2 Lake | Taken: track 2 "Lake", the first of 4 in the file; choose another by name or number.',
    );
    expect(chosen(ROUTE + SHORT)).toBe('route 1 Way | ');
  });

  it('is the one named, in any letter case', () => {
    expect(chosen(MANY, 'Hill')).toBe('track 3 Hill | Taken: track 3 "Hill".');
    expect(chosen(MANY, ' hill ')).toBe('track 3 Hill | Taken: track 3 "Hill".');
    expect(chosen(MANY, 'Way')).toBe('route 1 Way | Taken: route 1 "Way".');
  });

  it('is the one numbered, tracks before routes; a name wins over a number', () => {
    expect(chosen(MANY, '3')).toBe('track 3 Hill | Taken: track 3 "Hill".');
    expect(chosen(MANY, '5')).toBe('route 1 Way | Taken: route 1 "Way".');
    expect(chosen(MANY, '2')).toBe('track 4 2 | Taken: track 4 "2".');
  });

  it('says when several share the name', () => {
    expect(chosen(track() + track(), 'Lake')).toBe(
      'track 1 Lake | Taken: track 1 "Lake"; 2 share that name.',
    );
  });

  it('is refused with the list when there is no such name or number', () => {
    for (const wanted of ['Dale', '0', '6', '99999999999999999999', '-1', '', '1.5', '__proto__'])
      expect(chosen(MANY, wanted)).toContain(
        'choose from 1: track 1 "Short" (nothing to drive), 2: track 2 "Lake", 3: track 3 "Hill", 4: track 4 "2", 5: route 1 "Way".',
      );
  });

  it('is refused when it has nothing to drive', () => {
    expect(chosen(MANY, 'Short')).toContain('Track 1 "Short" has no two positions in a row');
  });

  it('is listed briefly out of a hundred', () => {
    expect(chosen(track().repeat(100), 'x')).toContain('12: track 12 "Lake" and 88 more.');
  });
});

describe('what is said about the drive taken', () => {
  it('names gaps that are not driven', () => {
    const gap = `<trk><trkseg>${TWO_POINTS}</trkseg><trkseg><trkpt lat="51.01" lon="8.01"/><trkpt lat="51" lon="8"/></trkseg></trk>`;
    expect(chosen(gap)).toContain(
      'The file leaves 1 gap in the drive (111.2 km straight); a gap is not driven or checked.',
    );
  });

  it('names jumps over 500 km and positions at 0/0', () => {
    const jump = track('<trkpt lat="50" lon="8"/><trkpt lat="0" lon="0"/><trkpt lat="50" lon="8"/>');
    expect(chosen(jump)).toMatch(
      /2 jumps of over 500 km, first 5\d{3}\.\d km before position 2 of segment 1: the file may be faulty\. 1 position at 0\/0/u,
    );
  });

  it('does not call the antimeridian a jump', () => {
    expect(chosen(track('<trkpt lat="0" lon="179.99"/><trkpt lat="0" lon="-179.99"/>'))).toBe(
      'track 1 Lake | ',
    );
  });

  it('names segments of a single position', () => {
    const lone = `<trk><trkseg>${TWO_POINTS}</trkseg><trkseg><trkpt lat="50.01" lon="8.01"/></trkseg></trk>`;
    expect(chosen(lone)).toContain('1 segment of a single position: nothing to drive there.');
  });
});

it('the only drive of a file needs no word though it is asked for by its name', () => {
  expect(chosen(track(), 'Lake')).toBe('track 1 Lake | ');
});
