import type { Roads, Tags } from '../../../geo/roads/roads.ts';

/** A piece of a walk: part of a way between two of its refs, in one direction. */
export interface WalkPiece {
  readonly way: number;
  readonly forward: boolean;
  /** refs passed, in driving order */
  readonly nodes: readonly number[];
}

/** Height that the test vehicle needs, metres. */
export const NEEDS_M = 3.05;

/**
 * Whether a whole walk may be driven, read off the raw tags by itself: knows only the tags of `randomNetwork`, and
 * nothing of graphs. The walk is for someone who begins on its first piece and ends on its last.
 */
export function isLegalWalk(walk: readonly WalkPiece[], roads: Roads): boolean {
  const tags = walk.map(({ way }) => roads.ways.tags[way] ?? {});
  const restricted = tags.map((one) => one['access'] !== undefined);
  const site = tags.map((one, i) => restricted[i] === true || one['highway'] === 'service');
  const inRun = (of: readonly boolean[], i: number) =>
    of.slice(0, i + 1).every(Boolean) || of.slice(i).every(Boolean);
  const waysOpen = walk.every(
    (piece, i) => mayDrive(piece, tags[i] ?? {}) && (restricted[i] !== true || inRun(restricted, i)),
  );
  return waysOpen && pointsOpen(walk, roads, site) && turnsOpen(walk, roads);
}

function mayDrive({ forward }: WalkPiece, tags: Tags): boolean {
  if (tags['oneway'] === 'yes' && !forward) return false;
  if (tags['oneway'] === '-1' && forward) return false;
  if (tags['motor_vehicle'] === 'no' || (forward && tags['motor_vehicle:forward'] === 'no')) return false;
  return Number(tags['maxheight'] ?? 9) >= NEEDS_M;
}

function pointsOpen(walk: readonly WalkPiece[], roads: Roads, site: readonly boolean[]): boolean {
  const atStart = (i: number) => site.slice(0, i + 1).every(Boolean);
  const atEnd = (i: number) => i < site.length && site.slice(i).every(Boolean);
  return walk.every(({ nodes }, i) => {
    const passed = i === walk.length - 1 ? nodes.slice(1, -1) : nodes.slice(1);
    return passed.every((node, k) => {
      const tags = roads.nodes.tags.get(node) ?? {};
      const handsOver = k === nodes.length - 2;
      if (Number(tags['maxheight'] ?? 9) < NEEDS_M) return false;
      const shut = tags['barrier'] === 'bollard' || tags['access'] === 'no' || tags['access'] === 'private';
      // where roads meet it may stand on the side road
      if (!shut || meeting(roads, node) > 2) return true;
      if (tags['access'] !== 'private') return false;
      return atStart(i) || atEnd(handsOver ? i + 1 : i);
    });
  });
}

const met = new WeakMap<Roads, Map<number, number>>();

/** How many nodes lie next to a node along any way. */
function meeting(roads: Roads, node: number): number {
  const known = met.get(roads) ?? new Map<number, number>();
  met.set(roads, known);
  const count = known.get(node) ?? countBeside(roads, node);
  known.set(node, count);
  return count;
}

function countBeside(roads: Roads, node: number): number {
  const beside = new Set<number>();
  for (let way = 0; way < roads.ways.count; way++)
    for (let at = roads.ways.start[way]!; at + 1 < roads.ways.start[way + 1]!; at++) {
      const [a, b] = [roads.ways.refs[at]!, roads.ways.refs[at + 1]!];
      if (a === node) beside.add(b);
      if (b === node) beside.add(a);
    }
  return beside.size;
}

function turnsOpen(walk: readonly WalkPiece[], roads: Roads): boolean {
  const id = ({ way }: WalkPiece) => roads.ways.id[way]!;
  for (let i = 1; i < walk.length; i++) {
    const [into, outOf] = [walk[i - 1], walk[i]];
    if (into === undefined || outOf === undefined) return false;
    const node = outOf.nodes[0]!;
    const back = into.way === outOf.way && [...into.nodes].reverse().join() === outOf.nodes.join();
    const turnsBack = back;
    if (turnsBack && roads.nodes.tags.get(node)?.['highway'] !== 'turning_circle') return false;
    for (const { from, to, viaNodes, tags } of roads.restrictions) {
      if (!viaNodes.includes(roads.nodes.id[node]!) || !from.includes(id(into))) continue;
      const rule = tags['restriction'] ?? '';
      const named = to.includes(id(outOf));
      if (rule.startsWith('only_') && !named && !turnsBack) return false;
      const meant = id(into) !== id(outOf) || turnsBack === (rule === 'no_u_turn');
      if (rule.startsWith('no_') && named && meant) return false;
    }
  }
  return roads.restrictions.every((one) => followsByWay(walk.map(id), one.from, one.viaWays, one));
}

/** No run of ways from, via, and one more breaks the rule; pieces of one way are one. */
function followsByWay(
  ids: readonly number[],
  from: readonly number[],
  via: readonly number[],
  { to, tags }: Roads['restrictions'][number],
): boolean {
  if (via.length === 0) return true;
  const ways = ids.filter((id, i) => id !== ids[i - 1]);
  const only = (tags['restriction'] ?? '').startsWith('only_');
  return ways.every((way, i) => {
    const next = ways[i + 2];
    if (!from.includes(way) || ways[i + 1] !== via[0] || next === undefined) return true;
    return to.includes(next) === only;
  });
}
