import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { notesGeoJson, readNotesGeoJson } from '../../../geo/notes/geojson.ts';
import type { LocalNote } from '../../../geo/notes/note.ts';
import { note } from '../../support/notes/noted-drive.ts';

function read(data: unknown) {
  const found = readNotesGeoJson(JSON.stringify(data), 'notes.geojson');
  if (!found.ok) throw new Error(found.error.message);
  return found.value;
}

const anyNote: fc.Arbitrary<LocalNote> = fc.record(
  {
    id: fc.string({ minLength: 1, maxLength: 20 }),
    at: fc.record({
      lat: fc.integer({ min: -9e8, max: 9e8 }).map((n) => n / 1e7),
      lon: fc.integer({ min: -18e8, max: 18e8 }).map((n) => n / 1e7),
    }),
    say: fc.string({ minLength: 1, maxLength: 60, unit: 'grapheme' }).filter((text) => text.trim() !== ''),
    heightM: fc.integer({ min: 50, max: 2000 }).map((cm) => cm / 100),
    until: fc.constantFrom('2027-02-28', '2028-02-29'),
    by: fc.constantFrom('AB', 'Zoë'),
    answers: fc.constant({ finding: 'height:w1f', subject: 'height' as const }),
  },
  { requiredKeys: ['id', 'at', 'say'] },
);

describe('notes as GeoJSON', () => {
  it('are read back as they were written', () => {
    fc.assert(
      fc.property(fc.array(anyNote, { maxLength: 5 }), (notes) => {
        const back = read(notesGeoJson(notes));
        expect(back.left).toEqual([]);
        expect(back.notes.map(({ id, fields }) => ({ id, ...fields }))).toEqual(
          notes.map((one) => JSON.parse(JSON.stringify(one))),
        );
      }),
      { numRuns: 100 },
    );
  });

  it('lead with the longitude, seven decimals at most', () => {
    const [feature] = notesGeoJson([note({ at: { lat: 52.123456789, lon: -0.7 } })]).features;
    expect(feature).toMatchObject({
      id: 'n1',
      geometry: { type: 'Point', coordinates: [-0.7, 52.1234568] },
    });
  });

  it('of others are named and left, and damaged ones with what is wrong', () => {
    const { features } = notesGeoJson([note(), note({ id: 'n2' })]);
    const [good, bad] = features;
    const { notes, left } = read({
      type: 'FeatureCollection',
      features: [
        good,
        { ...bad, properties: { ...bad?.properties, heightM: 'low' } },
        { ...bad, geometry: { type: 'LineString', coordinates: [] } },
        { ...bad, geometry: { type: 'Point', coordinates: [1, 95] } },
        { type: 'Feature', geometry: null, properties: { name: 'A pub' } },
        7,
      ],
    });
    expect(notes).toHaveLength(1);
    expect(left).toEqual([
      'Note 2 of notes.geojson is left out: heightM must be a number, not the text "low".',
      'Note 3 of notes.geojson is left out: its place is no point.',
      'Note 4 of notes.geojson is left out: at.lat is 95, but at most 90 can be right.',
      '2 features of "notes.geojson" are no notes of this program, and left alone.',
    ]);
  });

  it('cut off, or no GeoJSON, are refused', () => {
    const text = JSON.stringify(notesGeoJson([note()]));
    for (const other of [text.slice(0, -5), '{}', '[]', '"note"', ''])
      expect(readNotesGeoJson(other, 'x.geojson').ok).toBe(false);
  });
});

describe('a file of notes from elsewhere', () => {
  const feature = (properties: object, geometry: object = { type: 'Point', coordinates: [7, 50] }) => ({
    type: 'Feature',
    geometry,
    properties: { format: 'lanegauge.note', ...properties },
  });

  it('may begin with a byte order mark, and hold one feature alone', () => {
    const [own] = notesGeoJson([note({ say: 'Gate shut at night' })]).features;
    const found = readNotesGeoJson(`\uFEFF${JSON.stringify(own)}`, 'notes.geojson');
    expect(found.ok && found.value.notes.map(({ fields }) => fields.say)).toEqual(['Gate shut at night']);
  });

  it('is told with what is damaged, and of many how many more', () => {
    const damaged = Array.from({ length: 40 }, () => feature({}, { type: 'LineString', coordinates: [] }));
    const { left } = read({ type: 'FeatureCollection', features: damaged });
    expect(left[0]).toMatch(/^Note 1 of notes\.geojson is left out: /);
    expect(left.at(-1)).toMatch(/^\d+ more notes are left out as well\.$/);
  });

  it('says of one stranger that it is none of its notes, and of two that they are', () => {
    const stranger = { type: 'Feature', geometry: null, properties: {} };
    const left = (count: number) =>
      read({ type: 'FeatureCollection', features: Array(count).fill(stranger) }).left;
    expect(left(1)).toEqual(['one feature of "notes.geojson" is no notes of this program, and left alone.']);
    expect(left(2)).toEqual(['2 features of "notes.geojson" are no notes of this program, and left alone.']);
  });
});
