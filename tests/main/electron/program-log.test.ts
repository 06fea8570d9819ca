import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { openLog } from '../../../main/electron/program-log.ts';
import { PROGRAM } from '../../../main/version.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'lanegauge-log-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));
const now = () => new Date('2026-08-01T07:30:00Z');

it('the log keeps when, which program, what, and where in the program, but none of the words of an error', () => {
  const log = openLog(join(folder, 'not', 'there', 'yet'), now);
  log.note('a call failed', Object.assign(new RangeError('/home/ann/Lake.gpx'), { code: 'ENOENT' }));
  const text = readFileSync(log.path, 'utf8');
  expect(text).toContain(`2026-08-01T07:30:00.000Z ${PROGRAM} ${process.platform} a call failed\n`);
  expect(text).toMatch(/\n {2}RangeError ENOENT\n {2}at .*program-log\.test\.ts/u);
  expect(text).not.toContain('Lake');
});

it('the log of a long life takes little room: the one before it is kept, older ones go', () => {
  const log = openLog(folder, now);
  writeFileSync(log.path, 'x'.repeat(600_000));
  log.note('first of a new file');
  log.note('second');
  expect(readFileSync(log.path, 'utf8').split('\n')).toHaveLength(3);
  expect(readFileSync(`${log.path}.before`, 'utf8')).toHaveLength(600_000);
});

it('a log that cannot be written stops nothing', () => {
  writeFileSync(join(folder, 'file'), '');
  expect(() => openLog(join(folder, 'file'), now).note('anything', 'no error at all')).not.toThrow();
});
