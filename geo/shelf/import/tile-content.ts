import type { BlockContent, BlockRelation } from '../block.ts';
import { EDGE, LAYER } from '../layers.ts';
import { ByteSets } from './byte-sets.ts';
import type { ByteStore } from './byte-store.ts';
import { RELATION } from './choose.ts';
import type { RoadCells } from './grid.ts';
import { boxOfLocated, newLocated } from './located.ts';
import { readNode } from './node-record.ts';
import type { RelationRecord } from './relation-record.ts';
import { TileNodes } from './tile-nodes.ts';
import type { TileGroup } from './tile-record.ts';
import { type Membership, readPlaces, WayRecord } from './way-record.ts';
import { WayTiles } from './way-tiles.ts';

/** Which relations a layer holds, as a sum of RELATION. */
const RELATIONS_IN: Readonly<Record<number, number>> = {
  [LAYER.wide]: RELATION.restriction + RELATION.area + RELATION.route,
  [LAYER.far]: RELATION.zone,
  [LAYER.draw8]: RELATION.drawn8,
  [LAYER.draw5]: RELATION.drawn5,
};

/** Where the relations of the source are found, and where its roads lie. */
export interface TileSources {
  relationAt(at: number): RelationRecord;
  readonly roads: RoadCells;
}

/** Makes blocks of records, one tile after the other. */
export class TileContent {
  private readonly sources: TileSources;
  private readonly sets = new ByteSets();
  private readonly nodes = new TileNodes();
  private readonly record = new WayRecord();
  private readonly located = newLocated();
  private readonly tiles = new WayTiles();
  private ids = new Float64Array(4096);
  private refs = new Uint32Array(16384);
  private refCount = 0;
  private relations = new Map<number, Set<number>>();

  constructor(sources: TileSources) {
    this.sources = sources;
  }

  /** The block of one tile; undefined where nothing of it is kept. Good until the next call. */
  of(group: TileGroup, store: ByteStore): BlockContent | undefined {
    this.sets.clear();
    this.nodes.clear();
    this.relations = new Map();
    this.refCount = 0;
    const ways = this.readWays(group, store);
    const tagged = this.readNodes(group, store);
    if (ways.id.length === 0 && tagged.length === 0) return undefined;
    const relations = this.readRelations(group.layer);
    const { id, lat, lon, rank } = this.nodes.inOrder();
    const refs = this.refs.subarray(0, this.refCount);
    for (let i = 0; i < refs.length; i++) refs[i] = rank[refs[i]!]!;
    // by id they came; those that a way brought before them lie elsewhere in the list, but in the same order
    const places = tagged.map(({ node, set }) => ({ node: rank[node]!, set }));
    return {
      sets: this.sets.sets,
      nodes: {
        count: id.length,
        id,
        lat,
        lon,
        tagged: {
          node: Uint32Array.from(places, ({ node }) => node),
          set: Uint32Array.from(places, ({ set }) => set),
        },
      },
      ways: {
        count: ways.id.length,
        id: Float64Array.from(ways.id),
        kind: Uint8Array.from(ways.kind),
        set: Uint32Array.from(ways.set),
        start: Uint32Array.from(ways.start),
        refs,
      },
      relations,
    };
  }

  private readWays({ layer, ways }: TileGroup, store: ByteStore) {
    const { record } = this;
    const id: number[] = [];
    const kind: number[] = [];
    const set: number[] = [];
    const start = [0];
    for (const at of ways) {
      store.at = at;
      record.read(store);
      const last = id.length - 1;
      const again = last >= 0 && id[last] === record.id;
      if (!again && !this.addWay(layer, store)) continue;
      this.noteRelations(layer, record.memberships);
      if (!again) {
        id.push(record.id);
        kind.push(record.kind);
        set.push(this.sets.add(store.bytes, record.tagsFrom, record.tagsTo));
        start.push(this.refCount);
      } else if (kind[last] === EDGE && record.kind !== EDGE) {
        kind[last] = record.kind;
        set[last] = this.sets.add(store.bytes, record.tagsFrom, record.tagsTo);
      }
    }
    return { id, kind, set, start };
  }

  /** Takes in the nodes of the record just read, unless it is of those that no road comes near. */
  private addWay(layer: number, store: ByteStore): boolean {
    const { record, located } = this;
    const { count } = record;
    if (this.ids.length < count) this.ids = new Float64Array(count * 2);
    record.readRefs(store, this.ids);
    readPlaces(store, count, located);
    if (record.nearOnly && (layer === LAYER.wide || layer === LAYER.near) && !this.staysNear()) return false;
    if (this.refs.length < this.refCount + count) {
      const larger = new Uint32Array((this.refCount + count) * 2);
      larger.set(this.refs);
      this.refs = larger;
    }
    const { lat, lon } = located;
    for (let i = 0; i < count; i++)
      this.refs[this.refCount++] = this.nodes.add(this.ids[i]!, lat[i]!, lon[i]!);
    return true;
  }

  private staysNear(): boolean {
    if (this.record.memberships.some((one) => (one.as & RELATION.area) !== 0)) return true;
    const box = boxOfLocated(this.located);
    if (box === undefined) return false;
    const { fromX, toX, fromY, toY } = this.tiles.cellsOf(box);
    return this.sources.roads.near(fromX, toX, fromY, toY);
  }

  private readNodes({ nodes }: TileGroup, store: ByteStore): { node: number; set: number }[] {
    const tagged: { node: number; set: number }[] = [];
    let before = Number.NaN;
    for (const at of nodes) {
      store.at = at;
      const { id, lat, lon, tagsFrom, tagsTo } = readNode(store);
      if (id === before) continue;
      before = id;
      tagged.push({ node: this.nodes.add(id, lat, lon), set: this.sets.add(store.bytes, tagsFrom, tagsTo) });
    }
    return tagged;
  }

  private noteRelations(layer: number, memberships: readonly Membership[]): void {
    const wanted = RELATIONS_IN[layer] ?? 0;
    for (const { relation, member, as } of memberships) {
      if ((as & wanted) === 0) continue;
      const there = this.relations.get(relation);
      if (there) there.add(member);
      else this.relations.set(relation, new Set([member]));
    }
  }

  private readRelations(layer: number): BlockRelation[] {
    const thinned = layer === LAYER.draw8 || layer === LAYER.draw5;
    return [...this.relations]
      .map(([at, places]) => {
        const { id, as, tags, drawnTags, members } = this.sources.relationAt(at);
        const here = [...places].sort((a, b) => a - b);
        return {
          id,
          tags: thinned ? drawnTags : tags,
          members: as === RELATION.restriction ? members : here.map((place) => members[place]!),
        };
      })
      .sort((a, b) => a.id - b.id)
      .map(({ id, tags, members }) => ({ id, set: this.sets.add(tags, 0, tags.length), members }));
  }
}
