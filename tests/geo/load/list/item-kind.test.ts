import { describe, expect, it } from 'vitest';
import { lawNotes, sayLawNote } from '../../../../geo/load/doubts/law-notes.ts';
import { kindOf } from '../../../../geo/load/list/item-kind.ts';
import { PRESETS } from '../../../../geo/load/list/presets.ts';
import { LIQUID_FACTS } from '../../../../geo/vehicle/liquids.ts';
import { CARD } from '../load-card.ts';

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

describe('masses to begin with', () => {
  it('each have a source, an id of their own and a mass that can be', () => {
    expect(new Set(PRESETS.map(({ id }) => id)).size).toBe(PRESETS.length);
    for (const { massKg, source } of PRESETS) {
      expect(massKg).toBeGreaterThan(0);
      expect(source).not.toBe('');
    }
    for (const { kgPerL, source } of Object.values(LIQUID_FACTS)) {
      expect(kgPerL).toBeGreaterThan(0.4);
      expect(source).not.toBe('');
    }
  });
});

describe('notes on licence and law', () => {
  const said = (change: Partial<typeof CARD>) =>
    lawNotes({ ...CARD, ...change })
      .map(({ says }) => says)
      .join(' ');

  it('go by the plate: B to 3500 kg, C1 to 7500 kg', () => {
    expect(said({ grossKg: 3500 })).toContain('category B is enough');
    expect(said({ grossKg: 3501 })).toContain('category C1 is needed');
    expect(said({ grossKg: 3501 })).toContain('1 January 1997');
    expect(said({ grossKg: 7501 })).toContain('category C is needed');
  });

  it('name British speeds by unladen weight, from 3.05 t on', () => {
    expect(said({ unladenKg: 3050 })).toContain('so the higher ones');
    expect(said({ unladenKg: 3051 })).toContain('so the lower ones');
    expect(said({})).toContain('The card does not give it');
  });

  it('name boards for a rack in Spain and Italy only where a rack is fitted', () => {
    expect(said({})).toContain('Spain: a load behind needs the V-20 board');
    expect(said({ rack: { lengthM: 0.6, widthM: 2, fitted: false } })).not.toContain('V-20');
  });

  it('each name their source, and what is from memory is not told as a fact', () => {
    const notes = [3000, 4250, 8000].flatMap((grossKg) => lawNotes({ ...CARD, grossKg }));
    for (const { source } of notes) expect(source.text.length).toBeGreaterThan(5);
    const unread = notes.filter(({ source }) => source.trust === 'memory');
    expect(unread.length).toBeGreaterThan(0);
    for (const note of notes)
      expect(sayLawNote(note).startsWith('Not confirmed: ')).toBe(note.source.trust === 'memory');
  });
});
