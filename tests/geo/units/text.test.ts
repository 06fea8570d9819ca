import { describe, expect, it } from 'vitest';
import {
  beforeFirst,
  capital,
  clip,
  counted,
  countedInWords,
  cut,
  listed,
  lowerFirst,
  printable,
  quote,
} from '../../../geo/units/text.ts';

describe('text from a file', () => {
  it('is cut where it would fill the screen, between letters', () => {
    expect(clip('x'.repeat(10_000))).toHaveLength(120);
    expect(clip('🚐🚐🚐', 2)).toBe('🚐…');
    expect(cut('🚐🚐🚐', 3)).toBe('🚐🚐🚐');
  });

  it('keeps to one line', () => {
    expect(clip(' a\r\n\u0000b\t')).toBe('a ·b');
    expect(quote('a\u001b[2Jb')).toBe('"a·[2Jb"');
  });
});

describe('sentences', () => {
  it('list with commas and an and', () => {
    expect(listed([])).toBe('');
    expect(listed(['a'])).toBe('a');
    expect(listed(['a', 'b'])).toBe('a and b');
    expect(listed([1, 2, 4])).toBe('1, 2 and 4');
  });

  it('count', () => {
    expect(counted(1, 'gap')).toBe('1 gap');
    expect(counted(0, 'gap')).toBe('0 gaps');
    expect(counted(3, 'node or road', 'nodes or roads')).toBe('3 nodes or roads');
    expect(countedInWords(1, 'place')).toBe('one place');
    expect(countedInWords(2, 'place')).toBe('2 places');
  });

  it('begin large and go on small', () => {
    expect(capital('a low arch')).toBe('A low arch');
    expect(lowerFirst('The gate')).toBe('the gate');
    expect(capital('')).toBe('');
  });
});

describe('a text', () => {
  it('before a mark is what stands before the first of it, or all of it', () => {
    expect(beforeFirst('maxweight:hgv:conditional', ':')).toBe('maxweight');
    expect(beforeFirst('maxweight', ':')).toBe('maxweight');
    expect(beforeFirst(':hgv', ':')).toBe('');
  });
});

describe('a text from a file, shown', () => {
  it('cannot move the cursor, ring the bell, turn the reading direction or break the line', () => {
    expect(printable('\u001b[2JMill\u0007 Lane\u202E')).toBe('·[2JMill· Lane·');
    expect(printable('a\r\nb\u2028c\u009b31m\u200b\ud800')).toBe('a b c·31m··');
  });

  it('keeps every letter of other scripts', () => {
    expect(printable('Straße Ελλάδα 道 😀')).toBe('Straße Ελλάδα 道 😀');
  });
});
