import { describe, expect, it } from 'vitest';
import { nearNames } from '../../../geo/shelf/near-names.ts';

const NAMES = ['Oakham', 'Oakley', 'Uppingham', 'Ely', 'Eye'];

describe('a misspelt name of a place', () => {
  it('tells the names it was likely meant to be, the nearest first', () => {
    expect(nearNames('okaham', NAMES)).toEqual(['Oakham']);
    expect(nearNames('Oaklam', NAMES)).toEqual(['Oakham', 'Oakley']);
    expect(nearNames('Upingam', NAMES)).toEqual(['Uppingham']);
  });

  it('a short one is told with one slip alone, and another word not at all', () => {
    expect(nearNames('Ely', NAMES)).toEqual(['Ely']);
    expect(nearNames('Ale', NAMES)).toEqual([]);
    expect(nearNames('Stamford', NAMES)).toEqual([]);
  });
});
