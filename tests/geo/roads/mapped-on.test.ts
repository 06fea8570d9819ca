import { describe, expect, it } from 'vitest';
import { mappedOn } from '../../../geo/roads/mapped-on.ts';
import { roadsFrom } from '../../support/build-roads.ts';

describe('what is mapped on a way', () => {
  const roads = roadsFrom({
    nodes: { a: [52, 0], b: [52, 0.01] },
    ways: [{ id: 7, refs: ['a', 'b'], tags: { highway: 'tertiary', maxheight: '3.2' } }],
  });

  it('is told by its index', () => {
    expect(mappedOn(roads, 0)).toEqual({ highway: 'tertiary', maxheight: '3.2' });
  });

  it('is never nothing for a way that is none, which would pass it as free of limits', () => {
    expect(() => mappedOn(roads, 1)).toThrow('no way 1 among 1');
  });
});
