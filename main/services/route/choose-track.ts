import { chooseRoute } from '../../../geo/drive/gpx/choose-route.ts';
import type { RouteFile } from '../../../geo/drive/gpx/route.ts';
import { fail } from '../../../geo/result.ts';

/** The page chooses by place in the list it was given, so a track that is called "2" is no trap. */
export function chooseTrack(file: RouteFile, track: number | undefined) {
  if (track === undefined) return chooseRoute(file);
  const route = file.routes[track - 1];
  if (!route)
    return fail(
      'route.unknown',
      `The file has ${file.routes.length} tracks and routes; there is no ${track}. Choose one of them.`,
    );
  return chooseRoute({ ...file, routes: [route] });
}
