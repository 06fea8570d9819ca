import { describe, expect, it } from 'vitest';
import { accessLevel } from '../../../../geo/rules/access/access-level.ts';
import type { Reach } from '../../../../geo/tags/conditional/context.ts';

const at = (reach: Reach) => ({ reach, advisedReach: reach });

describe('what an access value means for the drive', () => {
  it.each([
    ['no', 'barred', 'barred'],
    ['private', 'barred', 'unknown'],
    ['permit', 'barred', 'unknown'],
    ['destination', 'barred', undefined],
    ['discouraged', 'tight', 'care'],
    ['unknown', 'unknown', 'unknown'],
    ['open', undefined, undefined],
  ] as const)('meaning %s is %s passing through, %s at the ends', (meaning, through, within) => {
    expect(accessLevel(meaning, at('through'))).toBe(through);
    expect(accessLevel(meaning, at('within'))).toBe(within);
  });
});
