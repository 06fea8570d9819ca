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

describe('another of our files is told by its name', () => {
  const LIST = '{"format": "lanegauge.load", "version": 1, "name": "x", "items": []}';
  const CARD = '{"format": "lanegauge.vehicle", "name": "x"}';
  it.each([
    [
      'a load list for a vehicle card',
      readVehicle(LIST, 'a.json'),
      'a.json is a load list, not a vehicle card.',
    ],
    [
      'a vehicle card for a load list',
      readLoad(CARD, 'a.json'),
      'a.json is a vehicle card, not a load list.',
    ],
    ['a path for a load list', readLoad('{"segments": []}', 'a.json'), 'a.json is a path for the swing, not'],
    ['a damaged card is still a card', readVehicle(CARD, 'a.json'), 'is not a usable vehicle card: '],
  ])('%s', (_, read, said) => {
    expect(read.ok ? 'taken' : read.error.message).toContain(said);
  });

  it('a name that stands elsewhere in the file is not taken for misspelt', () => {
    const read = readLoad('{"kg": 3}', 'a.json');
    expect(read.ok ? 'taken' : read.error.message).toContain('"kg" is no field');
    expect(read.ok ? 'taken' : read.error.message).not.toContain('did you mean "kg"');
  });
});
