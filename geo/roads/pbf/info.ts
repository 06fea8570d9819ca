import type { Cursor } from './cursor.ts';

/** Whether an element's Info says that it is deleted. */
export function saysDeleted(info: Cursor): boolean {
  let deleted = false;
  while (info.next()) {
    if (info.field === 6) deleted = info.number() === 0;
    else info.skip();
  }
  return deleted;
}
