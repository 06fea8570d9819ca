import { capital, counted, quote } from '../../units/text.ts';
import { callRoute, type OpenRoute } from './gpx-tracks.ts';
import { MOST_STOPS } from './stop-mark.ts';

/** What was left aside while a file was read: each kind once, with its number and its first place. */
export interface GpxDoubts {
  version(written: string): void;
  badTime(place: string): void;
  badWaypoint(place: string): void;
  /** a waypoint marked as a stop beyond those that are counted */
  manyStops(place: string): void;
  /** an element named as in GPX but of another namespace */
  leftOut(place: string): void;
  /** @returns sentences for the user */
  say(routes: readonly OpenRoute[]): string[];
}

/** A tally of what one file makes doubtful, empty at first. */
export function gpxDoubts(): GpxDoubts {
  const versions: string[] = [];
  const times = tally();
  const waypoints = tally();
  const stops = tally();
  const elements = tally();

  function say(routes: readonly OpenRoute[]): string[] {
    const notes = versions.map(
      (version) => `The file says GPX version ${quote(version)}; it was read as 1.1.`,
    );
    if (times.count > 0)
      notes.push(
        `${counted(times.count, 'time')} could not be read and counted as missing, first ${times.first}.`,
      );
    if (waypoints.count > 0)
      notes.push(
        `${counted(waypoints.count, 'waypoint')} with a bad position left aside (waypoints are not driven), first ${waypoints.first}.`,
      );
    if (stops.count > 0)
      notes.push(
        `${counted(stops.count, 'waypoint')} marked as stops beyond the first ${MOST_STOPS} left aside, first ${stops.first}: roads open only to those who go there are closed at them.`,
      );
    if (elements.count > 0)
      notes.push(
        `${counted(elements.count, 'element')} named as in GPX but of another namespace left out, first ${elements.first}.`,
      );
    return [...notes, ...routes.flatMap(sayEmpty)];
  }

  return {
    version: (written) => versions.push(written),
    badTime: times.add,
    badWaypoint: waypoints.add,
    manyStops: stops.add,
    leftOut: elements.add,
    say,
  };
}

function tally() {
  const kept = { count: 0, first: '', add };
  function add(place: string): void {
    if (kept.count++ === 0) kept.first = place;
  }
  return kept;
}

function sayEmpty(route: OpenRoute): string[] {
  const empty = route.segments.filter((segment) => segment.lat.length === 0).length;
  if (empty === 0 || route.kind === 'route') return [];
  const called = callRoute(route);
  return [`${capital(called)}: ${counted(empty, 'segment')} without a position left out.`];
}

/** `1 time`, `2 times` */
