import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { printable, wrap } from '../../../main/cli/wrap.ts';

describe('text from a file on a terminal', () => {
  it('cannot move the cursor, ring the bell or turn the reading direction', () => {
    expect(printable('\u001b[2JMill\u0007 Lane\u202E')).toBe('·[2JMill· Lane·');
  });

  it('is cut when it is very long', () => {
    expect(printable('x'.repeat(10_000))).toHaveLength(120);
  });

  it('keeps every letter of other scripts', () => {
    expect(printable('Straße Ελλάδα 道')).toBe('Straße Ελλάδα 道');
  });
});

describe('wrapping', () => {
  it('keeps every word and never runs over, but for a word longer than the line', () => {
    fc.assert(
      fc.property(
        fc.array(fc.stringMatching(/^[a-z]{1,15}$/)),
        fc.integer({ min: 40, max: 120 }),
        (words, width) => {
          const lines = wrap(words.join(' '), width, '  ');
          expect(lines.join(' ').split(/\s+/).filter(Boolean)).toEqual(words);
          for (const line of lines) expect(line.length).toBeLessThanOrEqual(width);
        },
      ),
    );
  });
});
