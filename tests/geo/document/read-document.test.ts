import { describe, expect, it } from 'vitest';
import { readLoad } from '../../../geo/load/list/read-load.ts';
import { readPath } from '../../../geo/swing/motion/read-path.ts';
import { readVehicle } from '../../../geo/vehicle/read-vehicle.ts';

describe('a misspelt field is told with the one likely meant', () => {
  it.each([
    [
      'of a vehicle card',
      readVehicle('{"heigthM": 3}', 'a.json'),
      '"heigthM" is no field of a vehicle card (did you mean "heightM"?)',
    ],
    ['inside a vehicle card', readVehicle('{"axleKg": {"fornt": 1}}', 'a.json'), '(did you mean "front"?)'],
    ['of a load list', readLoad('{"itmes": []}', 'a.json'), '(did you mean "items"?)'],
    ['of a path', readPath('{"segmnts": []}', 'a.json'), '(did you mean "segments"?)'],
  ])('%s', (_, read, said) => {
    expect(read.ok ? 'taken' : read.error.message).toContain(said);
  });
});
