import { describe, expect, it } from 'vitest';
import { kindOf } from '../../../../geo/load/list/item-kind.ts';

describe('what an item is', () => {
  it.each([
    ['Driver', 'driver'],
    ['The driver, beyond 75 kg', 'driver'],
    ['Driver’s bag', 'thing'],
    ['Passenger beside the driver', 'person'],
    ['Two children on the bench', 'person'],
    ['Child seat', 'thing'],
    ['Fresh water, 100 l', 'fresh-water'],
    ['Water', 'fresh-water'],
    ['Water bottles', 'thing'],
    ['Grey water', 'waste-water'],
    ['Waste water dumped', 'waste-water'],
    ['AdBlue', 'adblue'],
    ['Diesel', 'fuel'],
    ['Two bicycles on the rack', 'thing'],
  ] as const)('%s: %s', (name, kind) => {
    expect(kindOf({ name })).toBe(kind);
  });

  it('is what it says of itself before what its name sounds like', () => {
    expect(kindOf({ name: 'Driver', kind: 'thing' })).toBe('thing');
  });
});
