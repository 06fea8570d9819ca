import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readLoad } from '../../../../geo/load/list/read-load.ts';

const item = { name: 'Two bicycles', massKg: 32, xM: 6.3 };
const list = (items: unknown) => ({ format: 'lanegauge.load', version: 1, items });
const read = (data: unknown) => readLoad(typeof data === 'string' ? data : JSON.stringify(data), 'load.json');

function refusal(data: unknown): string {
  const result = read(data);
  return result.ok ? 'accepted' : result.error.message;
}

describe('a load list', () => {
  it('of names, masses and places is read as written', () => {
    const data = list([item, { name: 'Waste dumped', massKg: -80, xM: 5.4 }]);
    expect(read(data)).toEqual({ ok: true, value: data });
    expect(read(list([])).ok).toBe(true);
  });

  it('may say what an item is, where it stands and how many litres it holds', () => {
    const data = list([{ ...item, kind: 'fresh-water', place: 'Fresh tank', litres: 32 }]);
    expect(read(data)).toEqual({ ok: true, value: data });
  });

  it('names each bad item by number and name', () => {
    expect(refusal(list([item, { ...item, massKg: 'NaN' }]))).toContain(
      'item 2 "Two bicycles": massKg must be a number, not the text "NaN"',
    );
    expect(refusal(list([{ ...item, xM: 635 }]))).toContain(
      'item 1 "Two bicycles": xM is 635, but at most 20 m can be right; perhaps 6.35 m is meant',
    );
    expect(refusal(list([{ ...item, massKg: -20_001 }]))).toContain('but at least -20000 kg is needed');
    expect(refusal(list([{ ...item, name: '  ' }]))).toContain('item 1 has no name');
    expect(refusal(list([{ massKg: 3, xM: 2 }]))).toContain('item 1: name is missing');
    expect(refusal(list([{ ...item, mass: 3 }]))).toContain(
      'item 1 "Two bicycles": "mass" is no field of a load item',
    );
    expect(refusal(list([{ ...item, massKg: '32' }]))).toContain('(write 32 without quotes)');
    expect(refusal(list([item, 7]))).toContain('item 2: it must be an object in braces, not 7');
  });

  it('refuses what is no load list', () => {
    expect(refusal('{ oops')).toContain('is not a load list: it is not JSON');
    expect(refusal(list([item]).items)).toContain('the list must be an object in braces, not a list');
    expect(refusal({ ...list([]), format: 'lanegauge.vehicle' })).toContain(
      'is a vehicle card, not a load list',
    );
    expect(refusal({ ...list([]), format: 'other' })).toContain('format must be "lanegauge.load"');
    expect(refusal({ ...list([]), version: 2 })).toContain('version must be 1, not 2');
    expect(refusal({ ...list([]), note: 'x' })).toContain('"note" is no field of a load list');
    expect(refusal({ format: 'lanegauge.load', version: 1 })).toContain('items is missing');
    expect(refusal(list('none'))).toContain('items must be a list in brackets');
    expect(refusal(list(Array.from({ length: 301 }, () => item)))).toContain('more than 300 items');
  });

  it('refuses a field named twice and a mass that overflows', () => {
    const text = JSON.stringify(list([item]));
    expect(refusal(text.replace('"massKg"', '"massKg":3,"massKg"'))).toContain('"massKg" stands there twice');
    expect(refusal(text.replace('32', '1e999'))).toContain('item 1 "Two bicycles": massKg');
    expect(refusal(text.replace('{"name"', '{"__proto__":{},"name"'))).toContain('__proto__');
  });

  it('never throws, whatever the text', () => {
    fc.assert(
      fc.property(fc.oneof(fc.json(), fc.string()), (text) => {
        expect(readLoad(text, 'load.json').ok).toBe(false);
      }),
    );
  });

  it('with one field replaced by anything is refused or read with that value', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('name', 'massKg', 'xM', 'kind', 'place', 'litres'),
        fc.jsonValue(),
        (field, value) => {
          const data = list([{ ...item, [field]: value }]);
          const result = read(data);
          if (result.ok) expect(result.value).toEqual(data);
        },
      ),
    );
  });
});
