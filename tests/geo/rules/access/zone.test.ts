import { describe, expect, it } from 'vitest';
import { zone } from '../../../../geo/rules/access/zone.ts';
import { area, askAround, road } from '../../../support/ask-around.ts';

const LEZ = { boundary: 'low_emission_zone', name: 'Inner Town' };

describe('zones entered', () => {
  it('a low-emission zone is unknown from where the drive enters it', () => {
    const [found, ...more] = askAround(zone, [road({}), area(9, 2, -5, 9, 5, LEZ)]);
    expect(more).toEqual([]);
    expect(found).toMatchObject({ level: 'unknown', subject: 'zone', tags: LEZ });
    expect(found?.say).toMatch(/low-emission zone \(Inner Town\)/);
    expect(found?.osm).toEqual([
      { type: 'way', id: 1 },
      { type: 'way', id: 9 },
    ]);
    expect(Math.abs((found?.fromM ?? 0) - 200)).toBeLessThan(60);
    expect(found?.toM).toBeCloseTo(500, 0);
  });

  it('a zone of limited traffic too, with other words', () => {
    const found = askAround(zone, [road({}), area(9, 2, -5, 9, 5, { boundary: 'limited_traffic_zone' })]);
    expect(found.map(({ say }) => say)).toEqual([expect.stringMatching(/limited traffic/)]);
  });

  it('one drawn as a relation of several edges is a zone; where an edge is missing, crossing another tells it', () => {
    // the edges of one relation share its tags
    const edges = [
      { id: 20, nodes: ['2,-5', '2,5', '9,5'], tags: LEZ, around: true },
      { id: 21, nodes: ['9,5', '9,-5', '2,-5'], tags: LEZ, around: true },
    ];
    expect(askAround(zone, [road({}), ...edges])[0]?.toM).toBeCloseTo(500, 0);
    const [cut, ...more] = askAround(zone, [road({}), ...edges.slice(0, 1)]);
    expect(more).toEqual([]);
    expect(cut).toMatchObject({ level: 'unknown', osm: [{ id: 1 }, { id: 20 }] });
    expect(cut?.fromM).toBeCloseTo(200, 0);
  });

  it('one the drive only passes by, and any other boundary, is none', () => {
    expect(askAround(zone, [road({}), area(9, 2, 0.2, 9, 5, LEZ)])).toEqual([]);
    expect(askAround(zone, [road({}), area(9, 2, -5, 9, 5, { boundary: 'administrative' })])).toEqual([]);
  });

  it('one zone driven through over several roads is one finding, two zones are two', () => {
    const ways = [
      road({}),
      { id: 2, nodes: ['5,0', '8,0'], tags: { highway: 'residential' } },
      area(9, -2, -5, 9, 5, LEZ),
    ];
    expect(askAround(zone, ways, { steps: [1, 2] })).toHaveLength(1);
    expect(askAround(zone, [...ways, area(10, 4, -5, 9, 5, LEZ)], { steps: [1, 2] })).toHaveLength(2);
  });
});
