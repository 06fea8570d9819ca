import { grown, IdTable } from './id-table.ts';
import { isArea, isRestriction, isStandingNode, isZone, mayBeZone, mayKeepWay, wayKind } from './keep.ts';
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

/** Outer ways of an area wait here until its relation names them. */
interface Area {
  readonly tags: Tags;
  readonly outer: readonly number[];
}

/**
 * Gathers what is worth keeping from any number of files.
 *
 * Nodes within the mask are kept as they come; ways are kept when they touch one of them. So ways read before
 * their nodes must be heard again (`needsWaysAgain`), and nodes of kept ways outside the mask must be fetched
 * by a pass of their own (`lacksNodes`). With no mask everything is kept and neither is needed.
 */
export class Gather {
  readonly nodes = new IdTable();
  lat = new Float64Array(1024);
  lon = new Float64Array(1024);
  readonly nodeTags = new Map<number, Tags>();
  readonly ways = new Map<number, KeptWay>();
  readonly restrictions = new Map<number, TurnRestriction>();
  /** nodes that two files place more than a metre apart, ways that two files draw differently */
  readonly differing = new Set<string>();

  private readonly mask: Mask | undefined;
  private readonly areas: Area[] = [];
  /** ways that mean nothing by themselves but may be the edge of an area */
  private readonly edges = new Map<number, Float64Array>();
  private sawWay = false;
  private nodeAfterWay = false;

  constructor(mask?: Mask) {
    this.mask = mask;
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
    return this.mask !== undefined && this.nodeAfterWay;
  }

  /** Hears nothing but nodes that kept ways lack; undefined when none is lacking. */
  missingNodes(): MapSink | undefined {
    const lacking = new IdTable();
    for (const way of this.keptWays())
      for (const ref of way.refs) if (this.nodes.indexOf(ref) < 0) lacking.add(ref);
    if (lacking.count === 0 || this.mask === undefined) return undefined;
    return {
      nodes: (batch) => {
        for (let i = 0; i < batch.count; i++)
          if (lacking.indexOf(batch.id[i] as number) >= 0) this.addNode(batch, i);
      },
    };
  }

  /** Kept ways, then the edges of areas with their area's tags. */
  keptWays(): KeptWay[] {
    const kept = [...this.ways.values()];
    for (const { tags, outer } of this.areas)
      for (const id of outer) {
        const refs = this.edges.get(id) ?? this.ways.get(id)?.refs;
        if (refs) kept.push({ id, kind: WAY_KIND.around, tags, refs });
      }
    return kept;
  }

  private takeNodes(batch: NodeBatch): void {
    const { mask } = this;
    const { lat, lon } = batch;
    for (let i = 0; i < batch.count; i++)
      if (mask === undefined || mask.has(lat[i] as number, lon[i] as number)) this.addNode(batch, i);
  }

  private addNode(batch: NodeBatch, i: number): void {
    const tags = batch.tags(i);
    this.place(batch.id[i] as number, batch.lat[i] as number, batch.lon[i] as number, tags);
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
    } else if (
      Math.abs((this.lat[index] as number) - lat) > 1e-5 ||
      Math.abs((this.lon[index] as number) - lon) > 1e-5
    )
      this.differing.add(`n${id}`);
    if (tags && !this.nodeTags.has(index)) this.nodeTags.set(index, tags);
  }

  private takeWay(way: RawWay): void {
    this.sawWay = true;
    // most ways of a large file lie elsewhere: their tags are not even decoded
    if (!this.touches(way) && !(way.hasKey(mayBeZone) && isZone(way.tags()))) return;
    const tags = way.hasKey(mayKeepWay) ? way.tags() : undefined;
    const kind = tags && wayKind(tags);
    this.placeLocated(way);
    const refs = way.refs.slice(0, way.count);
    if (tags === undefined || kind === undefined) {
      this.edges.set(way.id, refs);
      return;
    }
    const known = this.ways.get(way.id);
    if (known) {
      if (!sameRefs(known.refs, refs)) this.differing.add(`w${way.id}`);
      if (this.resolved(known.refs) >= this.resolved(refs)) return;
    }
    this.ways.set(way.id, { id: way.id, kind, tags, refs });
  }

  private touches(way: RawWay): boolean {
    const { mask } = this;
    if (mask === undefined) return true;
    for (let i = 0; i < way.count; i++) if (this.nodes.indexOf(way.refs[i] as number) >= 0) return true;
    if (way.lat && way.lon)
      for (let i = 0; i < way.count; i++)
        if (mask.has(way.lat[i] as number, way.lon[i] as number)) return true;
    return false;
  }

  /** Places that come with the way stand for nodes the file does not list. */
  private placeLocated({ refs, count, lat, lon }: RawWay): void {
    if (!lat || !lon) return;
    for (let i = 0; i < count; i++)
      if (Math.abs(lat[i] as number) <= 90 && Math.abs(lon[i] as number) <= 180)
        this.place(refs[i] as number, lat[i] as number, lon[i] as number);
  }

  private resolved(refs: Float64Array): number {
    let count = 0;
    for (const ref of refs) if (this.nodes.indexOf(ref) >= 0) count++;
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

function sameRefs(a: Float64Array, b: Float64Array): boolean {
  return a.length === b.length && a.every((ref, i) => ref === b[i]);
}

function outerWays(members: readonly Member[]): number[] {
  return members
    .filter((member) => member.type === 'way' && (member.role === 'outer' || member.role === ''))
    .map((member) => member.id);
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
