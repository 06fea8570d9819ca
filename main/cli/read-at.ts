import { fail, ok, type Result } from '../../geo/result.ts';
import { quote } from '../../geo/units/text.ts';
import { USAGE_HINT } from './read-words.ts';

const PLACE = /^\s*([-+]?\d+(?:\.\d+)?)\s*,\s*([-+]?\d+(?:\.\d+)?)\s*$/u;

/** A place typed after an option, `--at` where none is named: latitude and longitude in degrees, the comma between them. */
export function readAt(text: string, option = 'at'): Result<{ readonly lat: number; readonly lon: number }> {
  const [, latText, lonText] = PLACE.exec(text) ?? [];
  if (latText === undefined || lonText === undefined)
    return fail(
      'usage',
      `--${option} ${quote(text)} is not a place such as 51.5074,-0.1278: latitude, a comma, longitude. ${USAGE_HINT}`,
    );
  const [lat, lon] = [Number(latText), Number(lonText)];
  if (Math.abs(lat) > 90 || Math.abs(lon) > 180)
    return fail(
      'usage',
      `--${option} ${quote(text)} is no place on Earth: latitude comes first and goes from -90 to 90, longitude from -180 to 180.`,
    );
  return ok({ lat, lon });
}
