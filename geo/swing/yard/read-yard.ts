import { given } from '../../given.ts';
import { lengthEntry } from '../../units/entry-text.ts';
import type { Units } from '../../units/in-units.ts';
import { printMetres } from '../../units/print.ts';
import { readEntryLength } from '../../units/read-entry.ts';
import { type Bounds, CARD_BOUNDS, YARD_BOUNDS } from '../../vehicle/bounds.ts';
import type { Measured, VehicleCard } from '../../vehicle/card.ts';
import { type LockDoubt, lockDoubts } from '../../vehicle/lock/lock-doubts.ts';
import { type MeasuredLock, measuredLock, measureFaults } from '../../vehicle/lock/measured-lock.ts';
import { sayMeasureFault } from '../../vehicle/lock/say-measure-fault.ts';

/** What is typed off the sheet: lengths as texts. */
export const YARD_LENGTHS = [
  'rearWheelCircleM',
  'tailOutM',
  'tailAheadM',
  'trackM',
  'tapeOffM',
  'chalkOffM',
] as const;
export type YardLength = (typeof YARD_LENGTHS)[number];
export interface YardDraft {
  readonly text: Readonly<Record<YardLength, string>>;
  readonly withRack: boolean;
  readonly on: string;
  readonly by: string;
}

/** What the typed figures come to. */
export interface ReadYard {
  readonly faults: Readonly<Partial<Record<YardLength, string>>>;
  /** the card with what was measured on it; undefined while nothing is measured or something is wrong */
  readonly card?: VehicleCard;
  readonly lock?: MeasuredLock;
  readonly doubts: readonly LockDoubt[];
}

/** What the form begins with: what the card has. @param units settle what fits metres as well as feet and inches */
export function yardDraftOf({ measured, trackM, rack }: VehicleCard, units: Units): YardDraft {
  const inFeet = units === 'imperial';
  const text = (m: number | undefined) => (m === undefined ? '' : lengthEntry(m, { inFeet }));
  return {
    text: {
      rearWheelCircleM: text(measured?.rearWheelCircleM),
      tailOutM: text(measured?.tailOutM),
      tailAheadM: text(measured?.tailAheadM),
      trackM: text(trackM),
      tapeOffM: text(measured?.tapeOffM),
      chalkOffM: text(measured?.chalkOffM),
    },
    withRack: measured?.withRack ?? rack?.fitted === true,
    on: measured?.on ?? '',
    by: measured?.by ?? '',
  };
}

/** Reads the form for one vehicle. @param today the day that stands for an empty one, as 2027-06-12 */
export function readYard(draft: YardDraft, card: VehicleCard, today: string): ReadYard {
  const figures: Partial<Record<YardLength, number>> = {};
  const faults: Partial<Record<YardLength, string>> = {};
  for (const name of YARD_LENGTHS) {
    const read = readFigure(name, draft.text[name].trim());
    if (typeof read === 'number') figures[name] = read;
    else if (read !== undefined) faults[name] = read;
  }
  if (figures.tailAheadM !== undefined && figures.tailOutM === undefined)
    faults.tailAheadM ??= 'B itself is missing.';
  if (figures.trackM !== undefined && figures.trackM >= card.widthM)
    faults.trackM ??=
      'Not less than the body: it is the way from the middle of one tyre to the middle of the other.';
  const isMeasured = figures.rearWheelCircleM !== undefined || figures.tailOutM !== undefined;
  if (!isMeasured || Object.keys(faults).length > 0) return { faults, doubts: [] };
  const { trackM = card.trackM, ...lengths } = figures;
  const measured: Measured = {
    ...given(lengths),
    ...(card.rack && figures.tailOutM !== undefined ? { withRack: draft.withRack } : {}),
    on: draft.on === '' ? today : draft.on,
    ...given({ by: draft.by.trim() === '' ? undefined : draft.by.trim().slice(0, 6) }),
  };
  const made: VehicleCard = { ...card, ...given({ trackM }), measured };
  for (const fault of measureFaults(made)) faults[fault.field] = sentence(sayMeasureFault(fault));
  const lock = measuredLock(made);
  if (Object.keys(faults).length > 0 || !lock) return { faults, doubts: [] };
  return { faults, card: made, lock, doubts: lockDoubts(made) };
}

/** A card as it was before anything was measured. */
export function withoutMeasured({ measured: _, ...card }: VehicleCard): VehicleCard {
  return card;
}

/** B lies beside A, give or take: whole metres are centimetres that were typed as if the field asked for them. Metres. */
const AHEAD_MOST_M = 1;

function boundsOf(name: YardLength): Bounds {
  if (name === 'trackM') return CARD_BOUNDS.trackM;
  return name === 'tailAheadM' ? { least: -AHEAD_MOST_M, most: AHEAD_MOST_M } : YARD_BOUNDS[name];
}

function readFigure(name: YardLength, text: string): number | string | undefined {
  if (text === '') return undefined;
  const { least, most } = boundsOf(name);
  const isBehind = name === 'tailAheadM' && /^[-−]/.test(text);
  const typed = isBehind ? text.slice(1).trim() : text;
  const cm = /^(\d+(?:[.,]\d+)?)\s*cm$/i.exec(typed)?.[1];
  const read = readEntryLength(cm === undefined ? typed : String(Number(cm.replace(',', '.')) / 100));
  if (!read.ok) return read.error.message;
  const m = isBehind ? -read.value : read.value;
  if (m > most) return `More than ${printMetres(most)} is not believed.${asked(typed, { least, most })}`;
  if (m < least) return `Less than ${printMetres(least)} is not believed.${asked(typed, { least, most })}`;
  return Math.round(m * 10_000) / 10_000;
}

function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

/** A tape is read in centimetres: a bare figure that would be right as such is asked about. */
function asked(typed: string, { least, most }: Bounds): string {
  const m = Number(typed.replace(',', '.')) / 100;
  return m >= least && m <= most
    ? ` Did you mean ${printMetres(m)} (${typed} cm)? Write metres, or cm after the figure.`
    : '';
}
