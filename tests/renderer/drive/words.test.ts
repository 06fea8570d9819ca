import { describe, expect, it } from 'vitest';
import { clip } from '../../../renderer/drive/words.ts';

describe('text from a file', () => {
  it('is cut where it would fill the screen, between letters', () => {
    expect(clip('x'.repeat(10_000))).toHaveLength(121);
    expect(clip('🚐🚐🚐', 2)).toBe('🚐🚐…');
  });

  it('keeps to one line', () => {
    expect(clip(' a\r\n\u0000b\t')).toBe('a b');
  });
});
