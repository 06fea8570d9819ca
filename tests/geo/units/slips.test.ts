import { describe, expect, it } from 'vitest';
import { askMeant, slips, wordMeant } from '../../../geo/units/slips.ts';

describe('slips of the hand', () => {
  it('are letters missing, too many, wrong, or two that changed places', () => {
    expect([slips('route', 'route'), slips('rote', 'route'), slips('rouute', 'route')]).toEqual([0, 1, 1]);
    expect([slips('rouxe', 'route'), slips('ruote', 'route'), slips('', 'abc')]).toEqual([1, 1, 3]);
  });
});

describe('the word meant', () => {
  const known = ['route', 'map', 'vehicle', 'load', 'heightM'];

  it('is the nearest, letter case aside', () => {
    expect(wordMeant('vehcile', known)).toBe('vehicle');
    expect(wordMeant('heigthM', known)).toBe('heightM');
    expect(wordMeant('heightm', known)).toBe('heightM');
    expect(wordMeant('lod', known)).toBe('load');
  });

  it('is none where nothing is near, or the word is no word', () => {
    expect(wordMeant('x', known)).toBeUndefined();
    expect(wordMeant('colour', known)).toBeUndefined();
    expect(wordMeant('route'.repeat(100_000), known)).toBeUndefined();
    expect(askMeant('colour', known)).toBe('');
    expect(askMeant('maap', known)).toBe(' (did you mean "map"?)');
  });
});
