import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { PLACES_MAX } from '../../../../geo/vehicle/bounds.ts';
import { type VehicleCard, vehicleCardSchema } from '../../../../geo/vehicle/card.ts';
import { draftOf } from '../../../../geo/vehicle/form/draft.ts';
import { noteOf } from '../../../../geo/vehicle/form/place-note.ts';
import {
  EMPTY_ROW,
  NO_PLACES,
  type PlaceField,
  type PlaceKind,
  type PlaceRow,
} from '../../../../geo/vehicle/form/place-rows.ts';
import { readDraft } from '../../../../geo/vehicle/form/read-draft.ts';
import { readPlaces } from '../../../../geo/vehicle/form/read-places.ts';
import { sayTicks } from '../../../../geo/vehicle/form/say-ticks.ts';

const CARD: VehicleCard = vehicleCardSchema.parse(
  JSON.parse(readFileSync('sample-routes/vehicles/coach-built-7.0.json', 'utf8')),
);
const SEAT: PlaceRow = { ...EMPTY_ROW, name: 'Driver', xM: '0.35' };
const TANK: PlaceRow = { ...EMPTY_ROW, name: 'Water', holds: 'fresh-water', xM: '2.5', capacityL: '105' };
const LOCKER: PlaceRow = { ...EMPTY_ROW, name: 'Garage', xM: '5.1', limitKg: '150' };
const USUAL = { seats: SEAT, tanks: TANK, lockers: LOCKER };

/** One place of a kind with one text typed over. */
function typed(kind: PlaceKind, field: PlaceField, text: string) {
  const read = readPlaces({ ...NO_PLACES, [kind]: [{ ...USUAL[kind], [field]: text }] });
  return { ...read, fault: read.rows[kind][0]?.faults[field] };
}

describe('the places of a card in the form', () => {
  it('come out as they went in: ahead of the axle, with three decimals, alike but for capitals', () => {
    const card: VehicleCard = {
      ...CARD,
      seats: [
        { name: 'Driver', xM: -0.4 },
        { name: 'driver ', xM: 0 },
      ],
      tanks: [{ name: 'Water', holds: 'lpg', xM: 1.125, capacityL: 1.125 }],
      lockers: [
        { name: 'Garage', xM: 19.875, limitKg: 1.375 },
        { name: 'Shelf', xM: -5 },
      ],
    };
    const read = readDraft(draftOf(card, 'metric'));
    expect(read.places.rows.lockers).toEqual([
      { xM: 19.875, limitKg: 1.375, faults: {} },
      { xM: -5, faults: {} },
    ]);
    expect(read.card).toEqual(card);
    expect(vehicleCardSchema.parse(read.card)).toEqual(card);
  });

  it('make a card that the schema takes', () => {
    const draft = { ...draftOf(CARD, 'metric'), places: { seats: [SEAT], tanks: [TANK], lockers: [LOCKER] } };
    const { card } = readDraft(draft);
    expect(card?.seats).toEqual([{ name: 'Driver', xM: 0.35 }]);
    expect(card?.tanks).toEqual([{ name: 'Water', holds: 'fresh-water', xM: 2.5, capacityL: 105 }]);
    expect(card?.lockers).toEqual([{ name: 'Garage', xM: 5.1, limitKg: 150 }]);
    expect(vehicleCardSchema.safeParse(card).success).toBe(true);
  });

  it('are gone from the card when the last of a kind is removed', () => {
    const { card } = readDraft({ ...draftOf(CARD, 'metric'), places: NO_PLACES });
    expect(card).toBeDefined();
    expect(card?.seats).toBeUndefined();
    expect(card?.lockers).toBeUndefined();
  });

  it('are taken in feet and inches, litres, and stones and pounds', () => {
    expect(typed('seats', 'xM', '1\'2"').rows.seats[0]?.xM).toBeCloseTo(0.3556, 4);
    expect(typed('seats', 'xM', '-1\'2"').rows.seats[0]?.xM).toBeCloseTo(-0.3556, 4);
    expect(typed('seats', 'xM', '−0,4 m').rows.seats[0]?.xM).toBe(-0.4);
    expect(typed('tanks', 'capacityL', '18,5 litres').rows.tanks[0]?.capacityL).toBe(18.5);
    expect(typed('lockers', 'limitKg', '10 st').rows.lockers[0]?.limitKg).toBeCloseTo(63.503, 3);
    expect(typed('lockers', 'limitKg', '').places?.lockers).toEqual([{ name: 'Garage', xM: 5.1 }]);
  });

  it.each([
    ['seats', 'name', '  ', 'Give it a name.'],
    ['lockers', 'name', 'Rack', '"Rack" is the rear rack’s own name.'],
    ['seats', 'xM', '', 'How far behind the front axle is missing.'],
    ['seats', 'xM', '-', 'How far behind the front axle is missing.'],
    ['seats', 'xM', 'front', '"front" is no length'],
    ['lockers', 'xM', '21', 'More than 20 m behind the front axle is not believed.'],
    ['lockers', 'xM', '-5.1', 'More than 5 m ahead of the front axle is not believed.'],
    ['tanks', 'holds', '', 'Choose what it holds.'],
    ['tanks', 'capacityL', '', 'How many litres it holds is missing.'],
    ['tanks', 'capacityL', '20 gal', '"20 gal" is no volume'],
    ['tanks', 'capacityL', '-5', '"-5" is no volume'],
    ['tanks', 'capacityL', '1.500', 'may be thousands or decimals'],
    ['tanks', 'capacityL', '2001', 'More than 2000 l is not believed.'],
    ['tanks', 'capacityL', '0.9', 'Less than 1 l is not believed.'],
    ['lockers', 'limitKg', 'heavy', '"heavy" is no mass'],
    ['lockers', 'limitKg', '2001', 'More than 2000 kg is not believed.'],
    ['lockers', 'limitKg', '0', 'Less than 1 kg is not believed.'],
  ] as const)('of the %s, a %s of "%s" is refused at its field', (kind, field, text, sentence) => {
    const { fault, places } = typed(kind, field, text);
    expect(fault).toContain(sentence);
    expect(places).toBeUndefined();
    const draft = {
      ...draftOf(CARD, 'metric'),
      places: { ...NO_PLACES, [kind]: [{ ...USUAL[kind], [field]: text }] },
    };
    expect(readDraft(draft).card).toBeUndefined();
  });

  it('each have a name of their own, whatever their kind', () => {
    const { rows, places } = readPlaces({
      seats: [SEAT, SEAT],
      tanks: [TANK],
      lockers: [{ ...LOCKER, name: 'Water' }],
    });
    expect(rows.seats.map(({ faults }) => faults.name)).toEqual([
      undefined,
      '"Driver" is the name of another place.',
    ]);
    expect(rows.lockers[0]?.faults.name).toBe('"Water" is the name of another place.');
    expect(places).toBeUndefined();
  });

  it('are no more than the schema takes', () => {
    const seats = (count: number) => Array.from({ length: count }, (_, i) => ({ name: `Seat ${i}`, xM: 1 }));
    expect(vehicleCardSchema.safeParse({ ...CARD, seats: seats(PLACES_MAX) }).success).toBe(true);
    expect(vehicleCardSchema.safeParse({ ...CARD, seats: seats(PLACES_MAX + 1) }).success).toBe(false);
  });
});

describe('beside a place stands', () => {
  const body = { noseM: -0.95, tailM: 6.04 };
  const note = (xM: string) => {
    const [place = { faults: {} }] = typed('seats', 'xM', xM).rows.seats;
    return noteOf({ ...SEAT, xM }, place, body);
  };

  it('nothing where metres say it all', () => {
    expect(note('0.35')).toBe('');
    expect(note('2,5 m')).toBe('');
    expect(note('6.04')).toBe('');
  });

  it('how feet and a minus were understood', () => {
    expect(note('8\'2"')).toBe('2.49 m (8\'2") behind the front axle.');
    expect(note('-0.4')).toBe('0.40 m (1\'4") ahead of the front axle.');
  });

  it('that it lies outside the body', () => {
    expect(note('6.5')).toContain('behind the body');
    expect(note('-1')).toContain('ahead of the body');
  });
});

it('the drawing says what is marked in it', () => {
  expect(sayTicks(readPlaces(NO_PLACES).rows)).toBe('');
  const { rows } = readPlaces({ seats: [SEAT, SEAT], tanks: [TANK], lockers: [{ ...LOCKER, xM: '' }] });
  expect(sayTicks(rows)).toBe(' Marked in it: 2 seats, 1 tank.');
});
