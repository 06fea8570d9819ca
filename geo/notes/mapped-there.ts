import { wayAlong } from '../graph/road-graph.ts';
import { mappedOn } from '../roads/mapped-on.ts';
import type { Roads, Tags } from '../roads/roads.ts';
import type { Quantity } from '../tags/limit-key.ts';
import { limitClaims } from '../tags/limits.ts';
import { heldRoad } from './held-road.ts';
import type { OnWay } from './place-note.ts';

/** A figure that the map has. */
export interface MappedFigure {
  readonly key: string;
  readonly text: string;
  /** metres or kilograms */
  readonly value: number;
}

/** The lowest figure of one quantity that is mapped where a note holds, on the road or on points of it, in either direction. */
export function mappedThere(
  on: readonly OnWay[],
  quantity: Extract<Quantity, 'height' | 'width' | 'mass'>,
  roads: Roads,
): MappedFigure | undefined {
  const found = tagsThere(on, roads)
    .flatMap((tags) => [true, false].flatMap((forward) => limitClaims({ tags, forward }, [quantity])))
    .flatMap(({ key, text, binding, reading }) =>
      binding === 'always' && reading.kind === 'value' ? [{ key, text, value: reading.value }] : [],
    );
  return found.sort((a, b) => a.value - b.value)[0];
}

function tagsThere(on: readonly OnWay[], roads: Roads): Tags[] {
  const { nodes, ways } = roads;
  return heldRoad(on, roads).flatMap(({ way, fromM, toM }) => {
    const along = wayAlong(roads, way);
    const points = [...along].flatMap((m, ref) => {
      const tags = nodes.tags.get(ways.refs[ways.start[way]! + ref]!);
      return m < fromM || m > toM || tags === undefined ? [] : [tags];
    });
    return [mappedOn({ ways }, way), ...points];
  });
}
