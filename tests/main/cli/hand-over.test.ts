import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { settingsWith } from '../../../main/cli/hand-over/firm-of.ts';
import { readHandOverArguments } from '../../../main/cli/hand-over/hand-over-arguments.ts';
import { worked } from '../../support/scratch-files.ts';
import { terminalOf } from '../../support/terminal.ts';

let home: string;
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'hand-over-'));
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

const read = (...words: readonly string[]) =>
  readHandOverArguments(['--drive', 'a', '--vehicle-id', 'b', '--out', 'c', ...words], home);

it('the firm’s heading and telephone are kept with the settings, and stand on every later sheet', async () => {
  const { terminal } = terminalOf(home);
  const typed = async (...words: readonly string[]) =>
    worked(await settingsWith(worked(read(...words)).firm, terminal)).firm;
  expect(await typed()).toEqual({ heading: '', telephone: '' });
  await typed('--firm', 'Hill & Dale');
  await typed('--phone', '01632 960123');
  expect(await typed()).toEqual({ heading: 'Hill & Dale', telephone: '01632 960123' });
});

it('what cannot be rung, or is too long to stand on a sheet, is refused', () => {
  expect(read('--phone', 'the office')).toMatchObject({ ok: false });
  expect(read('--phone', '0'.repeat(61))).toMatchObject({ ok: false });
  expect(read('--firm', 'x'.repeat(121))).toMatchObject({ ok: false });
});
