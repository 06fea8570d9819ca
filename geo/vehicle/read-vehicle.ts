import { type DocumentWords, readDocument } from '../document/read-document.ts';
import { sayFault } from '../document/say-fault.ts';
import type { Result } from '../result.ts';
import { type VehicleCard, vehicleCardSchema } from './card.ts';

const WORDS: DocumentWords = { code: 'vehicle', kind: 'vehicle card', short: 'card', sayFault };

/**
 * Reads a vehicle card from the text of its file.
 * @param text JSON of format `lanegauge.vehicle`, version 1
 * @param file the file's name, for the message
 * @returns the card, or one sentence naming every field that is wrong
 */
export function readVehicle(text: string, file: string): Result<VehicleCard> {
  return readDocument(text, file, vehicleCardSchema, WORDS);
}
