import { describe, expect, it } from 'vitest';
import { type Finding, findingSchema } from '../../../geo/report/finding.ts';
import { isKindOf, KINDS, SUBJECTS } from '../../../geo/report/kinds.ts';

const finding: Finding = {
  id: 'height:w1f',
  level: 'barred',
  subject: 'height',
  kind: 'limit',
  fromM: 0,
  toM: 10,
  at: { lat: 50, lon: 7 },
  osm: [],
  tags: {},
  say: '',
  advice: '',
};

describe('the kinds of findings', () => {
  it('are listed by subject, each once', () => {
    for (const subject of SUBJECTS) {
      expect(KINDS[subject].length).toBeGreaterThan(0);
      expect(new Set(KINDS[subject]).size).toBe(KINDS[subject].length);
    }
  });

  it('belong to their subject: a report with another’s is refused', () => {
    expect(isKindOf('height', 'bridge above')).toBe(true);
    expect(isKindOf('width', 'bridge above')).toBe(false);
    expect(findingSchema.safeParse(finding).success).toBe(true);
    expect(findingSchema.safeParse({ ...finding, kind: 'ford' }).success).toBe(false);
    expect(findingSchema.safeParse({ ...finding, kind: 'no such kind' }).success).toBe(false);
  });

  it('stand beside what would settle the finding, if anything does', () => {
    expect(findingSchema.safeParse({ ...finding, level: 'unknown', wants: 'time' }).success).toBe(true);
    expect(findingSchema.safeParse({ ...finding, wants: 'luck' }).success).toBe(false);
  });
});
