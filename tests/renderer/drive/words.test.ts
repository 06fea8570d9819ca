import { describe, expect, it } from 'vitest';
import { LEVELS } from '../../../geo/report/level.ts';
import { clip, sayVerdict } from '../../../renderer/drive/words.ts';

describe('the words', () => {
  it('never call a drive safe', () => {
    for (const verdict of [...LEVELS, 'clear'] as const)
      expect(sayVerdict(verdict, 2)).not.toMatch(/safe|fine|\bok\b/i);
  });

  it('say plainly that a verdict rests on slight doubts alone', () => {
    expect(sayVerdict('unknown', 7, '7 bridges over the road without a mapped height')).toBe(
      'Nothing mapped bars it. What the map cannot prove is slight, nothing but 7 bridges over the road without a mapped height: mind the signs there.',
    );
    expect(sayVerdict('care', 2, '2 places of little weight')).toBe(
      'Nothing mapped bars it. Take care at 2 places of little weight.',
    );
  });
});

describe('text from a file', () => {
  it('is cut where it would fill the screen, between letters', () => {
    expect(clip('x'.repeat(10_000))).toHaveLength(121);
    expect(clip('🚐🚐🚐', 2)).toBe('🚐🚐…');
  });

  it('keeps to one line', () => {
    expect(clip(' a\r\n\u0000b\t')).toBe('a b');
  });
});
