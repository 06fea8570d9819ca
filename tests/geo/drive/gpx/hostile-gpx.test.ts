import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readGpx } from '../../../../geo/drive/gpx/read-gpx.ts';
import { countPositions } from '../../../../geo/drive/gpx/route-length.ts';
import { gpx, TWO_POINTS, track } from './gpx-text.ts';

const FILE = gpx(
  `<metadata><name>m</name></metadata><wpt lat="1" lon="2"/>${track()}<trk><trkseg>${TWO_POINTS}</trkseg><trkseg>${TWO_POINTS}</trkseg></trk><rte><rtept lat="1" lon="1"><extensions><rpt lat="1" lon="1.1"/></extensions></rtept><rtept lat="1" lon="2"/></rte>`,
);

function positionsIn(text: string): number | undefined {
  const read = readGpx(text);
  if (read.ok) return read.value.routes.reduce((sum, route) => sum + countPositions(route), 0);
  expect(read.error.message.length).toBeGreaterThan(10);
  return undefined;
}

describe('a damaged file', () => {
  it('cut at any character is refused, never read as a shorter drive', () => {
    const whole = FILE.lastIndexOf('</gpx>') + '</gpx>'.length;
    for (let end = 0; end < whole; end++)
      expect(positionsIn(FILE.slice(0, end)), `cut at ${end}`).toBeUndefined();
    expect(positionsIn(FILE.slice(0, whole))).toBe(9);
  });

  // inside extensions any name and text may be a vendor's own
  const shapePoint = FILE.indexOf('<rpt');
  const isVendors = (at: number) => at >= shapePoint && at < shapePoint + 5;

  it('with a piece missing, too short to hold or join points, is refused or whole', () => {
    fc.assert(
      fc.property(fc.nat(FILE.length), fc.integer({ min: 1, max: 12 }), (at, length) => {
        if (isVendors(at) || isVendors(at + length - 1)) return;
        expect([undefined, 9]).toContain(positionsIn(FILE.slice(0, at) + FILE.slice(at + length)));
      }),
      { numRuns: 500 },
    );
  });

  it('with one character changed is refused or whole', () => {
    fc.assert(
      fc.property(
        fc.nat(FILE.length - 1),
        fc.string({ unit: 'binary', minLength: 1, maxLength: 1 }),
        (at, other) => {
          if (isVendors(at)) return;
          expect([undefined, 9]).toContain(positionsIn(FILE.slice(0, at) + other + FILE.slice(at + 1)));
        },
      ),
      { numRuns: 2000 },
    );
  });

  it('of any text never throws', () => {
    const scraps = fc.constantFrom(
      '<gpx>',
      '</gpx>',
      '<trk>',
      '</trk>',
      '<trkseg>',
      '</trkseg>',
      '<trkpt lat="1" lon="2">',
      '</trkpt>',
      '<rte>',
      '</rte>',
      '<rtept lat="1" lon="2">',
      '</rtept>',
      '<x:rpt lat="1" lon="2"/>',
      '<extensions>',
      '</extensions>',
      '<name>',
      '</name>',
      '<![CDATA[',
      ']]>',
      '<!--',
      '-->',
      '<!DOCTYPE gpx [',
      '<!ENTITY a "b">',
      ']>',
      '&a;',
      '&#0;',
      '&constructor;',
      '<?xml version="1.1"?>',
      '<',
      '>',
      '"',
      '&',
      '\0',
      '\uD800',
      'xmlns:x="u"',
      '<__proto__ __proto__="">',
    );
    fc.assert(
      fc.property(fc.array(fc.oneof(scraps, fc.string()), { maxLength: 30 }), (pieces) => {
        readGpx(pieces.join(''));
        readGpx(`<gpx xmlns:x="u">${pieces.join('')}</gpx>`);
      }),
      { numRuns: 500 },
    );
  });
});
