import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readGpx } from '../../../../geo/drive/gpx/read-gpx.ts';
import { writeGpx } from '../../../../geo/drive/gpx/write-gpx.ts';

const degrees = (most: number) => fc.integer({ min: -most * 1e7, max: most * 1e7 }).map((n) => n / 1e7);
const time = fc.oneof(fc.constant(Number.NaN), fc.integer({ min: 0, max: 4e12 }));
const elevation = fc.oneof(
  fc.constant(Number.NaN),
  fc.integer({ min: -4000, max: 90_000 }).map((n) => n / 10),
);
const segment = fc
  .array(fc.tuple(degrees(90), degrees(180), time, elevation), { minLength: 2, maxLength: 8 })
  .map((points) => ({
    lat: Float64Array.from(points, (p) => p[0]),
    lon: Float64Array.from(points, (p) => p[1]),
    timeMs: Float64Array.from(points, (p) => p[2]),
    ...(points.every((p) => Number.isNaN(p[3]))
      ? {}
      : { elevationM: Float64Array.from(points, (p) => p[3]) }),
  }));
const anyText = fc.string({ unit: 'binary', maxLength: 40 });
const waypoint = fc.record({ lat: degrees(90), lon: degrees(180), name: anyText, description: anyText });

describe('a drive written as GPX', () => {
  it('reads back the same: name, segments, positions to 7 decimals, elevations, times', () => {
    fc.assert(
      fc.property(
        anyText,
        fc.array(segment, { minLength: 1, maxLength: 3 }),
        fc.array(waypoint, { maxLength: 3 }),
        (name, segments, waypoints) => {
          const written = writeGpx({ name, segments }, waypoints, 'Lanegauge 0.1');
          if (!written.ok) throw new Error(written.error.message);
          const read = readGpx(written.value);
          if (!read.ok) throw new Error(read.error.message);
          expect(read.value.waypoints).toBe(waypoints.length);
          expect(read.value.routes.length).toBe(1);
          const back = read.value.routes[0]?.segments ?? [];
          expect(back.length).toBe(segments.length);
          back.forEach((one, i) => {
            expect([...one.lat].map(to7)).toEqual([...(segments[i]?.lat ?? [])].map(to7));
            expect([...one.lon].map(to7)).toEqual([...(segments[i]?.lon ?? [])].map(to7));
            expect(one.timeMs).toEqual(segments[i]?.timeMs);
            expect(one.elevationM).toEqual(segments[i]?.elevationM);
          });
        },
      ),
    );
  });

  it('keeps hostile names as text', () => {
    const name = `<script>"&'</name></trk>]]>`;
    const two = {
      lat: Float64Array.of(1, 1),
      lon: Float64Array.of(1, 2),
      timeMs: Float64Array.of(Number.NaN, 0),
    };
    const written = writeGpx({ name, segments: [two] }, [{ lat: 1, lon: 1, name, symbol: name }], name);
    const read = readGpx(written.ok ? written.value : '');
    expect(read.ok && read.value.routes[0]?.name).toBe(name);
  });

  it('is refused when a number is no place, or there is nothing to drive', () => {
    const bad = {
      lat: Float64Array.of(1, Number.NaN),
      lon: Float64Array.of(1, 2),
      timeMs: Float64Array.of(0, 0),
    };
    const good = { lat: Float64Array.of(1, 1), lon: Float64Array.of(1, 2), timeMs: Float64Array.of(0, 0) };
    expect(writeGpx({ name: '', segments: [bad] }, [], 'x').ok).toBe(false);
    expect(writeGpx({ name: '', segments: [] }, [], 'x').ok).toBe(false);
    expect(writeGpx({ name: '', segments: [good] }, [{ lat: 99, lon: 1, name: '' }], 'x').ok).toBe(false);
  });
});

/** -0 and 0 are one place */
function to7(value: number): string {
  return (value + 0).toFixed(7).replace(/^-(0\.0+)$/u, '$1');
}

describe('stops of a drive', () => {
  const line = {
    lat: Float64Array.of(52, 52.01),
    lon: Float64Array.of(10, 10.01),
    timeMs: Float64Array.of(Number.NaN, Number.NaN),
  };
  const stops = [
    { lat: 52.005, lon: 10.005, atM: 650 },
    { lat: 52.01, lon: 10.01 },
  ];
  const stopsIn = (text: string) => {
    const read = readGpx(text);
    if (!read.ok) throw new Error(read.error.message);
    return { stops: read.value.routes[0]?.stops, notes: read.value.notes };
  };
  const written = (marked: typeof stops | undefined, waypoints: Parameters<typeof writeGpx>[1] = []) => {
    const text = writeGpx(
      { name: '', segments: [line], ...(marked && { stops: marked }) },
      waypoints,
      'test',
    );
    if (!text.ok) throw new Error(text.error.message);
    return text.value;
  };

  it('are waypoints with a mark of ours, and read back as stops', () => {
    const text = written(stops);
    expect(text.match(/<wpt /g)?.length).toBe(2);
    expect(stopsIn(text)).toEqual({ stops, notes: [] });
  });

  it('and an end that can only be left by turning round, are told by the file alone that says so', () => {
    const turns = (text: string) => {
      const read = readGpx(text);
      return read.ok && read.value.routes[0]?.turnAtEnd;
    };
    const text = writeGpx({ name: 'x', segments: [line], turnAtEnd: true }, [], 'test');
    if (!text.ok) throw new Error(text.error.message);
    expect(turns(text.value)).toBe(true);
    expect(turns(text.value.replace('urn:lanegauge:drive:1', 'urn:other'))).toBeUndefined();
    expect(turns(written(stops))).toBeUndefined();
  });

  it('stand once where a waypoint stands for one already', () => {
    const text = written(stops, [{ lat: 52.01, lon: 10.01, name: 'S1 Mill', stop: {} }]);
    expect(text.match(/<wpt /g)?.length).toBe(2);
    expect(stopsIn(text).stops?.length).toBe(2);
  });

  it('are no waypoint of anybody else, whatever it is called', () => {
    const plain = written(undefined, [{ lat: 52, lon: 10, name: 'S1 Camp', type: 'Stop', symbol: 'Flag' }]);
    expect(stopsIn(plain).stops).toBeUndefined();
    const other = written(stops).replaceAll('urn:lanegauge:drive:1', 'urn:other');
    expect(stopsIn(other).stops).toBeUndefined();
    const astray = written(undefined).replace(
      '<trkseg>',
      '<extensions><s:stop xmlns:s="urn:lanegauge:drive:1"/></extensions><trkseg>',
    );
    expect(stopsIn(astray).stops).toBeUndefined();
  });

  it('beyond any drive’s number are left aside, and that is said', () => {
    const many = written(stops).replace(/<wpt .*<\/wpt>/, (one) => `${one}\n`.repeat(100));
    const { stops: kept, notes } = stopsIn(many);
    expect(kept?.length).toBe(99);
    expect(notes).toEqual([
      expect.stringMatching(/^2 waypoints marked as stops beyond the first 99 left aside/),
    ]);
  });
});
