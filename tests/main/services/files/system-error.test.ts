import { mkdtempSync, readFileSync, rmdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { getSystemErrorMap } from 'node:util';
import { afterAll, describe, expect, it } from 'vitest';
import { sayThrown } from '../../../../main/say-thrown.ts';
import { unreadable } from '../../../../main/services/files/read-bytes.ts';
import { messageOf } from '../../../../main/services/files/system-error.ts';
import { writeNew } from '../../../../main/services/files/write-new.ts';

const folder = mkdtempSync(join(tmpdir(), 'system-error-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** As Node throws it. */
const systemError = (errno: number, code: string, words: string) =>
  Object.assign(new Error(`${code}: ${words}, open '/firm/a.gpx'`), { errno, code, path: '/firm/a.gpx' });

function thrownBy(work: () => unknown): unknown {
  try {
    return work();
  } catch (error) {
    return error;
  }
}

describe('what the system says', () => {
  it('is told in words, whatever its code', () => {
    for (const [errno, [code, words]] of getSystemErrorMap()) {
      const error = systemError(errno, code, words);
      const sentences = [messageOf(error), sayThrown(error), unreadable('a.gpx', 'drive', error).message];
      for (const sentence of sentences) expect(sentence).not.toMatch(new RegExp(`\\b${code}\\b`, 'u'));
    }
  });

  it('is told plainly where it is met most', async () => {
    expect(messageOf(thrownBy(() => readFileSync(join(folder, 'none'))))).toBe(
      'there is no such file or folder',
    );
    expect(messageOf(thrownBy(() => readFileSync(folder)))).toBe('a folder lies where a file should be');
    expect(messageOf(thrownBy(() => rmdirSync(tmpdir())))).toMatch(
      /^(the folder is not empty|another program)/,
    );
    const written = await writeNew(join(folder, 'x'.repeat(300)), { 'a.txt': 'a' });
    expect(!written.ok && written.error.message).toContain('its name is too long for this disk');
  });
});
