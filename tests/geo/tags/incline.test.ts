import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drivenIncline, readIncline } from '../../../geo/tags/incline.ts';

describe('what incline says', () => {
  it.each<[string, number]>([
    ['10%', 10],
    ['-10 %', -10],
    ['+4%', 4],
    ['0.41%', 0.41],
    ['.5%', 0.5],
    ['12,5 %', 12.5],
    ['9', 9],
    ['0', 0],
    ['4.3°', 7.519],
    ['0.0°', 0],
    ['1:8', 12.5],
    ['-1:20', -5],
    ['1 in 5', 20],
    ['no', 0],
  ])('%s is %d %%', (text, percent) => {
    const read = readIncline(text);
    expect(read.kind).toBe('percent');
    expect(read.kind === 'percent' ? read.percent : Number.NaN).toBeCloseTo(percent, 3);
  });

  it.each([
    ['up', 'up'],
    ['Down', 'down'],
    ['steep', 'steep'],
    ['yes', 'some'],
    ['90%', 'not believed'],
    ['46', 'not believed'],
    ['1:0', 'unreadable'],
    ['', 'unreadable'],
    ['10 % at most', 'unreadable'],
  ])('"%s" is %s', (text, kind) => {
    expect(readIncline(text).kind).toBe(kind);
  });

  it('any text is read or refused, and turning round twice changes nothing', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const read = readIncline(text);
        expect(drivenIncline(drivenIncline(read, 'backward'), 'backward')).toEqual(read);
      }),
    );
  });
});

it('driven the other way a slope turns round, a figure or a word', () => {
  expect(drivenIncline(readIncline('down'), 'backward')).toEqual({ kind: 'up' });
  expect(drivenIncline(readIncline('up'), 'backward')).toEqual({ kind: 'down' });
  expect(drivenIncline(readIncline('steep'), 'backward')).toEqual(readIncline('steep'));
});
