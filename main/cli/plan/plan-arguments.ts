import { given } from '../../../geo/given.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { quote } from '../../../geo/units/text.ts';
import type { PlanPlace } from '../../../geo/wayround/plan/plan-input.ts';
import { PREFER } from '../../contract/settings.ts';
import type { TypedVehicle } from '../../services/library/typed-vehicle.ts';
import { readCountry, readWallTime, readYard, type YardArguments } from '../arguments.ts';
import { readAt } from '../read-at.ts';
import { pathFrom, readWords, USAGE_HINT } from '../read-words.ts';

export interface PlanArguments extends YardArguments {
  /** a text is a name, to be looked up */
  readonly places: readonly (PlanPlace | string)[];
  /** a card's file, or a vehicle of the library */
  readonly vehicle: TypedVehicle;
  readonly loadPath?: string;
  readonly mapPaths: readonly string[];
  readonly gpxPath: string;
  readonly leaveAt?: string;
  readonly country?: string;
  readonly prefer?: (typeof PREFER)[number];
  readonly json: boolean;
}

/** Reads the words after `lanegauge plan`. */
export function readPlanArguments(words: readonly string[], standsIn: string): Result<PlanArguments> {
  const read = readWords(words, {
    once: ['vehicle', 'load', 'leave', 'prefer', 'gpx', 'country', 'yard'],
    several: ['at', 'map'],
    signed: ['at'],
    flags: ['json', 'no-notes'],
  });
  if (!read.ok) return read;
  const { all, one, flag } = read.value;
  const [vehicle, gpx, load] = [one('vehicle'), one('gpx'), one('load')];
  const missing = [
    ...(all('at').length > 1 ? [] : ['--at LAT,LON or --at NAME for two places or more']),
    ...(vehicle ? [] : ['--vehicle FILE.json']),
    ...(gpx ? [] : ['--gpx FILE']),
  ];
  if (!vehicle || !gpx || missing.length > 0)
    return fail('usage', `Missing: ${missing.join(', ')}. ${USAGE_HINT}`);
  const places: (PlanPlace | string)[] = [];
  for (const text of all('at')) {
    if (/\p{L}/u.test(text)) {
      places.push(text);
      continue;
    }
    const place = readAt(text);
    if (!place.ok) return place;
    places.push({ ...place.value, stop: true });
  }
  const prefer = PREFER.find((each) => each === one('prefer'));
  if (one('prefer') !== undefined && prefer === undefined)
    return fail(
      'usage',
      `--prefer ${quote(one('prefer') ?? '')} is neither quickest nor widest. ${USAGE_HINT}`,
    );
  const country = readCountry(one('country'));
  if (country?.ok === false) return country;
  const leaveAt = readWallTime(one('leave'));
  if (leaveAt?.ok === false) return leaveAt;
  const yard = readYard(read.value, standsIn);
  if (!yard.ok) return yard;
  const from = (path: string) => pathFrom(standsIn, path);
  return ok({
    places,
    vehicle: { typed: vehicle, path: from(vehicle) },
    mapPaths: all('map').map(from),
    gpxPath: from(gpx),
    json: flag('json'),
    ...yard.value,
    ...given({
      loadPath: load && from(load),
      prefer,
      country: country?.value,
      leaveAt: leaveAt?.value,
    }),
  });
}
