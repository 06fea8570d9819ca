import type { Drive } from '../../../geo/drive/drive.ts';
import type { Route } from '../../../geo/drive/gpx/route.ts';
import { swapped } from '../../../geo/drive/gpx/swapped.ts';
import { followRoads } from '../../../geo/drive/match/follow-roads.ts';
import { matchLengths } from '../../../geo/drive/match-lengths.ts';
import { liesElsewhere } from '../../../geo/report/say-verdict.ts';
import type { Roads } from '../../../geo/roads/roads.ts';

/**
 * Whether a drive without roads under it lies on the map once latitude and longitude are changed about.
 * @param read what the map knows about another line; undefined where it cannot be read there
 */
export async function liesSwapped(
  { route, drive }: { readonly route: Route; readonly drive: Drive },
  read: (about: Route) => Promise<Roads | undefined>,
): Promise<boolean> {
  if (!liesElsewhere(matchLengths(drive), drive.lengthM)) return false;
  const other = swapped(route);
  const roads = other && (await read(other));
  if (other === undefined || roads === undefined) return false;
  const followed = followRoads(other, roads);
  return followed.lengthM > 0 && !liesElsewhere(matchLengths(followed), followed.lengthM);
}
