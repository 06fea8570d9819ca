import { expect, it } from 'vitest';
import { cutSpans } from '../../../geo/drive/cut-spans.ts';

it('of many guessed spans those within a longer one are marked, cut to it, and not what lies between', () => {
  const spans = [
    { fromM: 0, toM: 10 },
    { fromM: 40, toM: 60 },
    { fromM: 90, toM: 120 },
  ];
  expect(cutSpans(spans, { fromM: 10, toM: 100 })).toEqual([
    { fromM: 40, toM: 60 },
    { fromM: 90, toM: 100 },
  ]);
});
