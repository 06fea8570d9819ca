import type { Roads } from '../roads/roads.ts';
import type { Drive, Leg } from './drive.ts';

/**
 * The same drive on other roads, as read farther about it, without following it anew.
 * @returns undefined where one of its ways is not there just as it was
 */
export function ontoRoads(drive: Drive, from: Roads, to: Roads): Drive | undefined {
  const wayOf = wayFinder(drive, from, to);
  const legs: Leg[] = [];
  for (const leg of drive.legs) {
    if (leg.kind !== 'stretch') {
      legs.push(leg);
      continue;
    }
    const way = wayOf(leg.way);
    if (way === undefined) return undefined;
    legs.push({ ...leg, way });
  }
  return { ...drive, legs };
}

/** A way id may stand there several times: cut at the edge of an extract, or from several maps. */
function wayFinder(drive: Drive, from: Roads, to: Roads): (way: number) => number | undefined {
  const wanted = new Map<number, number[]>();
  for (const leg of drive.legs) if (leg.kind === 'stretch') wanted.set(from.ways.id[leg.way]!, []);
  for (let way = 0; way < to.ways.count; way++) wanted.get(to.ways.id[way]!)?.push(way);
  const known = new Map<number, number | undefined>();
  return (way) => {
    if (!known.has(way)) {
      const same = (wanted.get(from.ways.id[way]!) ?? []).filter((other) => isSame(from, way, to, other));
      known.set(way, same.length === 1 ? same[0] : undefined);
    }
    return known.get(way);
  };
}

/** Metres along a way are the same where it has the same nodes at the same places. */
function isSame(from: Roads, way: number, to: Roads, other: number): boolean {
  const [a, b] = [refsOf(from, way), refsOf(to, other)];
  if (a.length !== b.length || from.ways.kind[way] !== to.ways.kind[other]) return false;
  return a.every((node, i) => {
    const twin = b[i]!;
    return (
      from.nodes.id[node] === to.nodes.id[twin] &&
      from.nodes.lat[node] === to.nodes.lat[twin] &&
      from.nodes.lon[node] === to.nodes.lon[twin]
    );
  });
}

function refsOf({ ways: { refs, start } }: Roads, way: number): Uint32Array {
  return refs.subarray(start[way]!, start[way + 1]!);
}
