import { fail } from '../../../geo/result.ts';
import { messageOf } from '../files/system-error.ts';

/** Why the shelf cannot be looked at. @param shelf its folder @param error what the system said */
export function shelfUnreadable(shelf: string, error: unknown): ReturnType<typeof fail> {
  return fail(
    'shelf.unreadable',
    `The shelf in ${shelf} could not be read: ${messageOf(error)}. Connect its disk again, or see that the folder may be read.`,
  );
}
