import { describe, expect, it } from 'vitest';
import { readPlaceText } from '../../../geo/units/read-place.ts';

const MAP = { south: 47, north: 48, west: -21, east: -19 };

describe('coordinates as they are typed', () => {
  it.each([
    ['54.1, 9.2', 54.1, 9.2],
    ['54.1 9.2', 54.1, 9.2],
    ['54,1; 9,2', 54.1, 9.2],
    ['-33.9,151.2', -33.9, 151.2],
    ['N 54.1 W 9.2', 54.1, -9.2],
    ['54.1°N, 9.2°E', 54.1, 9.2],
    ['E 9.2 N 54.1', 54.1, 9.2],
    ['−1.5, +36.8', -1.5, 36.8],
  ])('%s', (text, lat, lon) => {
    expect(readPlaceText(text)).toEqual({ lat, lon });
  });

  it.each(['Mill Lane', 'A 9910', '12', '54.1, 9.2, 3', ''])('"%s" is a name', (text) => {
    expect(readPlaceText(text)).toBeUndefined();
  });

  it('are refused where they lie nowhere, and where the longitude came first', () => {
    expect(readPlaceText('200, 300')).toEqual({
      problem: expect.stringContaining('is no place on Earth'),
    });
    expect(readPlaceText('151.2, -33.9')).toEqual({
      problem: expect.stringContaining('latitude first: -33.9, 151.2'),
    });
  });

  it('are refused where they lie off the open map and on it the other way round', () => {
    expect(readPlaceText('-20, 47.5', MAP)).toEqual({ problem: expect.stringContaining('off the open map') });
    expect(readPlaceText('47.5, -20', MAP)).toEqual({ lat: 47.5, lon: -20 });
    // elsewhere altogether: the search says so
    expect(readPlaceText('10, 10', MAP)).toEqual({ lat: 10, lon: 10 });
  });
});
