import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readRouteBytes, readRouteFile } from '../../../../main/services/route/read-route-file.ts';
import { gpx, TWO_POINTS, track } from '../../../geo/drive/gpx/gpx-text.ts';

const FILE = Buffer.from(
  gpx(
    `${track()}<trk><trkseg>${TWO_POINTS}</trkseg></trk><rte><rtept lat="1" lon="1"/><rtept lat="1" lon="2"/></rte>`,
  ),
);

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'drives-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

async function refused(path: string): Promise<string> {
  const read = await readRouteFile(path);
  return read.ok ? 'was read' : read.error.message;
}

describe('a drive on disk', () => {
  it('is read', async () => {
    const path = join(folder, 'lake.gpx');
    writeFileSync(path, FILE);
    const read = await readRouteFile(path);
    expect(read.ok && read.value.routes.map((route) => route.name)).toEqual(['Lake', '', '']);
  });

  it('is refused with its name when it is missing or a folder', async () => {
    const none = join(folder, 'none.gpx');
    expect(await refused(none)).toBe(`There is no file ${none}. Check the name of the drive.`);
    expect(await refused(folder)).toContain('is a folder, not a drive');
    expect(await refused('\0')).toContain('could not be read');
  });

  it.skipIf(process.platform === 'win32')('is not waited for in a pipe', async () => {
    const pipe = join(folder, 'pipe.gpx');
    execFileSync('mkfifo', [pipe]);
    expect(await refused(pipe)).toBe(`${pipe} is a pipe or a device, not a drive. Name an ordinary file.`);
  });

  it('is refused with its name and line when it is faulty', async () => {
    const path = join(folder, 'bad.gpx');
    writeFileSync(path, gpx(track('<trkpt lat="51,5" lon="0"/>')));
    expect(await refused(path)).toMatch(
      /^\S+bad\.gpx: Line 3: track 1 "Lake", segment 1, point 1: latitude "51,5"/u,
    );
  });
});

describe('damaged bytes', () => {
  const positions = (bytes: Uint8Array) => {
    const read = readRouteBytes(bytes, 'x.gpx');
    if (!read.ok) return undefined;
    return read.value.routes.flatMap((route) => route.segments).reduce((sum, one) => sum + one.lat.length, 0);
  };

  it('cut anywhere are refused, in UTF-8 and UTF-16', () => {
    const wide = Buffer.from(`\uFEFF${FILE.toString()}`, 'utf16le');
    for (const [bytes, tail] of [
      [FILE, 1],
      [wide, 2],
    ] as const) {
      expect(positions(bytes)).toBe(6);
      for (let end = 0; end < bytes.length - tail; end++)
        expect(positions(bytes.subarray(0, end)), `cut at ${end}`).toBeUndefined();
    }
  });

  it('with one bit flipped never hold fewer positions', () => {
    for (let i = 0; i < FILE.length; i++)
      for (let bit = 0; bit < 8; bit++) {
        const bytes = Buffer.from(FILE);
        bytes[i] = bytes[i]! ^ (1 << bit);
        expect([undefined, 6]).toContain(positions(bytes));
      }
  });

  it('of any kind never throw', () => {
    const lead = fc.constantFrom(
      '',
      '\uFEFF',
      '<',
      '<gpx>',
      '<?xml version="1.0" encoding="utf-7"?>',
      '\xff\xfe',
      'PK',
    );
    fc.assert(
      fc.property(lead, fc.uint8Array({ maxLength: 200 }), (start, bytes) => {
        expect(positions(Buffer.concat([Buffer.from(start, 'latin1'), bytes]))).toBeUndefined();
      }),
      { numRuns: 1000 },
    );
  });
});
