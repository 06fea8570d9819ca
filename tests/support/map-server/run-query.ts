import type { MapInMemory } from './map-in-memory.ts';
import type { Filter, Query, Statement } from './parse-query.ts';

interface Found {
  readonly node: Set<number>;
  readonly way: Set<number>;
  readonly rel: Set<number>;
  /** what areas were made of */
  readonly areaWay: Set<number>;
  readonly areaRel: Set<number>;
}

export interface Answer {
  readonly version: number;
  readonly generator: string;
  readonly osm3s: { readonly timestamp_osm_base?: string };
  readonly elements: readonly Record<string, unknown>[];
  readonly remark?: string;
}

/** Answers a question truly, from all that the map holds. */
export function runQuery(map: MapInMemory, query: Query, baseDate: string): Answer {
  const run = new Run(map);
  for (const statement of query.statements) run.do(statement);
  return {
    version: 0.6,
    generator: 'a server of the tests',
    osm3s: { timestamp_osm_base: baseDate },
    elements: run.elements,
  };
}

class Run {
  readonly elements: Record<string, unknown>[] = [];
  private readonly map: MapInMemory;
  private readonly sets = new Map<string, Found>();

  constructor(map: MapInMemory) {
    this.map = map;
  }

  do(statement: Statement): void {
    if (statement.is === 'out') this.out(this.set(statement.from), statement.what);
    else this.sets.set(statement.into, this.found(statement));
  }

  private found(statement: Exclude<Statement, { is: 'out' }>): Found {
    if (statement.is === 'in') {
      const { ways, relations } = this.map.holding(statement.lat, statement.lon);
      return { ...none(), areaWay: new Set(ways), areaRel: new Set(relations) };
    }
    if (statement.is === 'find')
      return { ...none(), [statement.type]: this.find(statement.type, statement.by) };
    const all = none();
    for (const part of statement.parts) {
      if (part.is === 'out') throw new Error('out within a union');
      const found = this.found(part);
      for (const name of Object.keys(all) as (keyof Found)[]) for (const id of found[name]) all[name].add(id);
    }
    return all;
  }

  private set(name: string): Found {
    const found = this.sets.get(name);
    if (!found) throw new Error(`no set ${name}`);
    return found;
  }

  private find(type: 'node' | 'way' | 'rel', by: readonly Filter[]): Set<number> {
    const links = by.filter((filter) => filter.is === 'of');
    const ids = links[0] ? this.linked(type, links[0]) : this.all(type);
    return new Set([...ids].filter((id) => by.every((filter) => this.fits(type, id, filter))));
  }

  private all(type: 'node' | 'way' | 'rel'): Iterable<number> {
    if (type === 'node') return this.map.file.nodes.keys();
    return type === 'way' ? this.map.ways.keys() : this.map.relations.keys();
  }

  private linked(type: 'node' | 'way' | 'rel', { link, set, role }: Filter & { is: 'of' }): Set<number> {
    const from = this.set(set);
    const { ways, relations } = this.map;
    if (link === 'w') return new Set([...from.way].flatMap((id) => ways.get(id)?.refs ?? []));
    if (link === 'pivot') return type === 'way' ? from.areaWay : from.areaRel;
    if (link === 'bw') {
      const uses = [...relations.values()].filter(({ members }) =>
        members.some((member) => member.type === 'way' && from.way.has(member.ref)),
      );
      return new Set(uses.map(({ id }) => id));
    }
    const members = [...from.rel].flatMap((id) => relations.get(id)?.members ?? []);
    const fit = members.filter(
      (member) => member.type === 'way' && (role === undefined || member.role === role),
    );
    return new Set(fit.map(({ ref }) => ref).filter((ref) => ways.has(ref)));
  }

  private fits(type: 'node' | 'way' | 'rel', id: number, filter: Filter): boolean {
    const { map } = this;
    switch (filter.is) {
      case 'of':
        return true;
      case 'tag': {
        const value = this.tagsOf(type, id)[filter.key];
        return value !== undefined && filter.fits(value);
      }
      case 'around':
        return map.around(filter).has(`${type[0]}${id}`);
      case 'box':
        return map.inBox(this.placesOf(type, id), filter);
      case 'members':
        return (map.relations.get(id)?.members.length ?? 0) <= filter.most;
    }
  }

  private tagsOf(type: 'node' | 'way' | 'rel', id: number): Readonly<Record<string, string>> {
    const { map } = this;
    if (type === 'node') return map.file.nodes.get(id)?.tags ?? {};
    return (type === 'way' ? map.ways : map.relations).get(id)?.tags ?? {};
  }

  private placesOf(type: 'node' | 'way' | 'rel', id: number) {
    const node = type === 'node' ? this.map.file.nodes.get(id) : undefined;
    if (node) return [node];
    const way = this.map.ways.get(id);
    return way ? this.map.lineOf(way) : [];
  }

  private out(found: Found, what: 'body' | 'tags'): void {
    const whole = what === 'body';
    const { nodes } = this.map.file;
    const tagged = (tags: Readonly<Record<string, string>>) => (Object.keys(tags).length > 0 ? { tags } : {});
    for (const id of sorted(found.node)) {
      const node = nodes.get(id);
      if (node) this.elements.push({ type: 'node', id, lat: node.lat, lon: node.lon, ...tagged(node.tags) });
    }
    for (const id of sorted(found.way)) {
      const { refs = [], tags = {} } = this.map.ways.get(id) ?? {};
      this.elements.push({ type: 'way', id, ...(whole ? { nodes: refs } : {}), ...tagged(tags) });
    }
    for (const id of sorted(found.rel)) {
      const { members = [], tags = {} } = this.map.relations.get(id) ?? {};
      this.elements.push({ type: 'relation', id, ...(whole ? { members } : {}), ...tagged(tags) });
    }
  }
}

function none(): Found {
  return { node: new Set(), way: new Set(), rel: new Set(), areaWay: new Set(), areaRel: new Set() };
}

function sorted(ids: ReadonlySet<number>): number[] {
  return [...ids].sort((a, b) => a - b);
}
