import { describe, expect, it } from 'vitest';
import { lawNotes, sayLawNote } from '../../../../geo/load/doubts/law-notes.ts';
import { CARD } from '../load-card.ts';

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
