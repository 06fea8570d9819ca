import { describe, expect, it } from 'vitest';
import { type Draft, makeFindings } from '../../../geo/rules/finding.ts';
import { drivenWays, passedNodes } from '../../../geo/rules/places.ts';
import { type Run, runOf } from '../../../geo/rules/run.ts';
import { driveOn, type Step, testMap } from '../../support/drive-on.ts';

/** Three roads in a row, a tagged node in the middle of the second. */
const map = testMap(
  [
    { id: 1, nodes: ['0,0', '3,0'], tags: { highway: 'residential', name: 'First Street' } },
    { id: 2, nodes: ['3,0', '4,0', '6,0'], tags: { highway: 'residential' } },
    { id: 3, nodes: ['6,0', '9,0'], tags: { highway: 'residential' } },
  ],
  { '4,0': { barrier: 'gate' } },
);

const ford = (run: Run, more: Partial<Pick<Draft, 'say' | 'aspect' | 'again' | 'others' | 'level'>> = {}) =>
  ({
    subject: 'water',
    kind: 'ford',
    level: 'care',
    run,
    tags: {},
    say: 'A ford.',
    advice: '',
    ...more,
  }) as Draft;

/** What is said of each driven way in turn. */
function onEach(steps: readonly Step[], more: Parameters<typeof ford>[1] = {}) {
  const drive = driveOn(map, steps);
  const places = drivenWays(drive, map.roads);
  return makeFindings(
    { drive, roads: map.roads },
    places.map((place) => ford(runOf(place), more)),
  );
}

const ids = (findings: readonly { readonly id: string }[]) => findings.map(({ id }) => id);

describe('findings', () => {
  it('of neighbours that say the same are one, with every way and the first name', () => {
    const [one, ...more] = onEach([1, 2, 3]);
    expect(more).toEqual([]);
    expect(one).toMatchObject({ id: 'water:w1f,w2f,w3f', fromM: 0, road: 'First Street' });
    expect(one?.toM).toBeCloseTo(900, 0);
    expect(one?.osm.map(({ id }) => id)).toEqual([1, 2, 3]);
  });

  it('of neighbours that say something else are two', () => {
    const drive = driveOn(map, [1, 2]);
    const [first, second] = drivenWays(drive, map.roads);
    const drafts = [first, second].flatMap((place, i) =>
      place === undefined ? [] : [ford(runOf(place), { say: `Ford ${i}.` })],
    );
    expect(ids(makeFindings({ drive, roads: map.roads }, drafts))).toEqual(['water:w1f', 'water:w2f']);
  });

  it('are said in one plain line, whatever the tags they quote hold', () => {
    const [finding] = onEach([1], { say: 'A ford ("depth=\u001b[2J\r\n5").' });
    expect(finding?.say).toMatch(/^A ford \("depth=\P{Cc}+5"\)\.$/u);
  });

  it('are of a length to be read, however long the tags they quote', () => {
    const [finding] = onEach([1], { say: `A ford ("depth=${'9'.repeat(90_000)}").` });
    expect(finding?.say).toMatch(/^A ford \("depth=9{1000,1200}…$/);
  });

  it('are in driving order, whatever order the rules speak in', () => {
    const drive = driveOn(map, [1, 2, 3]);
    const drafts = drivenWays(drive, map.roads).map((place, i) => ford(runOf(place), { say: `${i}` }));
    const found = makeFindings({ drive, roads: map.roads }, [...drafts].reverse());
    expect(ids(found)).toEqual(['water:w1f', 'water:w2f', 'water:w3f']);
  });

  it('at a place driven twice have their pass in the id', () => {
    const drive = driveOn(map, [1, 2, -2, 2]);
    const places = drivenWays(drive, map.roads).filter(({ id }) => id === 2);
    const drafts = places.map((place, i) => ford(runOf(place), { say: `Ford ${i}.` }));
    expect(ids(makeFindings({ drive, roads: map.roads }, drafts))).toEqual([
      'water:w2f',
      'water:w2b',
      'water:w2f#2',
    ]);
  });

  it('met again are shown again, or folded where that is no news, whichever way they are passed', () => {
    const drive = driveOn(map, [1, 2, 3, -3, -2]);
    const places = drivenWays(drive, map.roads).filter(({ id }) => id === 2);
    const again = (draft: Parameters<typeof ford>[1]) =>
      makeFindings(
        { drive, roads: map.roads },
        places.map((place) => ford(runOf(place), draft)),
      ).map(({ folded }) => folded);
    expect(again({})).toEqual([undefined, undefined]);
    expect(again({ again: 'folded' })).toEqual([undefined, true]);
  });

  it('met again at another level are news', () => {
    const drive = driveOn(map, [2, -2]);
    const [there, back] = drivenWays(drive, map.roads);
    if (there === undefined || back === undefined) throw new Error('two ways are driven');
    const found = makeFindings({ drive, roads: map.roads }, [
      ford(runOf(there), { again: 'folded' }),
      ford(runOf(back), { again: 'folded', level: 'tight' }),
    ]);
    expect(found.map(({ folded }) => folded)).toEqual([undefined, undefined]);
  });

  it('at a node stand on it, and have no length', () => {
    const drive = driveOn(map, [1, 2]);
    const [node] = passedNodes(drive, map.roads);
    if (node === undefined) throw new Error('a tagged node is passed');
    const [found] = makeFindings({ drive, roads: map.roads }, [ford(runOf(node))]);
    expect(found?.fromM).toBe(found?.toM);
    expect(found?.at).toEqual({ lat: map.roads.nodes.lat[node.index], lon: map.roads.nodes.lon[node.index] });
    expect(found?.osm).toEqual([{ type: 'node', id: 1003 }]);
  });

  it('of two kinds at one place are told apart by their aspect, and by what the road meets', () => {
    const drive = driveOn(map, [1]);
    const [place] = drivenWays(drive, map.roads);
    if (place === undefined) throw new Error('a way is driven');
    const others = [{ type: 'way' as const, id: 77 }];
    const found = makeFindings({ drive, roads: map.roads }, [
      ford(runOf(place)),
      ford(runOf(place), { aspect: 'deep' }),
      ford(runOf(place), { aspect: 'deep', others }),
    ]);
    expect(ids(found)).toEqual(['water:w1f', 'water:w1f:deep', 'water:w1f:deep:w77']);
    expect(found[2]?.osm).toEqual([{ type: 'way', id: 1 }, ...others]);
  });
});
