import { fail, ok, type Result } from '../result.ts';
import { type VehicleCard, vehicleCardSchema } from './card.ts';
import { clip, sayFault } from './say-fault.ts';
import { twiceNamed } from './twice-named.ts';

/** More would only hide the first. */
const FAULTS_SHOWN = 8;

/**
 * Reads a vehicle card from the text of its file.
 * @param text JSON of format `lanegauge.vehicle`, version 1
 * @param file the file's name, for the message
 * @returns the card, or one sentence naming every field that is wrong
 */
export function readVehicle(text: string, file: string): Result<VehicleCard> {
  let data: unknown;
  try {
    data = JSON.parse(text.startsWith('\uFEFF') ? text.slice(1) : text);
  } catch (error) {
    return fail(
      'vehicle-not-json',
      `${file} is not a vehicle card: it is not JSON${whereIn(text, error)}. Choose a vehicle card, or mend the file.`,
    );
  }
  const twice = twiceNamed(text);
  if (twice !== undefined)
    return fail(
      'vehicle-invalid',
      `${file} is not a usable vehicle card: "${clip(twice)}" stands there twice. Keep one of them and try again.`,
    );
  const parsed = vehicleCardSchema.safeParse(data);
  if (parsed.success && !hasOwnProto(data)) return ok(parsed.data);
  const faults = parsed.success
    ? ['"__proto__" is no field of a vehicle card']
    : parsed.error.issues.map((issue) => sayFault(issue, data));
  const more = faults.length > FAULTS_SHOWN ? `; and ${faults.length - FAULTS_SHOWN} more` : '';
  return fail(
    'vehicle-invalid',
    `${file} is not a usable vehicle card: ${faults.slice(0, FAULTS_SHOWN).join('; ')}${more}. Correct the card and try again.`,
  );
}

/** ` (line 3)` where the parser tells the position. */
function whereIn(text: string, error: unknown): string {
  const position = error instanceof Error ? /position (\d+)/.exec(error.message)?.[1] : undefined;
  if (position === undefined) return '';
  return ` (line ${text.slice(0, Number(position)).split('\n').length})`;
}

/** The schema's own list of unknown fields does not see this one. */
function hasOwnProto(data: unknown): boolean {
  if (typeof data !== 'object' || data === null) return false;
  return Object.hasOwn(data, '__proto__') || Object.values(data).some(hasOwnProto);
}
