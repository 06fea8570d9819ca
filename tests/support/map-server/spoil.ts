import type { Answer } from './run-query.ts';

/** Ways in which an answer that is whole as JSON is yet not what it should be. */

type Elements = Answer['elements'];

export function remark(answer: Answer, part: 'none' | 'half' | 'all'): Answer {
  const { elements } = answer;
  const kept = { none: [], half: elements.slice(0, elements.length / 2), all: elements }[part];
  return {
    ...answer,
    elements: kept,
    remark: 'runtime error: Query timed out in "query" at line 3 after 60 seconds.',
  };
}

export function empty(answer: Answer): Answer {
  return { ...answer, elements: [] };
}

/** As of a server that takes latitude for longitude, or holds another part of the Earth. */
export function elsewhere(answer: Answer): Answer {
  return edit(answer, (element) =>
    'lat' in element ? { ...element, lat: element['lon'], lon: element['lat'] } : element,
  );
}

export function dated(answer: Answer, date: string | undefined): Answer {
  return { ...answer, osm3s: date === undefined ? {} : { timestamp_osm_base: date } };
}

export function doubled(answer: Answer): Answer {
  return { ...answer, elements: [...answer.elements, ...answer.elements] };
}

/** Every so manieth node is missing. */
export function lackingNodes(answer: Answer, each: number): Answer {
  let count = 0;
  return {
    ...answer,
    elements: answer.elements.filter(({ type }) => type !== 'node' || ++count % each !== 0),
  };
}

/** Ways with places of which some are null, as where a box was asked for. */
export function nullGeometry(answer: Answer): Answer {
  return edit(answer, (element) =>
    Array.isArray(element['nodes']) ? { ...element, geometry: element['nodes'].map(() => null) } : element,
  );
}

export function withCount(answer: Answer): Answer {
  const count = { type: 'count', id: 0, tags: { nodes: '1', ways: '2', relations: '0', total: '3' } };
  return { ...answer, elements: [count, ...answer.elements] };
}

/** One way whose number is larger than numbers are exact. */
export function hugeId(answer: Answer): Answer {
  const huge = { type: 'way', id: 2 ** 53 + 2, nodes: [1, 2], tags: { highway: 'residential' } };
  return { ...answer, elements: [huge, ...answer.elements] };
}

function edit(answer: Answer, change: (element: Elements[number]) => Elements[number]): Answer {
  return { ...answer, elements: answer.elements.map(change) };
}
