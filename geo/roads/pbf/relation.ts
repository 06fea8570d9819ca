import { MOST_PARTS } from '../most-parts.ts';
import type { Member, RawRelation } from '../sink.ts';
import { type Cursor, damaged } from './cursor.ts';
import { ElementHead } from './element-head.ts';
import type { BlockFrame } from './frame.ts';
import { newRoom, packedSums, packedUints } from './packed.ts';

const head = new ElementHead();
const roles = newRoom();
const ids = newRoom();
const types = newRoom();

const TYPES = ['node', 'way', 'relation'] as const;

/** Reads one Relation message; a deleted relation is left out. */
export function readRelation(
  cursor: Cursor,
  { strings }: BlockFrame,
  give: (relation: RawRelation) => void,
): void {
  let roleCount = 0;
  let count = 0;
  let typeCount = 0;
  head.clear();
  while (cursor.next()) {
    const { field } = cursor;
    if (head.take(cursor)) {
      if (head.deleted) return;
    } else if (field === 8) roleCount = packedUints(cursor, roles);
    else if (field === 9) count = packedSums(cursor, ids, MOST_PARTS);
    else if (field === 10) typeCount = packedUints(cursor, types);
    else cursor.skip();
  }
  head.check('relation');
  const { id } = head;
  if (roleCount !== count || typeCount !== count) throw damaged(`relation ${id} with half a member`);
  give({
    id,
    tags: head.tags(strings),
    members() {
      const members: Member[] = [];
      for (let i = 0; i < count; i++) {
        const type = TYPES[types.values[i]!];
        if (type === undefined) throw damaged(`relation ${id} with a member of no known kind`);
        members.push({ type, id: ids.values[i]!, role: strings.get(roles.values[i]!) });
      }
      return members;
    },
  });
}
