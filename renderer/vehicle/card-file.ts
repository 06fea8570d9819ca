import { fail, ok, type Result } from '../../geo/result.ts';
import type { VehicleCard } from '../../geo/vehicle/card.ts';

const CARD_MAX_BYTES = 1_000_000;

/** Hands the card to the browser as a file that `lanegauge check --vehicle` reads. */
export function exportCard(card: VehicleCard): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(
    new Blob([`${JSON.stringify(card, null, 2)}\n`], { type: 'application/json' }),
  );
  link.download = `${card.name.replace(/[^\p{L}\p{N}.-]+/gu, '-').slice(0, 60) || 'vehicle'}.json`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}

/**
 * Reads a card's file as far as telling what it is; the host holds every figure against the schema when it is kept
 * and answers with a sentence.
 */
export async function importCard(file: File): Promise<Result<VehicleCard>> {
  if (file.size > CARD_MAX_BYTES) return fail('card', `${file.name} is too large for a vehicle card.`);
  try {
    const data: unknown = JSON.parse(await file.text());
    const format = typeof data === 'object' && data !== null && 'format' in data ? data.format : undefined;
    if (format === 'lanegauge.vehicle') return ok(data as VehicleCard);
    return fail('card', `${file.name} is not a vehicle card: it does not say "format": "lanegauge.vehicle".`);
  } catch {
    return fail('card', `${file.name} is not a vehicle card: it is not JSON.`);
  }
}
