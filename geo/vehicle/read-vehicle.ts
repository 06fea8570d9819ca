import { fail, ok, type Result } from '../result.ts';
import { type VehicleCard, vehicleCardSchema } from './card.ts';

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
      `${file} is not a vehicle card: it is not JSON (${error instanceof Error ? error.message : 'unreadable'}).`,
    );
  }
  const parsed = vehicleCardSchema.safeParse(data);
  if (parsed.success) return ok(parsed.data);
  const faults = parsed.error.issues.map((issue) => {
    const where = issue.path.length > 0 ? `${issue.path.join('.')}: ` : '';
    return `${where}${issue.message}`;
  });
  return fail(
    'vehicle-invalid',
    `${file} is not a usable vehicle card: ${faults.join('; ')}. Correct the card and try again.`,
  );
}
