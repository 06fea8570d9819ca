import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { driveReportSchema } from '../../../geo/report/report.ts';
import { cellOf } from '../../../geo/yard/cell.ts';
import { sayCounts, sayTightest } from '../../../geo/yard/say-cell.ts';
import { keptAt, readKeptDrive } from '../../../main/services/yard/grid/kept-cells.ts';
import { keptReport } from '../../../main/services/yard/grid/kept-report.ts';
import { handedOver } from '../../support/hand-over/handed-over.ts';
import { road } from '../../support/way-round/ask-ways.ts';
import { mutateBytes } from '../make/mutate-bytes.ts';
import { mutateJson } from '../make/mutate-json.ts';
import { faultInShown } from '../promises.ts';
import type { Target } from '../target.ts';

const { report } = handedOver(
  [road(1, ['0,0', '5,0'], { maxheight: '2.5' }), road(2, ['5,0', '9,0'])],
  [1, 2],
);
const CELLS = {
  format: 'lanegauge.cells',
  version: 1,
  box: { south: 49, west: 6, north: 51, east: 8 },
  cells: {
    heron: {
      madeOf: { map: 'a', card: 'b', note: 'c', margin: 'd', drive: 'e' },
      cell: cellOf(report),
      changes: [{ kind: 'new', finding: 'x', now: report.findings[0], fromM: 0, toM: 1, say: 'New.' }],
      settled: [],
    },
  },
};
const folder = mkdtempSync(join(tmpdir(), 'lanegauge-fuzz-grid-'));
const { seen } = keptAt(folder, 'd-1', 'heron');
mkdirSync(join(seen, '..'), { recursive: true });
const BOMB = gzipSync(Buffer.alloc(300_000_000, ' '));

/** What is kept of the grid on this computer: used whole, or made anew. The first byte says cells or a report. */
export const gridStates: Target = {
  name: 'states of the grid',
  weight: 3,
  make(random) {
    const which = random.below(2);
    const sound = which === 0 ? CELLS : report;
    const text = Buffer.from(JSON.stringify(random.chance(0.6) ? mutateJson(sound, random) : sound));
    if (which === 0) return Uint8Array.from([0, ...(random.chance(0.5) ? mutateBytes(text, random) : text)]);
    if (random.chance(0.002)) return Uint8Array.from([1, ...BOMB]);
    const packed = gzipSync(text);
    return Uint8Array.from([1, ...(random.chance(0.5) ? mutateBytes(packed, random) : packed)]);
  },
  async check(input) {
    if (input[0] === 1) {
      writeFileSync(seen, input.subarray(1));
      const read = await keptReport(seen);
      return read === undefined || driveReportSchema.safeParse(read).success
        ? undefined
        : 'a report that is none';
    }
    writeFileSync(join(folder, 'd-1.json'), input.subarray(1));
    const kept = await readKeptDrive(folder, 'd-1');
    const said = Object.values(kept?.cells ?? {}).flatMap(({ cell }) => [
      sayCounts(cell.counts),
      sayTightest(cell, 'metric'),
    ]);
    return faultInShown(said.filter((text) => text !== ''));
  },
};
