import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wrap } from '../../../main/cli/wrap.ts';

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
