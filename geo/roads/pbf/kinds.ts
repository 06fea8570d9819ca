import { Cursor } from './cursor.ts';

/** Which kinds of elements a PrimitiveBlock holds. */
export interface BlockKinds {
  readonly nodes: boolean;
  readonly ways: boolean;
  readonly relations: boolean;
}

/** Looks at the first element of each group: the format allows one kind a group. Throws a Refusal. */
export function kindsIn(bytes: Uint8Array): BlockKinds {
  const kinds = { nodes: false, ways: false, relations: false };
  const block = new Cursor(bytes);
  while (block.next()) {
    if (block.field !== 2) {
      block.skip();
      continue;
    }
    const group = block.inside();
    if (!group.next()) continue;
    if (group.field === 1 || group.field === 2) kinds.nodes = true;
    else if (group.field === 3) kinds.ways = true;
    else if (group.field === 4) kinds.relations = true;
  }
  return kinds;
}
