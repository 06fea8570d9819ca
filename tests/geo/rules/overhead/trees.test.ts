import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../../geo/roads/roads.ts';
import { trees } from '../../../../geo/rules/overhead/trees.ts';
import { COACHBUILT } from '../../../support/ask.ts';
import { area, askAround, road } from '../../../support/ask-around.ts';
import type { TestWay } from '../../../support/drive-on.ts';

const LANE = road({});
/** A row of trees along the whole road, so many metres north of its centre line. */
const row = (metres: number): TestWay => ({
  id: 9,
  nodes: [`0,${metres / 100}`, `5,${metres / 100}`],
  tags: { natural: 'tree_row' },
  around: true,
});

describe('trees beside a minor road', () => {
  it('a row within 8 m of the centre line is care for a tall vehicle', () => {
    const [found, ...more] = askAround(trees, [LANE, row(7)]);
    expect(more).toEqual([]);
    expect(found).toMatchObject({ level: 'care', subject: 'trees', tags: { natural: 'tree_row' } });
    expect(found?.say).toMatch(/for 500 m/);
    expect(found?.osm).toEqual([
      { type: 'way', id: 1 },
      { type: 'way', id: 9 },
    ]);
  });

  it('at 9 m it is not', () => {
    expect(askAround(trees, [LANE, row(9)])).toEqual([]);
  });

  it('a vehicle of 2.75 m is let alone, one of 2.80 m is not', () => {
    const at = (heightM: number) => askAround(trees, [LANE, row(5)], { card: { ...COACHBUILT, heightM } });
    expect(at(2.75)).toEqual([]);
    expect(at(2.8)).toHaveLength(1);
  });

  it.each<[string, Tags]>([
    ['wood', { natural: 'wood' }],
    ['forest', { landuse: 'forest' }],
  ])('through the middle of a %s, however far its edge', (_, tags) => {
    const [found] = askAround(trees, [LANE, area(9, -20, -20, 3, 20, tags)]);
    expect(found?.fromM).toBe(0);
    expect(found?.toM).toBeGreaterThan(295);
    expect(found?.toM).toBeLessThan(330);
  });

  it('two pieces of wood with open road between are one finding that says how much', () => {
    const woods = [area(8, -1, -1, 1, 1, { natural: 'wood' }), area(9, 3, -1, 6, 1, { natural: 'wood' })];
    const found = askAround(trees, [LANE, ...woods]);
    expect(found).toHaveLength(1);
    expect(found[0]?.say).toMatch(/for 3\d0 m of 500 m/);
  });

  it('a road tagged tree-lined is taken at its word', () => {
    expect(askAround(trees, [road({ tree_lined: 'both' })])).toHaveLength(1);
    expect(askAround(trees, [road({ tree_lined: 'no' })])).toEqual([]);
  });

  it('on main roads nothing is said, on tertiary ones it is counted only, and so are a few trees in passing', () => {
    expect(askAround(trees, [road({ highway: 'secondary' }), row(5)])).toEqual([]);
    expect(askAround(trees, [road({ highway: 'tertiary' }), row(5)])[0]?.folded).toBe(true);
    expect(askAround(trees, [LANE, area(9, 1, 0.02, 1.3, 1, { natural: 'wood' })])[0]?.folded).toBe(true);
  });

  it.each<Tags>([{ landuse: 'orchard' }, { natural: 'scrub' }, { barrier: 'hedge' }, { landuse: 'meadow' }])(
    '%o is no wood',
    (tags) => {
      expect(askAround(trees, [LANE, area(9, -1, -1, 6, 1, tags)])).toEqual([]);
    },
  );

  it('in a tunnel and on a bridge no branch hangs', () => {
    const wood = area(9, -1, -1, 6, 1, { natural: 'wood' });
    expect(askAround(trees, [road({ tunnel: 'yes' }), wood])).toEqual([]);
    expect(askAround(trees, [road({ bridge: 'yes' }), wood])).toEqual([]);
  });
});
