import { truncateSync } from 'node:fs';
import { expect, it } from 'vitest';
import { FRUGAL, wantsFrugal } from '../../../../main/cli/shelf/frugal-process.ts';
import { scratchFiles } from '../../../support/scratch-files.ts';

const write = scratchFiles();
const { electron: _, ...versions } = process.versions;
const LINUX = { platform: 'linux', env: {}, versions } as const;

it('a large file, and no other, is taken in by a program with a frugal allocator, where there is one to be had', () => {
  const small = write('small.osm.pbf', 'small');
  const large = write('large.osm.pbf', '');
  // a hole: it takes no room
  truncateSync(large, 200e6);
  expect(wantsFrugal([small, large], LINUX)).toBe(true);
  expect(wantsFrugal([small, 'nowhere.osm.pbf'], LINUX)).toBe(false);
  expect(wantsFrugal([large], { ...LINUX, platform: 'win32' })).toBe(false);
  expect(wantsFrugal([large], { ...LINUX, versions: { ...versions, electron: '45.5.0' } })).toBe(false);
  // started so already, or by somebody who chose his own
  expect(wantsFrugal([large], { ...LINUX, env: { ...FRUGAL } })).toBe(false);
  expect(wantsFrugal([large], { ...LINUX, env: { MALLOC_ARENA_MAX: '1' } })).toBe(false);
});
