import { expect, it } from 'vitest';
import { jsonText } from '../../../main/cli/json-text.ts';

it('JSON on a terminal holds what the value holds and steers nothing', () => {
  const value = { name: 'a\u001b\u007f\u009b\u202e\u2028b \u{E0001}', list: ['道', 1] };
  const text = jsonText(value);
  expect(JSON.parse(text)).toEqual(value);
  expect(text).not.toMatch(/(?!\n)[\p{Cc}\p{Cf}\p{Zl}]/u);
  expect(text).toContain('道');
});
