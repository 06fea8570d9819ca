import { type Meant, sayReadings } from '../../units/decimal-feet.ts';
import { meantLengths, meantMass } from '../../units/meant-entry.ts';
import { printKg, printMetres } from '../../units/print.ts';
import { readEntryLength, readEntryMass } from '../../units/read-entry.ts';
import type { Bounds, CardFigure } from '../bounds.ts';
import type { VehicleCard } from '../card.ts';
import { measureFaults } from '../lock/measured-lock.ts';
import { sayMeasureFault } from '../lock/say-measure-fault.ts';
import { saySizeFaultShort, sizeFaults } from '../size-faults.ts';
import { cardOf, type Figures } from './card-of.ts';
import type { Draft } from './draft.ts';
import { FIELDS, type Field } from './fields.ts';
import { type ReadPlaces, readPlaces } from './read-places.ts';

/** A sentence for each field that is wrong. */
type Faults = Readonly<Partial<Record<CardFigure | 'name', string>>>;

export interface ReadDraft {
  /** every figure that could be read, metres and kilograms */
  readonly figures: Figures;
  readonly faults: Faults;
  /** for a figure that is wrong: what was likely meant by it, or each of two readings */
  readonly meant: Readonly<Partial<Record<CardFigure, readonly Meant[]>>>;
  readonly places: ReadPlaces;
  /** the card, when nothing is wrong */
  readonly card?: VehicleCard;
}

/** Reads what is typed: figures, a sentence for each that is wrong, and the card when none is. */
export function readDraft(draft: Draft): ReadDraft {
  const figures: Partial<Record<CardFigure, number>> = {};
  const unread: Partial<Record<CardFigure | 'name', string>> = {};
  if (draft.name.trim() === '') unread.name = 'Give the vehicle a name.';
  const meant: Partial<Record<CardFigure, readonly Meant[]>> = {};
  for (const field of FIELDS) {
    const text = draft.text[field.key].trim();
    const read = readFigure(field, text);
    if (typeof read === 'number') figures[field.key] = read;
    else if (read !== undefined) {
      unread[field.key] = read;
      const likely = field.unit === 'm' ? meantLengths(text, field) : meantMass(text, field);
      if (likely.length === 0) continue;
      meant[field.key] = likely;
      if (!read.includes(sayReadings(likely))) unread[field.key] = `${read} Is it ${sayReadings(likely)}?`;
    }
  }
  const faults = { ...missingFaults(draft, figures), ...unread, ...togetherFaults(figures) };
  const places = readPlaces(draft.places);
  if (places.places === undefined || Object.keys(faults).length > 0)
    return { figures, faults, meant, places };
  const card = cardOf(draft, figures, places.places);
  const [unmeasured] = measureFaults(card);
  if (unmeasured === undefined) return { figures, faults, meant, places, card };
  const wheelbaseM = `With these sizes what was measured in the yard cannot be: ${sayMeasureFault(unmeasured)}.`;
  return { figures, faults: { ...faults, wheelbaseM }, meant, places };
}

/** A figure that needs no telling how it was understood. */
const PLAIN_NUMBER = /^[\d.,]+$/;

/** @returns the figure, or what is wrong with it; undefined where nothing need be there */
function readFigure(
  { unit, optional, least, most, label }: Field,
  text: string,
): number | string | undefined {
  if (text === '') return optional ? undefined : `${label} is missing.`;
  const read = unit === 'm' ? readEntryLength(text) : readEntryMass(text, { least, most });
  if (!read.ok) return read.error.message;
  const understood = PLAIN_NUMBER.test(text)
    ? ''
    : `Read as ${unit === 'm' ? printMetres(read.value) : printKg(read.value)}. `;
  const as = `: write ${unit === 'm' ? 'metres' : 'kilograms'}, such as ${example({ least, most }, unit)}.`;
  if (read.value > most) return `${understood}More than ${most} ${unit} is not believed${as}`;
  if (read.value < least) return `${understood}Less than ${least} ${unit} is not believed${as}`;
  return Math.round(read.value * 10_000) / 10_000;
}

/** A figure that would be believed. */
function example({ least, most }: Bounds, unit: Field['unit']): string {
  const between = least > 0 ? Math.sqrt(least * most) : most / 4;
  return unit === 'm' ? between.toFixed(2) : String(Math.round(between / 10) * 10);
}

/** Sizes that cannot all be right. */
function togetherFaults(figures: Figures): Faults {
  return Object.fromEntries(sizeFaults(figures).map((fault) => [fault.field, saySizeFaultShort(fault)]));
}

/** Figures that go with one that is given. */
const TOGETHER: readonly { readonly keys: readonly CardFigure[]; readonly say: string }[] = [
  { keys: ['rackLengthM', 'rackWidthM'], say: 'A rack needs its length and its width.' },
  { keys: ['emptyFrontKg', 'emptyRearKg'], say: 'The empty weight needs both axles.' },
];

function missingFaults({ rackFitted }: Draft, figures: Figures): Faults {
  const faults: Partial<Record<CardFigure, string>> = {};
  for (const { keys, say } of TOGETHER)
    if (keys.some((key) => figures[key] !== undefined))
      for (const key of keys) if (figures[key] === undefined) faults[key] = say;
  if (figures.rackLengthM === undefined) {
    if (figures.rackLimitKg !== undefined) faults.rackLengthM ??= 'A rack needs its length and its width.';
    if (rackFitted) faults.rackLengthM ??= 'A fitted rack needs its length; or untick it.';
  }
  return faults;
}
