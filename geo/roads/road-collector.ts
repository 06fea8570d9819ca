import { append } from '../lists.ts';
import { type Box, BoxMaker } from './box.ts';
import { grown, IdTable } from './id-table.ts';
import {
  isArea,
  isNearOnly,
  isRestriction,
  isStandingNode,
  isZone,
  mayBeEdge,
  mayKeepWay,
  mayReachFar,
  saysNothing,
  wayKind,
} from './keep.ts';
import type { Mask } from './mask.ts';
import { type Tags, type TurnRestriction, WAY_KIND, type WayKind } from './roads.ts';
import type { MapSink, Member, NodeBatch, RawRelation, RawWay } from './sink.ts';

/** A way worth keeping, its nodes still by OSM id. */
export interface KeptWay {
  readonly id: number;
  readonly kind: WayKind;
  readonly tags: Tags;
  readonly refs: Float64Array;
}

/** A relation whose tags its outer ways are given. */
interface Area {
  readonly tags: Tags;
  readonly outer: readonly number[];
}

/**
 * Collects what is worth keeping from any number of files.
 *
 * Nodes within reach are kept as they come; roads are kept when they touch one of them, most of what lies around
 * only when its box comes near, zones and ferries always. So ways read before their nodes, and edges of zones read
 * before their relation, must be heard again (`needsWaysAgain`), and nodes of kept ways out of reach must be
 * fetched by a pass of their own (`missingNodes`). With no mask everything is kept and neither is needed.
 */
export class RoadCollector {
  readonly nodes: IdTable;
  lat: Float64Array<ArrayBuffer>;
  lon: Float64Array<ArrayBuffer>;
  readonly nodeTags = new Map<number, Tags>();
  readonly ways = new Map<number, KeptWay>();
  readonly restrictions = new Map<number, TurnRestriction>();
  /** nodes that two files place more than a metre apart, ways that two files draw differently */
  readonly differing = new Set<string>();
  /** ways that two files tag differently */
  readonly contradicted = new Set<number>();

  private readonly mask: Mask | undefined;
  private readonly areas: Area[] = [];
  /** ways that mean nothing by themselves but may be the edge of an area */
  private readonly edges = new Map<number, Float64Array>();
  /** edges of zones that no way within reach is */
  private readonly wanted = new Set<number>();
  /** ferries of which no node lies within reach; a leg of theirs may yet cross it */
  private readonly farFerries = new Set<number>();
  private sawWay = false;
  private nodeAfterWay = false;

  /** @param roomForNodes how many may come, where that is known: it then need not grow */
  constructor(mask?: Mask, roomForNodes = 1024) {
    this.mask = mask;
    this.nodes = new IdTable(roomForNodes);
    this.lat = new Float64Array(roomForNodes);
    this.lon = new Float64Array(roomForNodes);
  }

  /** Hears everything. */
  readonly all: MapSink = {
    nodes: (batch) => this.takeNodes(batch),
    way: (way) => this.takeWay(way),
    relation: (relation) => this.takeRelation(relation),
  };

  /** Hears ways and relations once more, now that all nodes are known. */
  waysAgain(): MapSink {
    this.areas.length = 0;
    return { way: (way) => this.takeWay(way), relation: (relation) => this.takeRelation(relation) };
  }

  needsWaysAgain(): boolean {
    if (this.mask === undefined) return false;
    for (const { tags, outer } of this.areas)
      if (isZone(tags)) for (const id of outer) if (!this.refsOf(id)) this.wanted.add(id);
    return this.nodeAfterWay || this.wanted.size > 0;
  }

  /** Hears nothing but nodes that kept ways lack; undefined when none is lacking. */
  missingNodes(): MapSink | undefined {
    const lacking = new IdTable();
    for (const { refs } of this.keptWays())
      for (let i = 0; i < refs.length; i++) if (this.nodes.indexOf(refs[i]!) < 0) lacking.add(refs[i]!);
    if (lacking.count === 0 || this.mask === undefined) return undefined;
    return {
      nodes: (batch) => {
        for (let i = 0; i < batch.count; i++) if (lacking.indexOf(batch.id[i]!) >= 0) this.addNode(batch, i);
      },
    };
  }

  /** Kept ways, then the edges of areas with their area's tags; all their nodes are fetched. */
  keptWays(): KeptWay[] {
    const kept = [...this.ways.values()];
    for (const { tags, outer } of this.areas) {
      const edges: KeptWay[] = [];
      for (const id of outer) {
        const refs = this.refsOf(id);
        if (refs) edges.push({ id, kind: WAY_KIND.around, tags, refs });
      }
      // all edges of an area or none: half an outline encloses nothing
      if (!isNearOnly(tags) || this.comesNear(edges.map((edge) => edge.refs))) append(kept, edges);
    }
    return kept;
  }

  /** The same without ferries that turned out to pass elsewhere. To be asked when no node is lacking any more. */
  waysWithinReach(): KeptWay[] {
    const { mask } = this;
    return this.keptWays().filter(
      ({ id, kind, refs }) =>
        !mask ||
        kind !== WAY_KIND.ferry ||
        !this.farFerries.has(id) ||
        refs.some((ref, i) => i > 0 && meets(mask, this.boxOf([[refs[i - 1]!, ref]]), 'reach')),
    );
  }

  private refsOf(id: number): Float64Array | undefined {
    return this.edges.get(id) ?? this.ways.get(id)?.refs;
  }

  private comesNear(lines: readonly ArrayLike<number>[]): boolean {
    return !this.mask || meets(this.mask, this.boxOf(lines), 'near');
  }

  /** Of the nodes known so far. */
  private boxOf(lines: readonly ArrayLike<number>[]): Box | undefined {
    const maker = new BoxMaker();
    for (const refs of lines)
      for (let i = 0; i < refs.length; i++) {
        const node = this.nodes.indexOf(refs[i]!);
        if (node >= 0) maker.add(this.lat[node]!, this.lon[node]!);
      }
    return maker.box();
  }

  private takeNodes(batch: NodeBatch): void {
    const { mask } = this;
    const { lat, lon } = batch;
    for (let i = 0; i < batch.count; i++)
      if (mask === undefined || mask.has(lat[i]!, lon[i]!)) this.addNode(batch, i);
  }

  private addNode(batch: NodeBatch, i: number): void {
    const tags = batch.tags(i);
    this.place(batch.id[i]!, batch.lat[i]!, batch.lon[i]!, tags);
  }

  private place(id: number, lat: number, lon: number, tags?: Tags): void {
    const { nodes } = this;
    const before = nodes.count;
    const index = nodes.add(id);
    if (nodes.count > before) {
      if (this.sawWay) this.nodeAfterWay = true;
      if (index >= this.lat.length) {
        this.lat = grown(this.lat);
        this.lon = grown(this.lon);
      }
      this.lat[index] = lat;
      this.lon[index] = lon;
    } else if (Math.abs(this.lat[index]! - lat) > 1e-5 || Math.abs(this.lon[index]! - lon) > 1e-5)
      this.differing.add(`n${id}`);
    if (tags && !saysNothing(tags) && !this.nodeTags.has(index)) this.nodeTags.set(index, tags);
  }

  private takeWay(way: RawWay): void {
    this.sawWay = true;
    const touches = this.touches(way);
    // most ways of a large file lie elsewhere: their tags are not even decoded
    if (!touches && !this.wanted.has(way.id) && !reachesFar(way)) return;
    const tags = way.hasKey(mayKeepWay) ? way.tags() : undefined;
    this.placeLocated(way);
    const kind = tags && this.kindWithin(way, tags, touches);
    if (tags === undefined || kind === undefined) {
      if (mayBeEdge(tags)) this.edges.set(way.id, way.refs.slice(0, way.count));
      return;
    }
    const refs = way.refs.slice(0, way.count);
    if (touches) this.farFerries.delete(way.id);
    else if (kind === WAY_KIND.ferry) this.farFerries.add(way.id);
    const known = this.ways.get(way.id);
    if (known) {
      if (!sameRefs(known.refs, refs)) this.differing.add(`w${way.id}`);
      if (!sameTags(known.tags, tags)) this.contradicted.add(way.id);
      // whichever file is the newer: a limit that only one of them has is not lost, whatever their order
      if (this.resolved(known.refs) >= this.resolved(refs)) {
        this.ways.set(way.id, { ...known, tags: { ...tags, ...known.tags } });
        return;
      }
      this.ways.set(way.id, { id: way.id, kind, tags: { ...known.tags, ...tags }, refs });
      return;
    }
    this.ways.set(way.id, { id: way.id, kind, tags, refs });
  }

  /** What the way is to the drive, undefined where it is nothing or too far off to be it. */
  private kindWithin(way: RawWay, tags: Tags, touches: boolean): WayKind | undefined {
    if (!touches && !reachesFar(way)) return undefined;
    const kind = wayKind(tags);
    if (kind !== WAY_KIND.around || !isNearOnly(tags)) return kind;
    return this.comesNear([way.refs.subarray(0, way.count)]) ? kind : undefined;
  }

  private touches(way: RawWay): boolean {
    const { mask } = this;
    if (mask === undefined) return true;
    for (let i = 0; i < way.count; i++) if (this.nodes.indexOf(way.refs[i]!) >= 0) return true;
    if (way.lat && way.lon)
      for (let i = 0; i < way.count; i++) if (mask.has(way.lat[i]!, way.lon[i]!)) return true;
    return false;
  }

  /** Places that come with the way stand for nodes the file does not list. */
  private placeLocated({ refs, count, lat, lon }: RawWay): void {
    if (!lat || !lon) return;
    for (let i = 0; i < count; i++)
      if (Math.abs(lat[i]!) <= 90 && Math.abs(lon[i]!) <= 180) this.place(refs[i]!, lat[i]!, lon[i]!);
  }

  private resolved(refs: Float64Array): number {
    let count = 0;
    for (let i = 0; i < refs.length; i++) if (this.nodes.indexOf(refs[i]!) >= 0) count++;
    return count;
  }

  private takeRelation({ id, tags, members }: RawRelation): void {
    if (isRestriction(tags)) this.restrictions.set(id, turnRestriction(id, tags, members()));
    else if (isArea(tags)) this.areas.push({ tags, outer: outerWays(members()) });
  }

  /** Whether a node of its own is worth keeping beside those of kept ways. */
  stands(index: number): boolean {
    const tags = this.nodeTags.get(index);
    return tags !== undefined && isStandingNode(tags);
  }
}

function reachesFar(way: RawWay): boolean {
  if (!way.hasKey(mayReachFar)) return false;
  const tags = way.tags();
  return isZone(tags) || wayKind(tags) === WAY_KIND.ferry;
}

function meets(mask: Mask, box: Box | undefined, within: 'reach' | 'near'): boolean {
  return box !== undefined && mask.meets(box, within);
}

function sameTags(a: Tags, b: Tags): boolean {
  const keys = Object.keys(a);
  return keys.length === Object.keys(b).length && keys.every((key) => a[key] === b[key]);
}

function sameRefs(a: Float64Array, b: Float64Array): boolean {
  return a.length === b.length && a.every((ref, i) => ref === b[i]);
}

function outerWays(members: readonly Member[]): number[] {
  const outer = members.filter(
    (member) => member.type === 'way' && (member.role === 'outer' || member.role === ''),
  );
  // a way named again and again is one edge
  return [...new Set(outer.map((member) => member.id))];
}

function turnRestriction(id: number, tags: Tags, members: readonly Member[]): TurnRestriction {
  const of = (role: string, type: Member['type']) =>
    members.filter((member) => member.role === role && member.type === type).map((member) => member.id);
  return {
    id,
    from: of('from', 'way'),
    to: of('to', 'way'),
    viaNodes: of('via', 'node'),
    viaWays: of('via', 'way'),
    tags,
  };
}
