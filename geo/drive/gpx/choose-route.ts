import { fail, ok, type Result } from '../../result.ts';
import { capital, plainLine, quote } from '../../units/text.ts';
import { callRoute, isDrivable } from './gpx-tracks.ts';
import { noteRoute } from './note-route.ts';
import type { Route, RouteFile } from './route.ts';

/** The route to drive, and one or more sentences for the user: which was taken where there was a choice, its gaps and jumps. */
export interface ChosenRoute {
  readonly route: Route;
  readonly note?: string;
}

/**
 * Picks the drive out of a file. Without `track` it is the first that can be driven, tracks before routes.
 *
 * @param track a name (the exact one, else the same in other letter case), or a 1-based number in the file's list,
 * tracks before routes. A name wins over a number.
 * @returns a problem that lists what there is when nothing fits, or when what fits cannot be driven
 */
export function chooseRoute(file: RouteFile, track?: string): Result<ChosenRoute> {
  const drivable = file.routes.filter(isDrivable);
  const first = drivable[0];
  if (!first) return fail('route.none', 'The file holds nothing to drive; export the whole drive.');
  if (track === undefined)
    return ok(describe(first, drivable.length > 1 ? sayTaken(first, drivable.length) : undefined));

  const wanted = plainLine(track);
  const named = findNamed(file.routes, wanted);
  const numbered = /^\d+$/u.test(wanted) ? file.routes[Number(wanted) - 1] : undefined;
  const route = named.find(isDrivable) ?? named[0] ?? numbered;
  if (!route)
    return fail(
      'route.unknown',
      `The file has no track or route ${quote(track)}; choose from ${list(file.routes)}.`,
    );
  if (!isDrivable(route))
    return fail(
      'route.tooShort',
      `${capital(callRoute(route))} has no two positions in a row; choose from ${list(file.routes)}.`,
    );
  const shared = named.length > 1 ? `; ${named.length} share that name` : '';
  return ok(describe(route, file.routes.length > 1 ? `Taken: ${callRoute(route)}${shared}.` : undefined));
}

function findNamed(routes: readonly Route[], name: string): Route[] {
  if (name === '') return [];
  const exact = routes.filter((route) => route.name === name);
  if (exact.length > 0) return exact;
  return routes.filter((route) => route.name.toLowerCase() === name.toLowerCase());
}

function describe(route: Route, taken: string | undefined): ChosenRoute {
  const sentences = [...(taken === undefined ? [] : [taken]), ...noteRoute(route)];
  return sentences.length === 0 ? { route } : { route, note: sentences.join(' ') };
}

function sayTaken(route: Route, of: number): string {
  return `Taken: ${callRoute(route)}, the first of ${of} in the file; choose another by name or number.`;
}

const LISTED = 12;

function list(routes: readonly Route[]): string {
  const shown = routes.slice(0, LISTED).map((route, i) => {
    const drivable = isDrivable(route) ? '' : ' (nothing to drive)';
    return `${i + 1}: ${callRoute(route)}${drivable}`;
  });
  const more = routes.length > LISTED ? ` and ${routes.length - LISTED} more` : '';
  return `${shown.join(', ')}${more}`;
}
