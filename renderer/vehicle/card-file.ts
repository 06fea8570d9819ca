import { twiceNamed } from '../../geo/document/twice-named.ts';
import { fail, ok, type Result } from '../../geo/result.ts';
import { quote } from '../../geo/units/text.ts';
import type { VehicleCard } from '../../geo/vehicle/card.ts';
import { downloadJson } from '../host/download.ts';

const CARD_MAX_BYTES = 1_000_000;

/** Hands the card to the browser as a file that `lanegauge check --vehicle` reads. */
export function exportCard(card: VehicleCard): void {
  downloadJson(card, card.name || 'vehicle');
}

/**
 * Reads a card's file as far as telling what it is; the host holds every figure against the schema when it is kept
 * and answers with a sentence.
 */
export async function importCard(file: File): Promise<Result<VehicleCard>> {
  if (file.size > CARD_MAX_BYTES) return fail('card', `${file.name} is too large for a vehicle card.`);
  let data: unknown;
  const text = (await file.text()).replace(/^\uFEFF/, '');
  try {
    data = JSON.parse(text);
  } catch {
    return fail('card', `${file.name} is not a vehicle card: it is not JSON.`);
  }
  const twice = twiceNamed(text);
  if (twice !== undefined)
    return fail('card', `${file.name} is not usable: ${quote(twice, 40)} stands there twice. Keep one.`);
  const format = typeof data === 'object' && data !== null && 'format' in data ? data.format : undefined;
  return format === 'lanegauge.vehicle'
    ? ok(data as VehicleCard)
    : fail('card', `${file.name} is not a vehicle card: it does not say "format": "lanegauge.vehicle".`);
}
