import { given } from '../../given.ts';
import { readEntryLength, readEntryMass } from '../../units/read-entry.ts';
import type { VehicleCard } from '../card.ts';
import { circleFault } from '../turning-circle.ts';
import { FIELDS, type FieldKey } from './fields.ts';
import { NO_PLACES, type PlaceRows, rowsOf } from './place-rows.ts';
import { type ReadPlaces, readPlaces } from './read-places.ts';

/** A card while it is written: texts as typed, and the ticks. */
export interface Draft {
  readonly name: string;
  readonly notes: string;
  readonly text: Readonly<Record<FieldKey, string>>;
  readonly rackFitted: boolean;
  readonly includesDriver: boolean;
  readonly includesFreshWater: boolean;
  readonly places: PlaceRows;
}

export interface ReadDraft {
  /** every figure that could be read */
  readonly figures: Readonly<Partial<Record<FieldKey, number>>>;
  /** a sentence for each field that is wrong */
  readonly faults: Readonly<Partial<Record<FieldKey | 'name', string>>>;
  readonly places: ReadPlaces;
  /** the card, when nothing is wrong */
  readonly card?: VehicleCard;
}

/** As the card's schema has it. Metres. */
const LENGTH_SUM_TOLERANCE_M = 0.02;

export function draftOf(card: VehicleCard): Draft {
  const text = {} as Record<FieldKey, string>;
  for (const { key } of FIELDS) text[key] = figureText(figureOf(card, key));
  return {
    name: card.name,
    notes: card.notes ?? '',
    text,
    rackFitted: card.rack?.fitted ?? false,
    includesDriver: card.runningOrder?.includesDriver ?? true,
    includesFreshWater: card.runningOrder?.includesFreshWater ?? false,
    places: rowsOf(card),
  };
}

/** Where a new card begins: with nothing, since a figure nobody measured would clear or bar real bridges. */
export const EMPTY_DRAFT: Draft = {
  name: '',
  notes: '',
  text: Object.fromEntries(FIELDS.map(({ key }) => [key, ''])) as Record<FieldKey, string>,
  rackFitted: false,
  includesDriver: true,
  includesFreshWater: false,
  places: NO_PLACES,
};

function figureText(value: number | undefined): string {
  return value === undefined ? '' : String(value);
}

function figureOf(card: VehicleCard, key: FieldKey): number | undefined {
  switch (key) {
    case 'rackLengthM':
      return card.rack?.lengthM;
    case 'rackWidthM':
      return card.rack?.widthM;
    case 'rackLimitKg':
      return card.rack?.limitKg;
    case 'axleFrontKg':
      return card.axleKg.front;
    case 'axleRearKg':
      return card.axleKg.rear;
    case 'orderFrontKg':
      return card.runningOrder?.frontKg;
    case 'orderRearKg':
      return card.runningOrder?.rearKg;
    default:
      return card[key];
  }
}

/** Reads what is typed: figures, a sentence for each that is wrong, and the card when none is. */
export function readDraft(draft: Draft): ReadDraft {
  const figures: Partial<Record<FieldKey, number>> = {};
  const faults: Partial<Record<FieldKey | 'name', string>> = {};
  if (draft.name.trim() === '') faults.name = 'Give the vehicle a name.';
  for (const { key, unit, optional, least, most, label } of FIELDS) {
    const text = draft.text[key].trim();
    if (text === '') {
      if (!optional) faults[key] = `${label} is missing.`;
      continue;
    }
    const read = unit === 'm' ? readEntryLength(text) : readEntryMass(text, { least, most });
    if (!read.ok) faults[key] = read.error.message;
    else if (read.value > most) faults[key] = `More than ${most} ${unit} is not believed.`;
    else if (read.value < least) faults[key] = `Less than ${least} ${unit} is not believed.`;
    else figures[key] = Math.round(read.value * 10_000) / 10_000;
  }
  checkTogether(figures, faults);
  if (draft.rackFitted && figures.rackLengthM === undefined)
    faults.rackLengthM ??= 'A fitted rack needs its length; or untick it.';
  const places = readPlaces(draft.places);
  if (places.places === undefined || Object.keys(faults).length > 0) return { figures, faults, places };
  return { figures, faults, places, card: cardOf(draft, figures, places.places) };
}

type Figures = Partial<Record<FieldKey, number>>;

function checkTogether(figures: Figures, faults: Partial<Record<FieldKey | 'name', string>>): void {
  const { lengthM, wheelbaseM, frontOverhangM, rearOverhangM, widthM, widthMirrorsM, widthMirrorsFoldedM } =
    figures;
  if (
    lengthM !== undefined &&
    wheelbaseM !== undefined &&
    frontOverhangM !== undefined &&
    rearOverhangM !== undefined
  ) {
    const sum = frontOverhangM + wheelbaseM + rearOverhangM;
    if (Math.abs(sum - lengthM) > LENGTH_SUM_TOLERANCE_M + 1e-9)
      faults.lengthM = `Overhangs and wheelbase add up to ${sum.toFixed(2)} m, not ${lengthM.toFixed(2)} m. Measure again.`;
  }
  if (widthM !== undefined && widthMirrorsM !== undefined && widthMirrorsM < widthM)
    faults.widthMirrorsM = 'Less than the body.';
  if (widthMirrorsM !== undefined && widthMirrorsFoldedM !== undefined && widthMirrorsFoldedM > widthMirrorsM)
    faults.widthMirrorsFoldedM = 'Wider than the unfolded mirrors.';
  for (const key of ['turningCircleM', 'turningCircleWallM'] as const) {
    const circleM = figures[key];
    if (circleM === undefined || wheelbaseM === undefined) continue;
    const noseM = key === 'turningCircleWallM' ? (frontOverhangM ?? 0) : 0;
    if (circleFault(circleM, wheelbaseM + noseM, wheelbaseM) !== undefined)
      faults[key] = 'Too small for this wheelbase. Give the whole width of the circle, not its radius.';
  }
  pair(figures, faults, 'rackLengthM', 'rackWidthM', 'A rack needs its length and its width.');
  pair(figures, faults, 'orderFrontKg', 'orderRearKg', 'Running order needs both axles.');
  if (figures.rackLimitKg !== undefined && figures.rackLengthM === undefined)
    faults.rackLengthM ??= 'A rack needs its length and its width.';
}

function pair(
  figures: Figures,
  faults: Partial<Record<FieldKey, string>>,
  a: FieldKey,
  b: FieldKey,
  sentence: string,
): void {
  if (figures[a] !== undefined && figures[b] === undefined) faults[b] ??= sentence;
  if (figures[b] !== undefined && figures[a] === undefined) faults[a] ??= sentence;
}

function cardOf(draft: Draft, figures: Figures, places: NonNullable<ReadPlaces['places']>): VehicleCard {
  const figure = (key: FieldKey) => figures[key] ?? 0;
  const maybe = <K extends FieldKey>(...keys: readonly K[]): Partial<Record<K, number>> =>
    Object.fromEntries(
      keys.flatMap((key) => (figures[key] === undefined ? [] : [[key, figures[key]]])),
    ) as Partial<Record<K, number>>;
  return {
    format: 'lanegauge.vehicle',
    version: 1,
    name: draft.name.trim(),
    heightM: figure('heightM'),
    widthM: figure('widthM'),
    widthMirrorsM: figure('widthMirrorsM'),
    lengthM: figure('lengthM'),
    wheelbaseM: figure('wheelbaseM'),
    frontOverhangM: figure('frontOverhangM'),
    rearOverhangM: figure('rearOverhangM'),
    grossKg: figure('grossKg'),
    axleKg: { front: figure('axleFrontKg'), rear: figure('axleRearKg') },
    ...maybe(
      'widthMirrorsFoldedM',
      'trackM',
      'turningCircleM',
      'turningCircleWallM',
      'rearAxleRadiusMinM',
      'unladenKg',
      'rearClearanceM',
      'bellyClearanceM',
      'gasKg',
    ),
    ...(figures.rackLengthM === undefined
      ? {}
      : {
          rack: {
            lengthM: figure('rackLengthM'),
            widthM: figure('rackWidthM'),
            fitted: draft.rackFitted,
            ...given({ limitKg: figures.rackLimitKg }),
          },
        }),
    ...(figures.orderFrontKg === undefined
      ? {}
      : {
          runningOrder: {
            frontKg: figure('orderFrontKg'),
            rearKg: figure('orderRearKg'),
            includesDriver: draft.includesDriver,
            includesFreshWater: draft.includesFreshWater,
          },
        }),
    ...places,
    ...(draft.notes.trim() === '' ? {} : { notes: draft.notes }),
  };
}
