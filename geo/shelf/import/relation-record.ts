import type { Member } from '../../roads/sink.ts';
import { Reader, Writer } from '../bytes.ts';
import { MEMBER_TYPES } from '../encode-block.ts';
import { readText, writeText } from '../tag-bytes.ts';

/** A kept relation as it waits for its ways. */
export interface RelationRecord {
  readonly id: number;
  /** sum of RELATION */
  readonly as: number;
  /** tag sets: whole, and for the thinned layers */
  readonly tags: Uint8Array;
  readonly drawnTags: Uint8Array;
  readonly members: readonly Member[];
}

/** A relation as bytes, for `decodeRelation`. */
export function encodeRelation({ id, as, tags, drawnTags, members }: RelationRecord): Uint8Array {
  const out = new Writer(256);
  out.double(id);
  out.uint(as);
  for (const bytes of [tags, drawnTags]) {
    out.uint(bytes.length);
    out.append(bytes);
  }
  out.uint(members.length);
  for (const member of members) {
    out.uint(MEMBER_TYPES.indexOf(member.type));
    out.double(member.id);
    writeText(member.role, out);
  }
  return out.done();
}

/** What `encodeRelation` wrote. */
export function decodeRelation(bytes: Uint8Array): RelationRecord {
  const reader = new Reader(bytes);
  const id = reader.double();
  const as = reader.uint();
  const tags = reader.take(reader.uint());
  const drawnTags = reader.take(reader.uint());
  const members: Member[] = [];
  for (let left = reader.uint(); left > 0; left--) {
    const type = MEMBER_TYPES[reader.uint()] ?? 'node';
    members.push({ type, id: reader.double(), role: readText(reader) });
  }
  return { id, as, tags, drawnTags, members };
}
