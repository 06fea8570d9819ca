import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readRecord } from '../../../geo/library/read-record.ts';
import type { LibraryRecord } from '../../../geo/library/record.ts';
import { isItemId, itemOfVehicle, readRecordFile } from '../../../geo/library/record-name.ts';
import { writeRecord } from '../../../geo/library/write-record.ts';
import '../../support/fixed-seed.ts';

const sha256 = (text: string) => createHash('sha256').update(text).digest('hex');
const parent = fc.stringMatching(/^[0-9a-f]{20}$/);
const records: fc.Arbitrary<LibraryRecord<'note'>> = fc.record(
  {
    kind: fc.constant('note' as const),
    id: fc.constant('note-1'),
    parents: fc.uniqueArray(parent, { maxLength: 4 }),
    made: fc.constantFrom('', '2026-05-01T09:00:00.000Z'),
    body: fc.record({
      at: fc.record({
        lat: fc.double({ min: -90, max: 90, noNaN: true }),
        lon: fc.double({ min: -180, max: 180, noNaN: true }),
      }),
      say: fc.string({ minLength: 1, maxLength: 40, unit: 'binary' }).filter((text) => text.trim() !== ''),
    }),
  },
  { requiredKeys: ['kind', 'id', 'parents', 'made'] },
);
const NOTE: LibraryRecord<'note'> = {
  kind: 'note',
  id: 'note-1',
  parents: [],
  made: '',
  body: { at: { lat: 54, lon: 9 }, say: 'Gate' },
};

describe('a record', () => {
  it('is read back as it was written, by its name and under any other', () => {
    fc.assert(
      fc.property(records, (record) => {
        const { name, file, text } = writeRecord(record, sha256);
        const want = { ...record, parents: [...record.parents].sort() };
        const read = readRecord(file, text, sha256);
        // JSON has one zero
        expect(JSON.parse(JSON.stringify(read))).toEqual(
          JSON.parse(JSON.stringify({ is: 'record', name, record: want })),
        );
        expect(readRecord(`${file} (copy).json`, text, sha256)).toEqual(read);
        expect(readRecordFile(file)).toEqual({ name, parents: want.parents });
      }),
    );
  });

  it('of which any byte was changed or cut off is none', () => {
    const { file, text } = writeRecord(NOTE, sha256);
    fc.assert(
      fc.property(fc.nat(text.length - 1), fc.constantFrom('', ' ', '0'), (at, put) => {
        const damaged = text.slice(0, at) + put + text.slice(at + 1);
        if (damaged !== text) expect(readRecord(file, damaged, sha256).is).toBe('half');
        expect(readRecord(file, text.slice(0, at), sha256).is).toBe('half');
      }),
    );
  });

  it('has the same name whatever the order of its members, and keeps what a later program added', () => {
    const { body } = NOTE;
    const turned = { ...NOTE, body: { say: body!.say, at: { lon: 9, lat: 54 }, later: { x: 1 } } };
    const again = { ...NOTE, body: { later: { x: 1 }, ...body! } };
    expect(writeRecord(turned, sha256)).toEqual(writeRecord(again, sha256));
    const { file, text } = writeRecord(turned, sha256);
    expect(readRecord(file, text, sha256)).toMatchObject({ record: { body: { later: { x: 1 } } } });
  });

  it('that says more than this program understands is a newer one’s, one whose name lies is damaged', () => {
    const { text } = writeRecord(NOTE, sha256);
    for (const change of [{ version: 2 }, { kind: 'dream' }, { body: { say: 'Gate' } }]) {
      const newer = JSON.stringify({ ...JSON.parse(text), ...change });
      const file = `first-${sha256(newer).slice(0, 20)}.json`;
      expect(readRecord(file, newer, sha256).is).toBe('newer');
    }
    const lie = `${'a'.repeat(20)}-${sha256(text).slice(0, 20)}.json`;
    expect(readRecord(lie, text, sha256).is).toBe('half');
  });

  it.each(['', 'milk', '[]', 'null', '{"format":"lanegauge.vehicle"}', '{"__proto__":1}'])(
    'is none of ours: %j',
    (text) => expect(readRecord('shopping.txt', text, sha256)).toEqual({ is: 'foreign' }),
  );
});

describe('the id of a vehicle’s item', () => {
  it('can name a folder anywhere, and is another for every vehicle, also for those equal but for case', () => {
    const id = fc.stringMatching(/^[A-Za-z0-9_-]{1,64}$/);
    fc.assert(
      fc.property(id, id, (one, other) => {
        const [a, b] = [one, other, one.toUpperCase()].map((each) => itemOfVehicle('vehicle', each, sha256));
        expect(isItemId(a!)).toBe(true);
        expect(a === b).toBe(one === other);
        expect(itemOfVehicle('vehicle', one.toUpperCase(), sha256) === a).toBe(one === one.toUpperCase());
      }),
    );
  });
});
