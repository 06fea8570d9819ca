import { twiceNamed } from '../../geo/document/twice-named.ts';
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
  let data: unknown;
  const text = (await file.text()).replace(/^\uFEFF/, '');
  try {
    data = JSON.parse(text);
  } catch {
    return fail('card', `${file.name} is not a vehicle card: it is not JSON.`);
  }
  const twice = twiceNamed(text);
  if (twice !== undefined)
    return fail('card', `${file.name} is not usable: "${twice.slice(0, 40)}" stands there twice. Keep one.`);
  const format = typeof data === 'object' && data !== null && 'format' in data ? data.format : undefined;
  return format === 'lanegauge.vehicle'
    ? ok(data as VehicleCard)
    : fail('card', `${file.name} is not a vehicle card: it does not say "format": "lanegauge.vehicle".`);
}
