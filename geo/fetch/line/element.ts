import { isReadable } from '../../roads/read-json.ts';

/** What a map consists of, as an answer lists it; only what our reader takes. */
export type Element = NodeElement | WayElement | RelationElement;

export interface NodeElement {
  readonly type: 'node';
  readonly id: number;
  readonly lat: number;
  readonly lon: number;
  readonly tags?: Readonly<Record<string, string>>;
}

export interface WayElement {
  readonly type: 'way';
  readonly id: number;
  readonly nodes: readonly number[];
  readonly geometry?: readonly ({ readonly lat: number; readonly lon: number } | null)[];
  readonly tags?: Readonly<Record<string, string>>;
}

export interface RelationElement {
  readonly type: 'relation';
  readonly id: number;
  readonly members?: readonly { readonly type: string; readonly ref: number; readonly role: string }[];
  readonly tags?: Readonly<Record<string, string>>;
}

/** What of each type is kept; the rest, such as versions and boxes, is more than was asked for. */
const FIELDS = {
  node: ['id', 'lat', 'lon', 'tags'],
  way: ['id', 'nodes', 'geometry', 'tags'],
  relation: ['id', 'members', 'tags'],
} as const;

/**
 * An element of an answer, bare of what nobody reads.
 * @returns `beside`: none of a map's, such as a count; `unfit`: one that cannot be read, such as one whose number is
 * larger than numbers are exact (2⁵³)
 */
export function readElement(raw: unknown): Element | 'beside' | 'unfit' {
  if (typeof raw !== 'object' || raw === null || !('type' in raw)) return 'unfit';
  const { type } = raw;
  if (type !== 'node' && type !== 'way' && type !== 'relation') return 'beside';
  const element: Record<string, unknown> = { type };
  for (const field of FIELDS[type]) {
    const value = (raw as Record<string, unknown>)[field];
    if (value !== undefined) element[field] = value;
  }
  // places that do not go with the nodes place nothing
  if (lengthOf(element['geometry']) !== lengthOf(element['nodes'])) delete element['geometry'];
  return isElement(element) ? element : 'unfit';
}

function lengthOf(list: unknown): number {
  return Array.isArray(list) ? list.length : 0;
}

function isElement(element: unknown): element is Element {
  return isReadable(element);
}
