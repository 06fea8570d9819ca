import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { driveGpx } from '../../../geo/export/drive-gpx.ts';
import { findingsCsv } from '../../../geo/export/findings-csv.ts';
import { csvText } from '../../../geo/units/csv.ts';
import { handedOver } from '../../support/hand-over/handed-over.ts';
import { road } from '../../support/way-round/ask-ways.ts';

/** Cells as RFC 4180 has them, read by its own grammar. */
function cellsOf(text: string): string[][] {
  return [...text.matchAll(/((?:"(?:[^"]|"")*"|[^",\r\n]*)(?:,(?:"(?:[^"]|"")*"|[^",\r\n]*))*)\r\n/g)].map(
    ([, row = '']) =>
      [...row.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^",]*))/g)].map(([, quoted, bare]) =>
        quoted === undefined ? (bare ?? '') : quoted.replaceAll('""', '"'),
      ),
  );
}

describe('findings as CSV', () => {
  it('are one row of headings and one row a finding, all of one length', () => {
    const { report } = handedOver(
      [road(1, ['0,0', '5,0']), road(2, ['5,0', '9,0'], { maxheight: '2.5', name: '=HYPERLINK("x"),1' })],
      [1, 2],
    );
    const text = findingsCsv(report, new Map());
    const rows = cellsOf(text);
    expect(rows.map((row) => row.join()).join().length).toBeGreaterThan(0);
    expect(rows).toHaveLength(report.findings.length + 1);
    const [head = []] = rows;
    for (const row of rows) expect(row).toHaveLength(head.length);
    const bar = rows.find((row) => row[head.indexOf('subject')] === 'height');
    expect(bar?.[head.indexOf('spare')]).toBe('-0.55');
    expect(bar?.[head.indexOf('road')]).toBe('\'=HYPERLINK("x"),1');
  });

  it('say where there is no place left to turn off, as sheet and GPX do', () => {
    const { report, route, document } = handedOver([road(1, ['0,0', '9,0'], { maxheight: '2.5' })], [1]);
    const turnOffs = new Map(
      document.places.flatMap(({ finding, turnOff }) => (turnOff ? [[finding.id, turnOff] as const] : [])),
    );
    const [head = [], row = []] = cellsOf(findingsCsv(report, turnOffs));
    expect(row[head.indexOf('turn_off')]).toBe('No place to turn off before it: do not start.');
    expect(row[head.indexOf('turn_off_km')]).toBe('');
    const gpx = driveGpx(report, route, turnOffs);
    expect(gpx.ok && gpx.value).toContain('No place to turn off before it: do not start.');
    expect(gpx.ok && gpx.value).not.toContain('OFF NOW');
  });

  it('hold no text that a spreadsheet takes for a formula, and lose no other', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'=+-@＝＋－＠\t\r\n\0",a \u202e') }), (text) => {
        const cell = csvText([[text]])
          .slice(0, -2)
          .replace(/^"/, '');
        expect(cell).not.toMatch(/^\s*[=+\-@＝＋－＠\t\r\0]/);
      }),
      { numRuns: 100 },
    );
    expect(csvText([['a,"b"', -0.5, undefined, '-x']])).toBe('"a,""b""",-0.5,,\'-x\r\n');
  });
});

it('a figure that is no number leaves its cell empty', () => {
  expect(csvText([['a', Number.NaN, 1.5, undefined]])).toBe('a,,1.5,\r\n');
});
