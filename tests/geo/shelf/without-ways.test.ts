import { describe, expect, it } from 'vitest';
import type { BlockContent } from '../../../geo/shelf/block.ts';
import { encodeTags } from '../../../geo/shelf/tag-bytes.ts';
import { withoutWays } from '../../../geo/shelf/without-ways.ts';

/** A lane over two nodes, a house over three others, a gate that stands alone. */
const block: BlockContent = {
  sets: [{ highway: 'residential' }, { building: 'yes' }, { barrier: 'gate' }].map((tags) =>
    encodeTags(tags),
  ),
  nodes: {
    count: 6,
    id: Float64Array.from([1, 2, 3, 4, 5, 6]),
    lat: Float64Array.from([50, 50.1, 50.2, 50.3, 50.4, 50.5]),
    lon: Float64Array.from([9, 9, 9, 9, 9, 9]),
    tagged: { node: Uint32Array.of(5), set: Uint32Array.of(2) },
  },
  ways: {
    count: 2,
    id: Float64Array.from([10, 11]),
    kind: Uint8Array.from([2, 0]),
    set: Uint32Array.from([1, 0]),
    start: Uint32Array.from([0, 4, 6]),
    refs: Uint32Array.from([0, 2, 3, 0, 1, 4]),
  },
  relations: [],
};

describe('a block without its buildings', () => {
  it('holds the other ways with their places, and what stands alone', () => {
    const left = withoutWays(block, (tags) => tags['building'] !== undefined);
    expect([...left.ways.id]).toEqual([11]);
    expect([...left.nodes.id]).toEqual([2, 5, 6]);
    expect([...left.ways.refs]).toEqual([0, 1]);
    expect([...left.nodes.lat]).toEqual([50.1, 50.4, 50.5]);
    expect([...left.nodes.tagged.node]).toEqual([2]);
  });

  it('is itself where it has none', () => {
    expect(withoutWays(block, (tags) => tags['railway'] !== undefined)).toBe(block);
  });
});
