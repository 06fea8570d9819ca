import { CARD_BOUNDS, type CardFigure } from '../bounds.ts';
import type { VehicleCard } from '../card.ts';
import type { Tick } from './fields.ts';
import { NO_PLACES, type PlaceRows, rowsOf } from './place-rows.ts';

/** A card while it is written: texts as typed, and the ticks. */
export interface Draft extends Readonly<Record<Tick['key'], boolean>> {
  readonly name: string;
  readonly notes: string;
  readonly text: Readonly<Record<CardFigure, string>>;
  readonly places: PlaceRows;
}

/** A card as texts. */
export function draftOf(card: VehicleCard): Draft {
  return {
    name: card.name,
    notes: card.notes ?? '',
    text: textsOf((key) => figureOf(card, key)),
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
  text: textsOf(() => undefined),
  rackFitted: false,
  includesDriver: true,
  includesFreshWater: false,
  places: NO_PLACES,
};

function textsOf(figure: (key: CardFigure) => number | undefined): Record<CardFigure, string> {
  const keys = Object.keys(CARD_BOUNDS) as CardFigure[];
  const texts = keys.map((key): [CardFigure, string] => [key, String(figure(key) ?? '')]);
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
