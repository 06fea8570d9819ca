import type { BlockRelation } from '../block.ts';
import type { TileBlock } from '../encode-block.ts';
import { LAYER } from '../layers.ts';
import { ByteSets } from './byte-sets.ts';
import type { ByteStore } from './byte-store.ts';
import { RELATION } from './choose.ts';
import type { RoadCells } from './grid.ts';
import { boxOfLocated, boxOfWhole, newLocated, newWayBox, type WholePlaces } from './located.ts';
import { readNode } from './node-record.ts';
import type { RelationRecord } from './relation-record.ts';
import { TileNodes } from './tile-nodes.ts';
import type { TileGroup } from './tile-record.ts';
import { type Membership, readPlaces, readWholePlaces, WayRecord } from './way-record.ts';
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
  private readonly whole: WholePlaces = { lat7: new Int32Array(4096), lon7: new Int32Array(4096) };
  private readonly tiles = new WayTiles();
  private readonly box = newWayBox();
  private ids = new Float64Array(4096);
  private refs = new Uint32Array(16384);
  private refCount = 0;
  private wayCount = 0;
  private wayId = new Float64Array(1024);
  private wayKind = new Uint8Array(1024);
  private waySet = new Uint32Array(1024);
  private wayStart = new Uint32Array(1025);
  private readonly relations = new Map<number, Set<number>>();

  constructor(sources: TileSources) {
    this.sources = sources;
  }

  /** The block of one tile; undefined where nothing of it is kept. Good until the next call. */
  of(group: TileGroup, store: ByteStore): TileBlock | undefined {
    this.sets.clear();
    this.nodes.clear();
    this.relations.clear();
    this.refCount = 0;
    this.readWays(group, store);
    const tagged = this.readNodes(group, store);
    const { wayCount } = this;
    if (wayCount === 0 && tagged.length === 0) return undefined;
    const relations = this.readRelations(group.layer);
    const { id, lat7, lon7, fine, rank } = this.nodes.inOrder();
    const { refs } = this;
    for (let i = 0; i < this.refCount; i++) refs[i] = rank[refs[i]!]!;
    const node = new Uint32Array(tagged.length / 2);
    const set = new Uint32Array(tagged.length / 2);
    // by id they came, so they are in order in the list too
    for (let i = 0; i < node.length; i++) {
      node[i] = rank[tagged[2 * i]!]!;
      set[i] = tagged[2 * i + 1]!;
    }
    return {
      sets: { count: this.sets.count, bytes: this.sets.store.bytes, start: this.sets.start },
      nodes: { count: this.nodes.count, id, lat7, lon7, fine, tagged: { node, set } },
      ways: {
        count: wayCount,
        id: this.wayId.subarray(0, wayCount),
        kind: this.wayKind.subarray(0, wayCount),
        set: this.waySet.subarray(0, wayCount),
        start: this.wayStart.subarray(0, wayCount + 1),
        refs: refs.subarray(0, this.refCount),
      },
      relations,
    };
  }

  private readWays({ layer, ways }: TileGroup, store: ByteStore): void {
    const { record } = this;
    this.wayCount = 0;
    if (this.wayId.length < ways.length) this.growWays(ways.length * 2);
    const { wayId, wayKind, waySet, wayStart } = this;
    for (const at of ways) {
      store.at = at;
      record.read(store);
      const last = this.wayCount - 1;
      // its own record comes first, those as the edge of an area behind it
      const again = last >= 0 && wayId[last] === record.id;
      if (!again && !this.addWay(layer, store)) continue;
      if (record.memberships.length > 0) this.noteRelations(layer, record.memberships);
      if (again) continue;
      const way = this.wayCount++;
      wayId[way] = record.id;
      wayKind[way] = record.kind;
      waySet[way] = this.sets.add(store.bytes, record.tagsFrom, record.tagsTo);
      wayStart[way + 1] = this.refCount;
    }
  }

  private growWays(room: number): void {
    this.wayId = new Float64Array(room);
    this.wayKind = new Uint8Array(room);
    this.waySet = new Uint32Array(room);
    this.wayStart = new Uint32Array(room + 1);
  }

  /** Takes in the nodes of the record just read, unless it is of those that no road comes near. */
  private addWay(layer: number, store: ByteStore): boolean {
    const { record, located } = this;
    const { count } = record;
    if (this.ids.length < count) this.ids = new Float64Array(count * 2);
    record.readRefs(store, this.ids);
    const whole = readWholePlaces(store, count, this.whole);
    if (!whole) readPlaces(store, count, located);
    if (record.nearOnly && (layer === LAYER.wide || layer === LAYER.near) && !this.staysNear(whole))
      return false;
    if (this.refs.length < this.refCount + count) {
      const larger = new Uint32Array((this.refCount + count) * 2);
      larger.set(this.refs);
      this.refs = larger;
    }
    const { ids, refs, nodes } = this;
    const { lat7, lon7 } = this.whole;
    for (let i = 0; i < count; i++)
      refs[this.refCount++] = whole
        ? nodes.add(ids[i]!, lat7[i]!, lon7[i]!)
        : nodes.addFine(ids[i]!, located.lat[i]!, located.lon[i]!);
    return true;
  }

  private staysNear(whole: boolean): boolean {
    const { record, located } = this;
    if (record.memberships.length > 0 && record.memberships.some((one) => (one.as & RELATION.area) !== 0))
      return true;
    const { box } = this;
    if (!(whole ? boxOfWhole(this.whole, 0, record.count, box) : boxOfLocated(located, box))) return false;
    const { fromX, toX, fromY, toY } = this.tiles.cellsOf(box);
    return this.sources.roads.near(fromX, toX, fromY, toY);
  }

  /** @returns place in the list of nodes and place of its set in turn */
  private readNodes({ nodes }: TileGroup, store: ByteStore): number[] {
    const tagged: number[] = [];
    let before = Number.NaN;
    for (const at of nodes) {
      store.at = at;
      const { id, lat, lon, tagsFrom, tagsTo } = readNode(store);
      if (id === before) continue;
      before = id;
      tagged.push(this.nodes.addFine(id, lat, lon), this.sets.add(store.bytes, tagsFrom, tagsTo));
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
