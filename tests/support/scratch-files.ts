import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';

/** Writes files into a folder that goes when the test file ends. */
export function scratchFiles(): (name: string, content: string | Uint8Array) => string {
  const folder = mkdtempSync(join(tmpdir(), 'maps-'));
  afterAll(() => rmSync(folder, { recursive: true }));
  return (name, content) => {
    const path = join(folder, name);
    writeFileSync(path, content);
    return path;
  };
}

/** Unwraps what must have worked. */
export function worked<T>(
  result:
    | { readonly ok: true; readonly value: T }
    | { readonly ok: false; readonly error: { readonly message: string } },
): T {
  if (result.ok) return result.value;
  throw new Error(result.error.message);
}
