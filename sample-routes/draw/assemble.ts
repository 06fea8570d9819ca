import type { Point } from '../../geo/earth/point.ts';
import type { Tags } from '../plan/words.ts';
import { type District, FIRST_ID, type Member, type Node, type Relation, type Way } from './elements.ts';
import type { Line, Vertex } from './lines/line.ts';
import { item, toDegrees } from './lines/plane.ts';
import type { Sheet } from './sheet.ts';

/** Turns the drawing into OSM elements: lines cut into ways where their tags change or a turn is ruled. */
export function assemble(sheet: Sheet): District {
  const nodes: Node[] = [];
  const ids = new Map<Point, number>();
  const nodeOf = (vertex: Vertex): number => {
    const known = ids.get(vertex);
    if (known !== undefined) return known;
    const id = FIRST_ID.node + nodes.length;
    nodes.push({ id, ...toDegrees(vertex), tags: vertex.tags ?? {} });
    ids.set(vertex, id);
    return id;
  };
  const ways: Way[] = [];
  const waysOf = new Map<string, Way[]>();
  const add = (key: string, vertices: readonly Vertex[], tags: Tags) => {
    const way: Way = { id: FIRST_ID.way + ways.length, refs: vertices.map(nodeOf), tags };
    ways.push(way);
    waysOf.set(key, [...(waysOf.get(key) ?? []), way]);
    return way;
  };

  for (const line of sheet.lines)
    for (const run of runsOf(line)) add(line.key, run.vertices, { ...line.tags, ...run.tags });
  for (const area of sheet.areas) {
    const way = add('', area.ring, area.tags);
    ways[ways.length - 1] = { ...way, refs: [...way.refs, item(way.refs, 0)] };
  }
  for (const spot of sheet.spots) nodeOf(spot);

  const relations = sheet.restrictions.map((rule, i): Relation => {
    const via = nodeOf(rule.via);
    const touching = (key: string, role: string): Member => {
      const way = waysOf.get(key)?.find((one) => one.refs[0] === via || one.refs.at(-1) === via);
      if (way === undefined) throw new Error(`${key} does not end where its turn is ruled`);
      return { type: 'way', ref: way.id, role };
    };
    const members = [
      touching(rule.from, 'from'),
      { type: 'node', ref: via, role: 'via' } as const,
      touching(rule.to, 'to'),
    ];
    return { id: FIRST_ID.relation + i, members, tags: { type: 'restriction', ...rule.tags } };
  });
  return { nodes, ways, relations };
}

/** Pieces of a line with the same tags throughout. */
function runsOf(line: Line): { vertices: Vertex[]; tags: Tags }[] {
  const runs: { vertices: Vertex[]; tags: Tags; text: string }[] = [];
  for (const [i, tags] of line.seg.entries()) {
    const a = item(line.pts, i);
    const text = JSON.stringify(tags);
    const last = runs.at(-1);
    if (last !== undefined && last.text === text && !a.split) last.vertices.push(item(line.pts, i + 1));
    else runs.push({ vertices: [a, item(line.pts, i + 1)], tags, text });
  }
  return runs;
}
