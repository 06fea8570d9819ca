import { tellOwnFile } from '../../document/own-file.ts';
import { fail } from '../../result.ts';
import { counted } from '../../units/text.ts';
import type { Route } from './route.ts';
import { countPositions } from './route-length.ts';

/** Refuses text that does not begin as XML does. */
export function refuseText(text: string): ReturnType<typeof fail> {
  if (/^[\uFEFF\s\0]*$/u.test(text)) return fail('gpx.blank', 'The file is empty; export the drive again.');
  const own = /^[\uFEFF\s]*\{/u.test(text) ? tellOwnFile(parsedOr(text)) : undefined;
  if (own) return fail('gpx.own', `This is ${own.what}, not a drive. ${own.where}.`);
  return fail('gpx.notGpx', `This is ${kindOf(text)}, not a GPX file; export the drive as GPX.`);
}

/** What it begins like. */
function kindOf(text: string): string {
  if (/^[\uFEFF\s]*[{[]/u.test(text)) return 'JSON (perhaps GeoJSON)';
  return text.startsWith('%PDF') ? 'a PDF, a page to read or print' : 'some other kind of file';
}

function parsedOr(text: string): unknown {
  try {
    return JSON.parse(text.replace(/^\uFEFF/u, ''));
  } catch {
    return undefined;
  }
}

/** Refuses a document of another kind by its root element. */
export function refuseRoot(local: string, line: number): ReturnType<typeof fail> {
  const known = local.toLowerCase();
  const what = Object.hasOwn(OTHER_ROOTS, known)
    ? `this is ${OTHER_ROOTS[known]}, not a GPX file`
    : `the outermost element is "${local.slice(0, 60)}", so this is not a GPX file`;
  return fail('gpx.root', `Line ${line}: ${what}; export the drive as GPX.`);
}

const OTHER_ROOTS: Readonly<Record<string, string>> = {
  kml: 'a KML file',
  trainingcenterdatabase: 'a TCX file',
  osm: 'an OSM map',
  html: 'a web page (often an error page saved in place of the file)',
  svg: 'an SVG drawing',
};

/** Refuses a sound GPX file with nothing in it to drive, saying what it has instead. */
export function refuseUndrivable(routes: readonly Route[], waypoints: number): ReturnType<typeof fail> {
  const positions = routes.reduce((sum, route) => sum + countPositions(route), 0);
  if (positions > 0)
    return fail(
      'gpx.tooShort',
      `No track or route has two positions in a row (positions in all: ${positions}), so there is nothing to drive; export the whole drive.`,
    );
  if (routes.length > 0)
    return fail(
      'gpx.emptyTracks',
      `The file has ${counted(routes.length, 'track or route', 'tracks or routes')} without any position; export the drive again.`,
    );
  if (waypoints > 0)
    return fail(
      'gpx.onlyWaypoints',
      `The file holds only single places (${counted(waypoints, 'waypoint')}), no track and no route; export the drive itself.`,
    );
  return fail('gpx.nothing', 'The GPX file holds no track and no route; export the drive again.');
}
