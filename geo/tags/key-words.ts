import type { Direction } from './driven.ts';

/** Parts of a key that make it a remark about a limit, not a limit. */
const REMARKS = new Set([
  'signed',
  'sign',
  'source',
  'note',
  'comment',
  'description',
  'reason',
  'ref',
  'url',
  'website',
  'wikidata',
  'wikipedia',
  'date',
  'check_date',
  'survey',
  'surveyed',
  'lastcheck',
  'fixme',
  'FIXME',
  'traffic_sign',
  'start_date',
  'end_date',
  'type',
  'except',
  // military load classes are no tonnes
  'mlc',
]);

/** Whether a part of a key makes it a remark, which says nothing of the road. */
export function isRemark(part: string): boolean {
  return REMARKS.has(part) || part.startsWith('note_') || part.startsWith('source_');
}

/** First parts of keys about what is not there (any more, or yet), or not the carriageway of this way. */
const ELSEWHERE = new Set([
  'disused',
  'abandoned',
  'removed',
  'razed',
  'demolished',
  'destroyed',
  'was',
  'old',
  'historic',
  'proposed',
  'planned',
  'construction',
  'parking',
  'cycleway',
  'footway',
  'sidewalk',
  'shoulder',
  'verge',
  'crossing',
  'seamark',
  'waterway',
  'railway',
  'building',
  'amenity',
  'fuel',
  'destination',
  'service_times',
  'capacity',
]);

/** Whether a key's first part puts what it says somewhere else than on this carriageway now. */
export function isElsewhere(first: string): boolean {
  return ELSEWHERE.has(first);
}

/** Whether a part of a key names the other direction than the driven one. */
export function isOtherDirection(part: string, driven: Direction): boolean {
  return part !== driven && (part === 'forward' || part === 'backward');
}
