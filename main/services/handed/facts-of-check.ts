import type { HandedFacts } from '../../../geo/library/body/handed.ts';
import { ok, type Result } from '../../../geo/result.ts';
import { handedFacts } from '../../../geo/yard/handed/facts.ts';
import { GPX_MAX_BYTES } from '../../contract/limits.ts';
import type { CheckOutcome, CheckRequest } from '../check-drive.ts';
import { readBytes } from '../files/read-bytes.ts';
import { sha256Of } from '../files/sha256.ts';
import { partsOnShelf } from '../shelf/parts-on-shelf.ts';
import { handedOf, type KnownOf } from './known-of.ts';

const NOTHING_KNOWN: KnownOf = { drives: [], sheets: [] };

/** What is to be kept of a check made from files, when it is handed out. */
export async function factsOfCheck(
  { report, route, check, track, items: load }: CheckOutcome,
  { routePath, mapPaths, shelf, leaveAt, margins, country, day }: CheckRequest,
  known: KnownOf = NOTHING_KNOWN,
): Promise<Result<HandedFacts>> {
  const bytes = await readBytes(routePath, 'drive', GPX_MAX_BYTES);
  if (!bytes.ok) return bytes;
  const gpx = sha256Of(bytes.value);
  const maps = mapPaths.length === 0 ? await partsOnShelf(shelf) : undefined;
  const { localNotes } = check;
  const asked = { report, route, localNotes, load, leaveAt, margins, country, day, maps };
  const of = handedOf(known, { gpx, track, vehicleName: report.vehicle.name, load });
  return ok(handedFacts(asked, of, sha256Of));
}
