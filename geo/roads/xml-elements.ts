import { clip, quote } from '../units/text.ts';
import { MOST_PARTS } from './most-parts.ts';
import type { NodeBatcher } from './node-batcher.ts';
import type { Tags } from './roads.ts';
import { setTag } from './set-tag.ts';
import type { MapSink, Member } from './sink.ts';

type Attributes = Readonly<Record<string, string>>;

/** A number in decimal or scientific writing, nothing else: no hexadecimal, no empty text. */
const DECIMAL = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/u;

/** What stands beside nodes, ways and relations and is not asked for. */
const BESIDE = new Set(['area', 'bound', 'bounds', 'changeset', 'count', 'note', 'user']);
/** What a server adds inside an element: its box or its middle. */
const INSIDE = new Set(['bounds', 'center']);

interface Open {
  readonly kind: 'node' | 'way' | 'relation';
  readonly id: number;
  readonly lat: number;
  readonly lon: number;
  readonly tags: Record<string, string>;
  readonly refs: number[];
  readonly refLat: number[];
  readonly refLon: number[];
  readonly members: Member[];
}

/** Puts nodes, ways and relations together from their tags, `nd` and `member` lines. */
export class XmlElements {
  private readonly sink: MapSink;
  private readonly batcher: NodeBatcher;
  private readonly refuse: (message: string) => never;
  private current: Open | undefined;
  private placeless = 0;

  constructor(sink: MapSink, batcher: NodeBatcher, refuse: (message: string) => never) {
    this.sink = sink;
    this.batcher = batcher;
    this.refuse = refuse;
  }

  open(name: string, attributes: Attributes): void {
    if (name !== 'node' && name !== 'way' && name !== 'relation') {
      if (!BESIDE.has(name))
        this.refuse(
          `it has an element ${call(name, attributes)}, which no OSM file has; its name may be misspelt`,
        );
      return;
    }
    // editors keep what they will delete; history answers hold what is gone
    if (attributes['action'] === 'delete' || attributes['visible'] === 'false') return;
    const id = this.id(attributes['id'], `a ${name}`);
    let lat = Number.NaN;
    let lon = Number.NaN;
    if (name === 'node') {
      if (attributes['lat'] === undefined && attributes['lon'] === undefined) {
        this.placeless++;
        return;
      }
      lat = this.degrees(attributes['lat'], 90, `node ${id}`);
      lon = this.degrees(attributes['lon'], 180, `node ${id}`);
    }
    this.current = { kind: name, id, lat, lon, tags: {}, refs: [], refLat: [], refLon: [], members: [] };
  }

  child(name: string, attributes: Attributes): void {
    const { current } = this;
    if (!current) return;
    if (name === 'tag') {
      const { k, v } = attributes;
      if (k === undefined || v === undefined)
        throw this.refuse(`${current.kind} ${current.id} has a tag without key or value`);
      setTag(current.tags, k, v);
    } else if (INSIDE.has(name)) return;
    else if (name === 'nd' && current.kind === 'way') this.addRef(current, attributes);
    else if (name === 'member' && current.kind === 'relation') {
      const { type } = attributes;
      const id = this.id(attributes['ref'], `a member of relation ${current.id}`);
      if (type === 'node' || type === 'way' || type === 'relation')
        current.members.push({ type, id, role: attributes['role'] ?? '' });
      else this.refuse(`relation ${current.id} has a member of no known kind`);
      this.refuseTooMany(current, current.members.length, 'members');
    } else
      this.refuse(
        `${current.kind} ${current.id} has an element ${call(name, attributes)}, which ${current.kind}s do not have; its name may be misspelt`,
      );
  }

  /** An element within a tag, node reference or member: only places of a member's nodes stand there. */
  grandchild(name: string, parent: string, attributes: Attributes): void {
    const { current } = this;
    if (current && !(parent === 'member' && name === 'nd'))
      this.refuse(
        `${current.kind} ${current.id} has an element ${call(name, attributes)} inside a ${parent}`,
      );
  }

  /** Text: an element that lost its first bracket is text. */
  text(piece: string): void {
    const { current } = this;
    if (current && piece.trim() !== '')
      this.refuse(`${current.kind} ${current.id} has the text ${quote(piece)} between its elements`);
  }

  close(): void {
    const { current } = this;
    this.current = undefined;
    if (!current) return;
    const { id, tags } = current;
    if (current.kind === 'node') {
      this.batcher.add(id, current.lat, current.lon, isEmpty(tags) ? undefined : tags);
      return;
    }
    this.batcher.flush();
    if (current.kind === 'relation') this.sink.relation?.({ id, tags, members: () => current.members });
    else {
      const located = current.refLat.some((lat) => !Number.isNaN(lat));
      this.sink.way?.({
        id,
        refs: Float64Array.from(current.refs),
        count: current.refs.length,
        lat: located ? Float64Array.from(current.refLat) : undefined,
        lon: located ? Float64Array.from(current.refLon) : undefined,
        hasKey: (fits) => Object.keys(tags).some(fits),
        tags: () => tags,
      });
    }
  }

  /** Sentences about what was passed over. */
  notes(): string[] {
    if (this.placeless === 0) return [];
    return [`${this.placeless} of its nodes have no place and are left out.`];
  }

  private refuseTooMany({ kind, id }: Open, count: number, what: string): void {
    if (count > MOST_PARTS) this.refuse(`${kind} ${id} has more than ${MOST_PARTS} ${what}`);
  }

  private addRef(way: Open, attributes: Attributes): void {
    const { lat, lon } = attributes;
    way.refs.push(this.id(attributes['ref'], `a node of way ${way.id}`));
    this.refuseTooMany(way, way.refs.length, 'nodes');
    const placed = lat !== undefined && lon !== undefined;
    way.refLat.push(placed ? this.degrees(lat, 90, `way ${way.id}`) : Number.NaN);
    way.refLon.push(placed ? this.degrees(lon, 180, `way ${way.id}`) : Number.NaN);
  }

  private id(text: string | undefined, what: string): number {
    const id = text !== undefined && /^[+-]?\d+$/u.test(text) ? Number(text) : Number.NaN;
    if (Number.isSafeInteger(id)) return id;
    return this.refuse(`${what} has the id "${text?.slice(0, 30) ?? ''}", which is no whole number`);
  }

  private degrees(text: string | undefined, most: number, what: string): number {
    const value = text !== undefined && DECIMAL.test(text) ? Number(text) : Number.NaN;
    if (Math.abs(value) <= most) return value;
    return this.refuse(`${what} has the coordinate "${text?.slice(0, 30) ?? ''}", which is not on Earth`);
  }
}

function isEmpty(tags: Tags): boolean {
  for (const _ in tags) return false;
  return true;
}

/** `<tbg k="maxheight" v="2.5">`, its first attributes. */
function call(name: string, attributes: Attributes): string {
  const said = Object.entries(attributes).map(([key, value]) => ` ${clip(key, 20)}=${quote(value, 40)}`);
  return `<${clip(name, 40)}${said.slice(0, 2).join('')}>`;
}
