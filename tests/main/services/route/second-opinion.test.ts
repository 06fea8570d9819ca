import { afterEach, describe, expect, it } from 'vitest';
import { readGpx } from '../../../../geo/drive/gpx/read-gpx.ts';
import type { RouteFile } from '../../../../geo/drive/gpx/route.ts';
import { LightDomBuilder } from '../../../../main/services/route/light-dom.ts';
import { compareWithGpxparser } from '../../../../main/services/route/second-opinion.ts';
import { gpx, TWO_POINTS, track } from '../../../geo/drive/gpx/gpx-text.ts';

function read(text: string): RouteFile {
  const file = readGpx(text);
  if (!file.ok) throw new Error(file.error.message);
  return file.value;
}

function agrees(text: string, file = read(text)): boolean {
  const built = new LightDomBuilder();
  readGpx(text, built);
  return compareWithGpxparser(built.document, file).ok;
}

describe('the second reading', () => {
  it.each([
    [
      'tracks, segments and routes',
      gpx(
        `<wpt lat="1" lon="1"/>${track()}<trk/><trk><trkseg>${TWO_POINTS}</trkseg><trkseg>${TWO_POINTS}</trkseg></trk><rte><rtept lat="1" lon="1"/></rte>`,
      ),
    ],
    [
      'shape points',
      gpx(
        '<rte xmlns:v="u"><rtept lat="1" lon="1"><extensions><v:rpt lat="1" lon="1"/><v:rpt lat="1" lon="1.5"/></extensions></rtept><rtept lat="1" lon="2"/></rte>',
      ),
    ],
    [
      'prefixes',
      '<g:gpx xmlns:g="u"><g:trk><g:trkseg><g:trkpt lat="1" lon="1"/><g:trkpt lat="1" lon="2"/></g:trkseg></g:trk></g:gpx>',
    ],
    ['foreign points', gpx(track(`${TWO_POINTS}<x:trkpt xmlns:x="u" lat="9" lon="9"/>`))],
    ['points in extensions', gpx(`${track()}<extensions><trkpt lat="9" lon="9"/></extensions>`)],
    ['exponents and signs', gpx(track('<trkpt lat="+5e1" lon=" -.5 "/><trkpt lat="-0" lon="8."/>'))],
    [
      'two types, two links, full metadata',
      gpx(
        `<metadata><name>n</name><author><name>a</name><email id="i" domain="d"/><link href="h"/></author><link href="h"/><link href="h"/></metadata>${track().replace('<trkseg>', '<link href="a"/><link href="b"/><type>x</type><type>y</type><trkseg>')}`,
      ),
    ],
    [
      'elevations and times',
      gpx(
        track(
          '<trkpt lat="1" lon="1"><ele>0</ele><time>2026-05-01T10:00:00Z</time></trkpt><trkpt lat="1" lon="2"><ele/><time/></trkpt>',
        ),
      ),
    ],
  ])('agrees on %s', (_, text) => {
    expect(agrees(text)).toBe(true);
  });

  it('agrees on more than 120,000 points with elevations', () => {
    const points = Array.from(
      { length: 130_000 },
      (_, i) => `<trkpt lat="${i / 1e4}" lon="8"><ele>${i}</ele></trkpt>`,
    );
    expect(agrees(gpx(track(points.join(''))))).toBe(true);
  });

  it('refuses a file of which it reads another position, fewer, more, or other tracks', () => {
    const file = read(gpx(track()));
    expect(agrees(gpx(track('<trkpt lat="50" lon="8"/><trkpt lat="50.01" lon="8.02"/>')), file)).toBe(false);
    expect(agrees(gpx(track('<trkpt lat="50" lon="8"/>')), file)).toBe(false);
    expect(agrees(gpx(track(`${TWO_POINTS}<trkpt lat="1" lon="1"/>`)), file)).toBe(false);
    expect(agrees(gpx(track() + track()), file)).toBe(false);
    expect(agrees(gpx(`<wpt lat="1" lon="1"/>${track()}`), file)).toBe(false);
    expect(agrees('<broken', file)).toBe(false);
  });
});

describe('the globals it needs', () => {
  afterEach(() => Reflect.deleteProperty(globalThis, 'window'));

  it('are there only during the call', () => {
    const before = Object.getOwnPropertyNames(globalThis).sort();
    agrees(gpx(track()));
    expect(Object.getOwnPropertyNames(globalThis).sort()).toEqual(before);
  });

  it('do not replace a window that was there', () => {
    const window = { mine: true };
    Object.defineProperty(globalThis, 'window', { value: window, configurable: true });
    agrees(gpx(track()));
    expect(Reflect.get(globalThis, 'window')).toBe(window);
  });
});
