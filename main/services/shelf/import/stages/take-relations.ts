import { closeSync, openSync } from 'node:fs';
import { join } from 'node:path';
import type { RawRelation } from '../../../../../geo/roads/sink.ts';
import { ByteStore } from '../../../../../geo/shelf/import/byte-store.ts';
import { chooseRelation, drawnTags, RELATION } from '../../../../../geo/shelf/import/choose.ts';
import { bucketCount, IdBuckets, type IdPlan } from '../../../../../geo/shelf/import/id-buckets.ts';
import { encodeRelation } from '../../../../../geo/shelf/import/relation-record.ts';
import { encodeTags } from '../../../../../geo/shelf/tag-bytes.ts';
import { Spill, writeWhole } from '../spill.ts';
import type { SpillIndex } from '../spill-index.ts';
import { cannotWrite } from '../stopped.ts';
import { MOST_WORKERS } from '../workers.ts';

/** way 8, relation 8, member 4, as 4 */
export const PAIR_BYTES = 24;
const BUFFER_BYTES = 256 * 1024;

/** What one worker kept of the relations. */
export interface TakenRelations {
  /** memberships by bucket of their way */
  readonly pairs: SpillIndex;
  /** where the relations themselves lie */
  readonly path: string;
}

/** Keeps the relations that are wanted, and notes for their ways that they are members. */
export class RelationTaker {
  private readonly worker: number;
  private readonly pairs: Spill;
  private readonly buckets: IdBuckets;
  private readonly path: string;
  private readonly fd: number;
  private readonly buffer = new ByteStore(BUFFER_BYTES);
  private written = 0;

  constructor({ temp, ways }: { readonly temp: string; readonly ways: IdPlan }, worker: number) {
    this.worker = worker;
    this.pairs = new Spill(join(temp, `pairs-${worker}`), bucketCount(ways));
    this.buckets = new IdBuckets(ways);
    this.path = join(temp, `relations-${worker}`);
    try {
      this.fd = openSync(this.path, 'w');
    } catch (error) {
      throw cannotWrite(error);
    }
  }

  take({ id, tags, members }: RawRelation): void {
    const as = chooseRelation(tags);
    if (as === 0) return;
    const all = members();
    const bytes = encodeRelation({
      id,
      as,
      tags: encodeTags(tags),
      drawnTags: encodeTags(drawnTags(tags)),
      members: all,
    });
    const at = this.append(bytes);
    for (const [member, { type, id: way, role }] of all.entries())
      if (type === 'way' && isHeld(as, role)) this.pair(way, at, member, as);
  }

  end(): TakenRelations {
    this.flush();
    closeSync(this.fd);
    return { pairs: this.pairs.end(), path: this.path };
  }

  private pair(way: number, relation: number, member: number, as: number): void {
    const out = this.pairs.place(this.buckets.bucketOf(way), PAIR_BYTES);
    if (!out) return;
    out.double(way);
    out.double(relation);
    out.view.setUint32(out.at, member, true);
    out.view.setUint32(out.at + 4, as, true);
    out.at += 8;
  }

  /** @returns where it lies: `relationPlace` tells it apart again */
  private append(record: Uint8Array): number {
    const { buffer } = this;
    if (buffer.at + record.length + 4 > BUFFER_BYTES) this.flush();
    const at = this.written + buffer.at;
    buffer.room(record.length + 4);
    buffer.view.setUint32(buffer.at, record.length, true);
    buffer.at += 4;
    buffer.append(record);
    return at * MOST_WORKERS + this.worker;
  }

  private flush(): void {
    const { buffer } = this;
    writeWhole(this.fd, buffer.bytes.subarray(0, buffer.at), this.written);
    this.written += buffer.at;
    buffer.at = 0;
  }
}

/** Whether the tile of a member holds the relation for its sake. */
function isHeld(as: number, role: string): boolean {
  if (as === RELATION.restriction) return role === 'from' || role === 'to';
  return as === RELATION.route || role === 'outer' || role === '';
}
