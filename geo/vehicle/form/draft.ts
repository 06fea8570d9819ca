import { isOfInches, lengthEntry } from '../../units/entry-text.ts';
import type { Units } from '../../units/in-units.ts';
import { CARD_BOUNDS, type CardFigure } from '../bounds.ts';
import type { Measured, VehicleCard } from '../card.ts';
import { FIELDS, type Tick } from './fields.ts';
import { NO_PLACES, type PlaceRows, rowsOf } from './place-rows.ts';

/** A card while it is written: texts as typed, and the ticks. */
export interface Draft extends Readonly<Record<Tick['key'], boolean>> {
  readonly name: string;
  readonly notes: string;
  readonly text: Readonly<Record<CardFigure, string>>;
  readonly places: PlaceRows;
  /** measured in the yard: kept as it is, the form does not change it */
  readonly measured?: Measured | undefined;
}

const LENGTHS: ReadonlySet<CardFigure> = new Set(
  FIELDS.filter(({ unit }) => unit === 'm').map(({ key }) => key),
);

/**
 * A card as texts: each length as it was measured, in metres or in feet and inches.
 * @param units settle what fits both, such as 3.81 m or 12'6", where no other figure of the card does
 */
export function draftOf(card: VehicleCard, units: Units): Draft {
  const lengths = [...LENGTHS].map((key) => figureOf(card, key));
  const inFeet = units === 'imperial' || lengths.some((m) => m !== undefined && isOfInches(m));
  return {
    name: card.name,
    notes: card.notes ?? '',
    text: textsOf((key) => {
      const figure = figureOf(card, key);
      if (figure === undefined) return '';
      return LENGTHS.has(key) ? lengthEntry(figure, { inFeet }) : String(figure);
    }),
    rackFitted: card.rack?.fitted ?? false,
    includesDriver: card.runningOrder?.includesDriver ?? true,
    includesFreshWater: card.runningOrder?.includesFreshWater ?? false,
    places: rowsOf(card, { inFeet }),
    measured: card.measured,
  };
}

/** Where a new card begins: with nothing, since a figure nobody measured would clear or bar real bridges. */
export const EMPTY_DRAFT: Draft = {
  name: '',
  notes: '',
  text: textsOf(() => ''),
  rackFitted: false,
  includesDriver: true,
  includesFreshWater: false,
  places: NO_PLACES,
};

function textsOf(text: (key: CardFigure) => string): Record<CardFigure, string> {
  const keys = Object.keys(CARD_BOUNDS) as CardFigure[];
  const texts = keys.map((key): [CardFigure, string] => [key, text(key)]);
  return Object.fromEntries(texts) as Record<CardFigure, string>;
}

function figureOf(card: VehicleCard, key: CardFigure): number | undefined {
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
    case 'emptyFrontKg':
      return card.runningOrder?.frontKg;
    case 'emptyRearKg':
      return card.runningOrder?.rearKg;
    default:
      return card[key];
  }
}
