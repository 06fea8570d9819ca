import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { fetchElectron } from '../../../../main/cli/start/fetch-electron.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'lanegauge-installer-'));
});
afterEach(async () => {
  await rm(folder, { recursive: true, force: true });
});

async function fetchWith(script: string, { limitMs = 60_000, signal = new AbortController().signal } = {}) {
  const installer = join(folder, 'install.cjs');
  await writeFile(installer, script);
  let most = 0;
  const onBytes = (bytes: number) => {
    most = Math.max(most, bytes);
  };
  return { fetched: await fetchElectron({ installer, limitMs, signal, onBytes }), most };
}

describe("Electron's own installer", () => {
  it('is watched while it downloads, and ends well', async () => {
    const { fetched, most } = await fetchWith(
      `require('fs').writeFileSync(require('os').tmpdir() + '/part', Buffer.alloc(5e6)); setTimeout(() => {}, 1500);`,
    );
    expect(fetched.ok).toBe(true);
    expect(most).toBe(5e6);
  });

  it('that fails is told by the first line of what it said', async () => {
    const { fetched } = await fetchWith(
      `console.error('no route to host\\n    at somewhere'); process.exit(1);`,
    );
    expect(fetched.ok ? '' : fetched.error.message).toBe('no route to host');
  });

  it('that never ends is given up', async () => {
    const { fetched } = await fetchWith('setInterval(() => {}, 1000);', { limitMs: 300 });
    expect(fetched.ok ? '' : fetched.error.code).toBe('slow');
  });

  it('is stopped when asked', async () => {
    const stop = new AbortController();
    setTimeout(() => stop.abort(), 300);
    const { fetched } = await fetchWith('setInterval(() => {}, 1000);', { signal: stop.signal });
    expect(fetched.ok ? '' : fetched.error.code).toBe('stopped');
  });
});
