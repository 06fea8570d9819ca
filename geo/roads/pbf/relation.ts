import type { Member, RawRelation } from '../sink.ts';
import type { BlockFrame } from './block.ts';
import { type Cursor, damaged } from './cursor.ts';
import { saysDeleted } from './info.ts';
import { newRoom, packedSums, packedUints } from './packed.ts';

const keys = newRoom();
const values = newRoom();
const roles = newRoom();
const ids = newRoom();
const types = newRoom();

const TYPES = ['node', 'way', 'relation'] as const;

/** Reads one Relation message; a deleted relation is left out. */
export function readRelation(cursor: Cursor, frame: BlockFrame, give: (relation: RawRelation) => void): void {
  const { strings } = frame;
  let id: number | undefined;
  let keyCount = 0;
  let valueCount = 0;
  let roleCount = 0;
  let count = 0;
  let typeCount = 0;
  while (cursor.next()) {
    const { field } = cursor;
    if (field === 1) id = cursor.signed();
    else if (field === 2) keyCount = packedUints(cursor, keys);
    else if (field === 3) valueCount = packedUints(cursor, values);
    else if (field === 4) {
      if (saysDeleted(cursor.inside())) return;
    } else if (field === 8) roleCount = packedUints(cursor, roles);
    else if (field === 9) count = packedSums(cursor, ids);
    else if (field === 10) typeCount = packedUints(cursor, types);
    else cursor.skip();
  }
  if (id === undefined) throw damaged('a relation without an id');
  if (keyCount !== valueCount) throw damaged(`relation ${id} with a key and no value`);
  if (roleCount !== count || typeCount !== count) throw damaged(`relation ${id} with half a member`);
  give({
    id,
    tags: strings.tags(keys.values, values.values, keyCount),
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
