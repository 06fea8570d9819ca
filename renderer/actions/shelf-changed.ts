import type { Source } from '../../main/contract/source.ts';
import { ask } from '../host/ask.ts';
import { description } from '../state/kept.ts';
import { openedDrive, openedMap } from '../state/opened.ts';
import { shelf } from '../state/shelf.ts';
import { openWanted } from './open.ts';
import { openingDone } from './shelf-work.ts';
import { sameSource } from './wanted.ts';
import { isMostlyOff, shelfAbout } from './which-map.ts';

/** Looks at the shelf again. */
export async function lookAtShelf(): Promise<void> {
  const reply = await ask('shelf', {});
  shelf.value = reply.ok ? reply.value : { problem: reply.error.message };
  const known = description.peek();
  if (reply.ok && known) description.value = { ...known, shelfMaps: reply.value.maps.length };
}

/**
 * Follows the open drive again where what is on the shelf now may be its map. The user's own opening comes first.
 * @param keptFile a map file that is on the shelf since
 */
export async function useShelfAnew(keptFile?: Source): Promise<void> {
  await openingDone();
  const drive = openedDrive.peek();
  const map = openedMap.peek()?.source;
  if (!drive || !map || drive.source.kind === 'sample' || description.peek()?.shelfMaps === 0) return;
  const wasKept = keptFile !== undefined && sameSource(map, keptFile);
  if (map.kind !== 'shelf' && map.kind !== 'sample' && !wasKept && !isMostlyOff(drive.followed)) return;
  const wanted = { source: drive.source, track: drive.followed.taken };
  await openWanted({ map: shelfAbout(wanted.source), drive: wanted });
}
