import { describe, expect, it } from 'vitest';
import { SUBJECTS } from '../../../geo/report/kinds.ts';
import {
  countByLevel,
  gravestFirst,
  LEVEL_MEANS,
  LEVEL_WORD,
  LEVELS,
  sayCount,
  VERDICTS,
} from '../../../geo/report/level.ts';
import { SUBJECT_WORD, subjectsOf } from '../../../geo/report/subject-word.ts';

describe('the words', () => {
  it('name every level and subject there is, and say what each level means', () => {
    expect(VERDICTS.map((verdict) => LEVEL_WORD[verdict])).toEqual([
      'Barred',
      'Tight',
      'Unknown',
      'Take care',
      'Nothing mapped stops it',
    ]);
    expect(Object.keys(SUBJECT_WORD).sort()).toEqual([...SUBJECTS].sort());
    for (const verdict of VERDICTS) expect(LEVEL_MEANS[verdict]).toMatch(/^[A-Z].+\.$/);
  });

  it('never call a drive safe', () => {
    for (const verdict of VERDICTS)
      expect(`${LEVEL_WORD[verdict]} ${LEVEL_MEANS[verdict]}`).not.toMatch(/\bsafe|\bfine\b|\bok\b/i);
  });
});

describe('findings of several levels', () => {
  const found = (['care', 'barred', 'care', 'tight'] as const).map((level, i) => ({ level, i }));

  it('are counted by level, folded ones in a line of their own', () => {
    const folded = { level: 'care', folded: true } as const;
    expect(countByLevel([...found, folded])).toEqual({ barred: 1, tight: 1, unknown: 0, care: 2 });
  });

  it('stand with the gravest first, equals in their own order, none lost', () => {
    expect(gravestFirst(found).map(({ i }) => i)).toEqual([1, 3, 0, 2]);
    expect(gravestFirst(found).map(({ level }) => LEVELS.indexOf(level))).toEqual([0, 1, 3, 3]);
  });

  it('name each of their subjects once, as they are met', () => {
    expect(subjectsOf([{ subject: 'trees' }, { subject: 'map' }, { subject: 'trees' }])).toEqual([
      'trees',
      'map',
    ]);
  });
});

it('a chip counts what its list may show: folded ones as minor', () => {
  const bridge = { level: 'unknown' as const, folded: true };
  const found = [bridge, { level: 'tight' as const }, bridge, { level: 'unknown' as const }];
  expect(sayCount(found, 'unknown')).toBe('1, 2 minor');
  expect(sayCount([bridge], 'unknown')).toBe('1 minor');
  expect(sayCount(found, 'tight')).toBe('1');
  expect(sayCount(found, 'care')).toBe('0');
});
