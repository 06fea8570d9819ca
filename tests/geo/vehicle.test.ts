import { describe, expect, it } from 'vitest';
import { readVehicle } from '../../geo/vehicle/read-vehicle.ts';

describe('a vehicle card', () => {
  it('that is not JSON is refused by name', () => {
    const read = readVehicle('{', 'van.json');
    expect(read.ok).toBe(false);
  });
});
