import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readSpeed } from '../../../../geo/drive/times/read-speed.ts';
import { given } from '../../../../geo/given.ts';

const kmh = (text: string) => {
  const read = readSpeed(text);
  return read.kind === 'kmh' ? Math.round(read.kmh * 10) / 10 : read.kind;
};

describe('a speed limit', () => {
  it.each([
    ['50', 50],
    ['30 mph', 48.3],
    ['30mph', 48.3],
    ['7,5', 7.5],
    ['30 knots', 55.6],
    ['80 km/h', 80],
    ['50;30', 30],
    ['60 mph; 40 mph', 64.4],
    ['DE:zone:30', 30],
    ['DE:zone30', 30],
    ['DE:30', 30],
    ['GB:zone20', 32.2],
    ['DE:bicycle_road', 30],
    ['none', 'none'],
    ['walk', 'walk'],
    ['DE:walk', 'walk'],
    ['signals', 'varies'],
    ['variable', 'varies'],
    ['0', 'unreadable'],
    ['500', 'unreadable'],
    ['fast', 'unreadable'],
    ['', 'unreadable'],
    ['50;none', 'unreadable'],
    ['-30', 'unreadable'],
    ['30 furlongs', 'unreadable'],
  ])('mapped as "%s" is %s', (text, meaning) => expect(kmh(text)).toBe(meaning));

  it.each([
    ['GB:nsl_single', 'single', 'GB'],
    ['UK:nsl_dual', 'dual', 'GB'],
    ['GB:nsl_restricted', 'urban', 'GB'],
    ['GB:motorway', 'motorway', 'GB'],
    ['DE:urban', 'urban', 'DE'],
    ['RO:rural', 'rural', 'RO'],
    ['BE-VLG:rural', 'rural', 'BE'],
    ['FR:motorway', 'motorway', 'FR'],
    ['DE:living_street', 'living_street', 'DE'],
    ['national', 'national', undefined],
  ])('mapped as "%s" is the general limit of its kind of road', (text, context, country) => {
    expect(readSpeed(text)).toEqual({ kind: 'implied', context, ...given({ country }) });
  });

  it('never throws, and a figure it gives is one a road can have', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 20 }), (text) => {
        const read = readSpeed(text);
        if (read.kind === 'kmh') expect(read.kmh).toSatisfy((v: number) => v >= 1 && v <= 200);
      }),
    );
  });

  it('of any whole number is that number', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 200 }), (n) => kmh(String(n)) === n));
  });

  it('is not taken from words that JavaScript objects know', () => {
    expect(readSpeed('constructor').kind).toBe('unreadable');
    expect(readSpeed('DE:toString').kind).toBe('unreadable');
  });
});
