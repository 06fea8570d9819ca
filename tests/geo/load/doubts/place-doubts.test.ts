import { describe, expect, it } from 'vitest';
import type { Tank, VehicleCard } from '../../../../geo/vehicle/card.ts';
import { CARD, thing, weighed } from '../load-card.ts';

const FUEL: Tank = { name: 'Fuel tank', holds: 'fuel', xM: 1.6, capacityL: 90 };
const SEATED: VehicleCard = {
  ...CARD,
  seats: [{ name: 'Bench, left', xM: 1.7 }],
  tanks: [...(CARD.tanks ?? []), FUEL],
};

function said(items: Parameters<typeof weighed>[0], card = SEATED): string {
  return weighed(items, card).warnings.join(' ');
}

describe('a place named in a list', () => {
  it('that the card does not have is said: the list may be another vehicle’s', () => {
    expect(said([thing('boxes', 50, 3, { place: 'Loft' })])).toContain(
      'Listed at a place that the card does not have: "boxes" at "Loft".',
    );
  });

  it('that lies elsewhere on the card is said, with both figures', () => {
    expect(said([thing('chairs', 40, 2, { place: 'Garage' })])).toContain(
      '"chairs" at "Garage" (5.20 m) but with 2.00 m. The metres are counted.',
    );
    expect(said([thing('bikes', 40, 2, { place: 'rack' })])).toContain('at the rack but with 2.00 m');
  });

  it('and agrees with its metres gives no warning, nor does an item at no place', () => {
    expect(said([thing('chairs', 40, 5.4, { place: 'Garage' }), thing('box', 9, 3)])).toBe('');
  });

  it('is counted, not listed, where many are wrong', () => {
    const many = Array.from({ length: 40 }, (_, i) => thing(`box ${i}`, 1, 3, { place: 'Loft' }));
    expect(weighed(many, SEATED).warnings).toHaveLength(1);
    expect(said(many)).toContain('and 37 more');
  });

  it('holds one person, if it is a seat', () => {
    const person = thing('Anna', 60, 1.7, { kind: 'person', place: 'Bench, left' });
    expect(said([person])).toBe('');
    expect(said([person, { ...person, name: 'Ben' }])).toContain('"Bench, left" has 2 people listed on it.');
  });
});

describe('diesel', () => {
  it('fills the tank from the 90 % of the empty weight on: what goes in is no doubt, what does not is', () => {
    const diesel = (litres: number) =>
      thing('Diesel', litres * 0.83, 1.6, { kind: 'fuel', place: 'Fuel tank', litres });
    expect(said([diesel(9)])).toBe('');
    expect(said([diesel(20)])).toContain(
      '"Fuel tank" is listed with 101 litres, 81 litres of them in the empty weight on the card; it holds 90 litres.',
    );
  });
});
