import { readFileSync } from 'node:fs';
import { describe, expect, it, vi } from 'vitest';
import { FakeContents } from './fake-electron.ts';
import { runPreload } from './run-preload.ts';

vi.mock('electron', () => import('./fake-electron.ts'));

describe('the preload script', () => {
  it('is one CommonJS file that loads nothing but electron', () => {
    const script = readFileSync(
      new URL('../../../.build/program/electron/preload.cjs', import.meta.url),
      'utf8',
    );
    expect([...script.matchAll(/require\("([^"]*)"\)/g)].map(([, name]) => name)).toEqual(['electron']);
    expect(script).not.toMatch(/^import |import\(/m);
  });

  it('gives the page three frozen functions, and nothing of Electron', () => {
    const host = runPreload(new FakeContents(), () => '');
    expect(Object.isFrozen(host)).toBe(true);
    expect(Object.entries(host).map(([name, value]) => [name, typeof value])).toEqual([
      ['call', 'function'],
      ['cancel', 'function'],
      ['addFile', 'function'],
    ]);
  });
});
