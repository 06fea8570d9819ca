import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Everything written while attacking goes here, the program's own passing files included; threads inherit it. */
const scratch = mkdtempSync(join(tmpdir(), 'lanegauge-fuzz-'));
process.env['TMPDIR'] = scratch;

export function clearScratch(): void {
  rmSync(scratch, { recursive: true, force: true });
}
