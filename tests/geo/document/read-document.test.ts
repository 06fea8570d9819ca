import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { fieldsOf } from '../../../geo/document/fields-of.ts';
import { sayFault } from '../../../geo/document/say-fault.ts';
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

describe('a fault of a file', () => {
  const faultOf = (schema: z.ZodType, data: unknown) => {
    const read = schema.safeParse(data);
    const issue = read.error?.issues[0];
    return issue === undefined ? '' : sayFault(issue as never, data);
  };

  it('of a text is its length or that it is empty, of the rest what is asked for', () => {
    const schema = z.strictObject({ name: z.string().min(1).max(5), when: z.date().optional() });
    expect(faultOf(schema, { name: 'far too long' })).toBe('name is longer than 5 letters');
    expect(faultOf(schema, { name: '' })).toBe('name is empty');
    expect(faultOf(schema, { name: 'a', when: 'x' })).toBe('when must be date, not the text "x"');
  });

  it('is looked for among the fields at whatever depth they stand', () => {
    const schema = z.object({
      list: z.array(z.union([z.object({ a: z.string() }), z.object({ b: z.string() })])),
      by: z.record(z.string(), z.object({ c: z.number() })),
      piped: z.string().transform(Number).pipe(z.number()),
      inner: z.object({ d: z.number() }).transform((one) => one.d),
      maybe: z.object({ e: z.number() }).optional(),
    });
    expect([...fieldsOf(schema)].sort()).toEqual([
      'a',
      'b',
      'by',
      'c',
      'd',
      'e',
      'inner',
      'list',
      'maybe',
      'piped',
    ]);
  });
});
