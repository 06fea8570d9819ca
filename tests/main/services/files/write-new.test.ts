import { mkdtemp, readdir, readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { writeNew } from '../../../../main/services/files/write-new.ts';

const freshFolder = () => mkdtemp(join(tmpdir(), 'lanegauge-'));

describe('writing a report', () => {
  it('makes the folder and leaves nothing but the files', async () => {
    const folder = join(await freshFolder(), 'new', 'deep');
    const written = await writeNew(folder, { 'a.json': '1', 'b.txt': '2' });
    expect(written.ok).toBe(true);
    expect((await readdir(folder)).sort()).toEqual(['a.json', 'b.txt']);
  });

  it('never overwrites what the user had, and takes back what it had written', async () => {
    const folder = await freshFolder();
    await writeFile(join(folder, 'b.txt'), 'mine');
    const written = await writeNew(folder, { 'a.json': '1', 'b.txt': '2' });
    expect(written.ok).toBe(false);
    expect(await readdir(folder)).toEqual(['b.txt']);
    expect(await readFile(join(folder, 'b.txt'), 'utf8')).toBe('mine');
  });

  it.runIf(process.platform === 'linux')('comes back from where the system makes no folders', async () => {
    const written = await writeNew('/proc/lanegauge', { 'a.json': '1' });
    expect(written).toMatchObject({ ok: false });
  });

  it('leaves nothing half-written when cancelled', async () => {
    const folder = await freshFolder();
    const written = await writeNew(folder, { 'a.json': 'x'.repeat(1e6) }, AbortSignal.abort());
    expect(written.ok).toBe(false);
    expect(await readdir(folder)).toEqual([]);
  });
});
