import { describe, expect, it } from 'vitest';
import { askAbout } from '../../../../geo/load/ask/ask-about.ts';
import { CHOICES, choiceNamed, choicesFor } from '../../../../geo/load/ask/choices.ts';
import { piecesOf } from '../../../../geo/load/ask/question.ts';
import type { LoadItem } from '../../../../geo/load/list/load-list.ts';
import { weigh } from '../../../../geo/load/weigh/weigh.ts';
import { COACH_BUILT, FAMILY } from '../family.ts';

const EBIKE: LoadItem = { name: 'E-bike', massKg: 25, xM: 6.805, place: 'rack' };
const WITHIN = FAMILY.filter(({ place }) => place !== 'rack');

function asked(aboard: readonly LoadItem[], pieces: readonly LoadItem[]) {
  const found = askAbout(COACH_BUILT, aboard, pieces);
  if (!found.ok) throw new Error(found.error.message);
  return found.value;
}

it('a rack with bicycles is offered where none is fitted: a fitted one is in the empty weight', () => {
  const ids = (rack: typeof COACH_BUILT.rack) =>
    choicesFor({ rack }).flatMap(({ choices }) => choices.map(({ id }) => id));
  expect(ids(COACH_BUILT.rack)).not.toContain('bike-rack-loaded');
  expect(ids(COACH_BUILT.rack)).toContain('bicycle');
  expect(ids(undefined)).toContain('bike-rack-loaded');
});

describe('can we take the e-bikes?', () => {
  it('yes, with nothing else aboard: what they put on each axle and what is left', () => {
    const { change, result, cures, most } = asked([], piecesOf(EBIKE, 2, []));
    // 50 kg, 2.77 m behind the rear axle of a wheelbase of 4.035 m
    expect(change.frontKg).toBeCloseTo(-34.325, 3);
    expect(change.rearKg).toBeCloseTo(84.325, 3);
    expect(result.over).toEqual([]);
    expect(cures.cures).toEqual([]);
    expect(most).toMatchObject({ massKg: 60, binds: 'rack' });
  });

  it('no, with a family aboard: every way out takes both along and keeps every limit', () => {
    const { pieces, cures } = asked(WITHIN, piecesOf(EBIKE, 2, WITHIN));
    expect(cures.cures.length).toBeGreaterThan(0);
    for (const { items, steps } of cures.cures) {
      for (const { name, massKg } of pieces)
        expect(items.filter((item) => item.name === name && item.massKg === massKg)).toHaveLength(1);
      expect(steps.some((step) => step.kind === 'leave' && pieces.includes(step.item))).toBe(false);
      expect(items.every((item) => item.kind !== 'person' || !item.name.startsWith('E-bike'))).toBe(true);
      const after = weigh(COACH_BUILT, items);
      expect(after.ok && after.value.over).toEqual([]);
    }
  });

  it('moves both inside where the rack alone is too weak', () => {
    const weak = { ...COACH_BUILT, rack: { lengthM: 0.7, widthM: 2, fitted: true, limitKg: 20 } };
    const found = askAbout(weak, [], piecesOf(EBIKE, 2, []));
    const [best] = found.ok ? found.value.cures.cures : [];
    expect(best?.steps.map(({ kind }) => kind)).toEqual(['move', 'move']);
  });

  it('names one way out, not one for each choice among several alike', () => {
    const { cures } = asked([], piecesOf(EBIKE, 4, []));
    expect(cures.cures).toHaveLength(1);
  });
});

describe('what may be asked about', () => {
  it('stands in one group each, with its source', () => {
    const all = CHOICES.flatMap(({ choices }) => choices);
    expect(new Set(all.map(({ id }) => id)).size).toBe(all.length);
    for (const { source, massKg } of all) {
      expect(source).not.toBe('');
      expect(massKg).toBeGreaterThan(0);
    }
    expect(choiceNamed('fuel')).toMatchObject({ byLitre: true, massKg: 0.83 });
    expect(choiceNamed('nothing')).toBeUndefined();
  });

  it('is numbered on from what is aboard', () => {
    expect(piecesOf(EBIKE, 1, [])).toEqual([EBIKE]);
    expect(piecesOf(EBIKE, 2, []).map(({ name }) => name)).toEqual(['E-bike 1', 'E-bike 2']);
    expect(piecesOf(EBIKE, 1, piecesOf(EBIKE, 2, [])).map(({ name }) => name)).toEqual(['E-bike 3']);
  });
});
