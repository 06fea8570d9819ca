import { describe, expect, it } from 'vitest';
import { given } from '../../geo/given.ts';

describe('what is given', () => {
  it('keeps what has a value, also an empty one', () => {
    expect(given({ name: '', litres: 0, fitted: false, note: null })).toEqual({
      name: '',
      litres: 0,
      fitted: false,
      note: null,
    });
  });

  it('leaves out what is undefined, the name with it', () => {
    const card: { readonly name: string; readonly lengthM?: number } = given({
      name: 'A',
      lengthM: undefined,
    });
    expect(Object.keys(card)).toEqual(['name']);
  });
});
