import type { MapSketch } from '../build-roads.ts';

type Tags = Readonly<Record<string, string>>;
type Way = MapSketch['ways'][number];

/**
 * The map as it is driven backwards and seen in a mirror, which makes a left turn a left turn again: a way back on it
 * costs what the way there costs on the map itself. Leave out what reads differently from the other side first.
 */
export function backwards(sketch: MapSketch): MapSketch {
  const nodes = Object.entries(sketch.nodes).map(([name, [lat, lon]]) => [name, [lat, 14.04 - lon]] as const);
  return {
    ...sketch,
    nodes: Object.fromEntries(nodes),
    ways: sketch.ways.map((way) => ({ ...way, tags: turned(way.tags ?? {}) })),
    restrictions: (sketch.restrictions ?? []).map((one) => ({ ...one, from: one.to, to: one.from })),
  };
}

function turned({ oneway, 'motor_vehicle:forward': closed, ...tags }: Tags): Tags {
  return {
    ...tags,
    ...(oneway !== undefined && { oneway: oneway === '-1' ? 'yes' : '-1' }),
    ...(closed !== undefined && { 'motor_vehicle:backward': closed }),
  };
}

/** Rules that hold the same from both sides, and no points that are judged by the road that leads up to them. */
export function evenHanded(sketch: MapSketch): MapSketch {
  const nodeTags = Object.entries(sketch.nodeTags ?? {}).filter(([, tags]) => tags['highway'] !== undefined);
  return {
    ...sketch,
    nodeTags: Object.fromEntries(nodeTags),
    restrictions: (sketch.restrictions ?? []).filter(({ tags }) => tags['restriction']?.startsWith('no_')),
  };
}

/** Other ids, ways and nodes in another order. */
export function renumbered(sketch: MapSketch): MapSketch {
  const id = (way: number) => 100_000 - 7 * way;
  return {
    ...sketch,
    nodes: Object.fromEntries(Object.entries(sketch.nodes).reverse()),
    ways: sketch.ways.map((way) => ({ ...way, id: id(way.id) })).reverse(),
    restrictions: (sketch.restrictions ?? [])
      .map((one) => ({
        ...one,
        from: id(one.from),
        to: id(one.to),
        via: typeof one.via === 'number' ? id(one.via) : one.via,
      }))
      .reverse(),
  };
}

/** With a part that nothing leads to, a little aside. */
export function withIsland(sketch: MapSketch): MapSketch {
  const own: [string, readonly [number, number]][] = [
    ['far 1', [50.2, 7.01]],
    ['far 2', [50.2, 7.02]],
    ['far 3', [50.21, 7.02]],
  ];
  const ways = [own.map(([name]) => name), ['far 3', 'far 1']].map((refs, i) => ({
    id: 900_000 + i,
    refs,
    tags: { highway: 'residential' },
  }));
  return {
    ...sketch,
    nodes: { ...sketch.nodes, ...Object.fromEntries(own) },
    ways: [...ways, ...sketch.ways],
  };
}

/** Every way that no restriction names in two, cut where a new node lies in its first piece. */
export function split(sketch: MapSketch): MapSketch {
  const named = new Set((sketch.restrictions ?? []).flatMap(({ from, via, to }) => [from, via, to]));
  const nodes = { ...sketch.nodes };
  const ways = sketch.ways.flatMap((way): Way[] => {
    const [a = '', b = '', ...rest] = way.refs;
    if (named.has(way.id)) return [way];
    const [from, to] = [sketch.nodes[a] ?? [0, 0], sketch.nodes[b] ?? [0, 0]];
    const middle = `cut ${way.id}`;
    nodes[middle] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
    return [
      { ...way, refs: [a, middle] },
      { ...way, id: way.id + 500_000, refs: [middle, b, ...rest] },
    ];
  });
  return { ...sketch, nodes, ways };
}

/** With some ways closed to motor vehicles. */
export function barred(sketch: MapSketch, ids: ReadonlySet<number>): MapSketch {
  const closed = (way: Way) =>
    ids.has(way.id) ? { ...way, tags: { ...way.tags, motor_vehicle: 'no' } } : way;
  return { ...sketch, ways: sketch.ways.map(closed) };
}
