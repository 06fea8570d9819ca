import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { compareAndKeep } from '../../../../main/services/yard/grid/compare-and-keep.ts';
import { checkOn, district, roadsOf } from '../../../geo/library/differences/district.ts';
import { setTags } from '../../../geo/library/differences/edits.ts';

const folder = mkdtempSync(join(tmpdir(), 'compare-'));
afterAll(() => rmSync(folder, { recursive: true }));

const low = district();
setTags(2, { maxheight: '2.9' })(low);
const BEFORE = checkOn(roadsOf(district()), '2026-05-01');
const LOW_BRIDGE = checkOn(roadsOf(low), '2026-11-20');

const keeper = (name: string) => {
  const keptAt = { seen: join(folder, `${name}-seen`), newest: join(folder, `${name}-newest`) };
  return async (report: typeof BEFORE) => {
    const { differences } = await compareAndKeep(keptAt, report, { units: 'metric' });
    return differences?.map(({ kind, say }) => `${kind}: ${say}`);
  };
};

it('a bar that nobody has seen stays told when an older map, without it, takes the newer one’s place', async () => {
  const check = keeper('back');
  expect(await check(BEFORE)).toBeUndefined();
  expect(await check(LOW_BRIDGE)).toEqual([expect.stringMatching(/^changed: .*now: barred, mapped as 2\.9/)]);
  expect(await check(BEFORE)).toEqual([expect.stringMatching(/^changed: .*Before: barred.*now: tight/)]);
});

it('it stays told as well where the map that takes its place tells no date', async () => {
  const check = keeper('undated');
  await check(BEFORE);
  await check(LOW_BRIDGE);
  const undated = {
    ...BEFORE,
    map: { ...BEFORE.map, sources: BEFORE.map.sources.map(({ dataDate: _, ...rest }) => rest) },
  };
  expect(await check(undated)).toEqual([expect.stringMatching(/^changed: .*Before: barred.*now: tight/)]);
});

it('what a map of newer data no longer has is no news where nobody had been told of it', async () => {
  const check = keeper('on');
  await check(BEFORE);
  await check(LOW_BRIDGE);
  expect(await check(checkOn(roadsOf(district()), '2027-01-01'))).toEqual([]);
});
