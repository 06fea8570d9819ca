import type { Tags } from '../../roads/roads.ts';

/** Where a crossing gives no duration. Common practice, no source; boarding and waiting are not in it. */
const FERRY_KMH = 15;

/** A duration that makes a ship faster or slower than this belongs to another length of way. km/h. */
const BELIEVED_KMH = { least: 0.5, most: 80 };

/**
 * Seconds that `duration` gives: `00:45`, `1:10:00`, minutes alone, or ISO 8601 (`PT1H30M`).
 * Undefined when absent, unreadable, zero or over two days.
 */
export function readDurationS(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const clock = /^(\d{1,3}):([0-5]\d)(?::([0-5]\d))?$/.exec(text.trim());
  const iso = /^P(?:(\d+)D)?(?:T(?:(\d+)H)?(?:(\d+)M)?(?:(\d+)S)?)?$/i.exec(text.trim());
  const minutes = /^(\d+)$/.exec(text.trim());
  let seconds = 0;
  if (clock) seconds = part(clock[1]) * 3600 + part(clock[2]) * 60 + part(clock[3]);
  else if (iso) seconds = part(iso[1]) * 86_400 + part(iso[2]) * 3600 + part(iso[3]) * 60 + part(iso[4]);
  else if (minutes) seconds = part(minutes[1]) * 60;
  return seconds > 0 && seconds <= 2 * 86_400 ? seconds : undefined;
}

function part(digits: string | undefined): number {
  return digits === undefined ? 0 : Number(digits);
}

interface FerrySpeed {
  readonly kmh: number;
  readonly note: string;
}

/** Speed of a crossing whose whole way is `lengthM` long, from its mapped duration or the stated default. */
export function ferrySpeed(tags: Tags, lengthM: number): FerrySpeed {
  const name = tags['name'] ? `The ferry ${tags['name']}` : 'A ferry';
  const seconds = readDurationS(tags['duration']);
  const kmh = seconds === undefined ? undefined : (lengthM / seconds) * 3.6;
  if (seconds !== undefined && kmh !== undefined && kmh >= BELIEVED_KMH.least && kmh <= BELIEVED_KMH.most)
    return {
      kmh,
      note: `${name} takes ${Math.round(seconds / 60)} minutes as mapped; waiting and boarding are not counted.`,
    };
  return {
    kmh: FERRY_KMH,
    note: `${name} has no ${seconds === undefined ? 'mapped duration' : `believable duration (mapped ${tags['duration']})`}: ${FERRY_KMH} km/h is assumed; waiting and boarding are not counted.`,
  };
}
