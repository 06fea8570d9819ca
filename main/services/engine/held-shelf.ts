import { ok } from '../../../geo/result.ts';
import { type OpenShelf, openShelf } from '../shelf/open-shelf.ts';
import { compareShelves } from './compare-shelves.ts';
import type { EngineHandlers } from './protocol.ts';

/** The shelf as it was before a change, kept open until it was compared with what it is after. */
export function heldShelf(): Pick<EngineHandlers, 'holdShelf' | 'compareHeld'> {
  let held: OpenShelf | undefined;
  return {
    async holdShelf({ shelf }) {
      held?.close();
      held = await openShelf(shelf);
      return ok(null);
    },
    async compareHeld({ shelf, asked }, { lookUp, onProgress }) {
      const was = held;
      held = undefined;
      if (was === undefined) return ok({ drives: [] });
      const now = await openShelf(shelf);
      try {
        if (was.state === now.state) return ok({ drives: [] });
        onProgress({ what: 'Comparing drives on the old and the new map' });
        return ok(await compareShelves({ was, now }, asked, async () => lookUp()));
      } finally {
        was.close();
        now.close();
      }
    },
  };
}
